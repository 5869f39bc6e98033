"""What a tool is worth, in plain words."""

from shadewright.core.quantities import NO_BREAK, amount_text, number_text
from shadewright.core.uncertainty.tools import (
    Worth,
    basis,
    good_from,
    worth_along,
)
from shadewright.core.uncertainty.tools.worth import GOOD_SHARE
from shadewright.workflows.tool_checks import CheckEntry
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.usual_tools import Job

JOB_WORDS = {
    Job.POWDER: "Weighing powder",
    Job.YARN: "Weighing yarn",
    Job.FILL: "Filling stock to the mark",
    Job.DOSE: "Measuring doses",
}
SHORT_JOBS = {
    Job.POWDER: "powder",
    Job.YARN: "yarn",
    Job.FILL: "stock",
    Job.DOSE: "doses",
}


def worth_words(worth: Worth, unit: str) -> str:
    """Say how far a reading may be off: ``± 1 ml, 2 %``."""
    return f"±{NO_BREAK}{_two(worth.half_width, unit)}, {percent_words(worth.share)}"


def percent_words(share: float) -> str:
    """Say a share in two figures."""
    return _two(100.0 * share, "%")


def along(tool: ToolNow) -> tuple[Worth, ...]:
    """Return what a tool is worth along its scale; nothing while it is not known."""
    return () if tool.core is None else worth_along(tool.core, largest=tool.size)


def in_a_word(tool: ToolNow) -> str:
    """Say what a tool is worth in a cell of a list."""
    points = along(tool)
    if not points:
        return "–"
    if tool.balance is not None:
        return f"±{NO_BREAK}{_two(points[0].half_width, tool.unit)}"
    whole = amount_text(points[0].amount, tool.unit)
    return f"±{NO_BREAK}{_two(points[0].half_width, tool.unit)} in {whole}"


def good_words(tool: ToolNow) -> str:
    """Say from where on a tool is good, or that it never is."""
    if tool.core is None:
        return ""
    largest = along(tool)[0].amount
    least = good_from(tool.core, largest=largest)
    within = f"within {percent_words(GOOD_SHARE)}"
    if least is None:
        return f"It is nowhere {within}."
    return f"It is {within} from {_two(least, tool.unit)} up."


def basis_words(tool: ToolNow) -> str:
    """Say what the worth of a tool rests on."""
    if tool.is_checked:
        return "By your own checks below."
    if tool.balance is not None:
        return _scale_basis(tool)
    if tool.ware is None:
        return ""
    if tool.is_by_sheet:
        return "By its own sheet; nobody has weighed its water yet."
    found = basis(tool=tool.ware)
    kind = f", class {tool.ware.accuracy_class}" if tool.ware.accuracy_class else ""
    row = (
        f", row of {amount_text(found.row_ml, 'ml')}"
        if found.row_ml not in {None, tool.ware.size_ml}
        else ""
    )
    known = " (from memory)" if found.is_from_memory else ""
    warm = amount_text(20.0, "°C")
    return f"By {found.standard}{kind}{row}{known}, for new ware at {warm}."


def check_words(entry: CheckEntry, unit: str) -> str:
    """Say what a check found."""
    correction = entry.finding.correction
    mark = amount_text(entry.nominal, unit)
    if entry.scale:
        held = _figures(entry.nominal + correction, "ml", digits=4)
        return f"The mark of {mark} holds {held}."
    if abs(correction) < 1e-9 * entry.nominal:
        return f"Shows {mark} as it is."
    less = "too little" if correction > 0.0 else "too much"
    return f"Shows {_two(abs(correction), unit)} {less} at {mark}."


def doubt_words(entry: CheckEntry, unit: str) -> str:
    """Say how far the tool is then taken to be off."""
    return _two(entry.finding.half_width, unit)


def _scale_basis(tool: ToolNow) -> str:
    assert tool.balance is not None  # ruff: ignore[assert] - asked by the caller
    own = _two(tool.balance.error_g or 0.0, "g")
    if not tool.is_by_sheet:
        return (
            f"Nobody has checked it: it is taken to be off by two steps, {own}, beside "
            "the rounding of its two readings."
        )
    return f"By its own sheet, {own}, beside the rounding of its two readings."


def _two(value: float, unit: str) -> str:
    return _figures(value, unit, digits=2)


def _figures(value: float, unit: str, *, digits: int) -> str:
    return f"{number_text(value, digits=digits)}{NO_BREAK}{unit}"
