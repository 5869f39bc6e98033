"""What is said of fits and doubts, in plain words."""

from shadewright.core.mixing.swatches import Evidence
from shadewright.core.quantities.writing import NO_BREAK, counted, number_text
from shadewright.workflows.shades.doubts import Doubt
from shadewright.workflows.shades.fit_pages import FitStatus
from shadewright.workflows.shades.kinds import TEACHES_AS, ReadBy
from shadewright.workflows.shades.swatches import SwatchNow

_CLEARLY = 1.15
"""From this factor on a dose is named as what may be wrong (our choice)."""

_SLIP = 12.0
"""No slip of a hand is worse than a decimal point in the wrong place (our choice)."""


def one_or_counted(count: int, one: str, many: str) -> str:
    """Return a count with its noun: “One swatch”, “3 swatches”."""
    return f"One {one}" if count == 1 else counted(count, one, many)


def fit_words(status: FitStatus) -> str:
    """Say what the palette that holds rests on, and how long its fit took."""
    if status.holds is None:
        return "There is no palette yet."
    found = rests_on(status.swatches, status.lots)
    return f"It rests on {found} of all yarns{_took(status.seconds)}."


def rests_on(swatches: int, lots: int) -> str:
    """Say how many swatches and lots: “9 swatches and one lot”."""
    said = one_or_counted(swatches, "swatch", "swatches").lower()
    return f"{said} and {one_or_counted(lots, 'lot', 'lots').lower()}" if lots else said


def why_doubted(doubt: Doubt) -> tuple[str, ...]:
    """Say why the others do not believe a swatch, and what it may be."""
    far = f"It is ΔE{NO_BREAK}{doubt.distance:.1f} from what the others foretell."
    hints = (_as_if_dosed(doubt), _as_read(doubt.swatch))
    return (far, *(hint for hint in hints if hint))


def _as_if_dosed(doubt: Doubt) -> str:
    factor = number_text(doubt.dosed, digits=2)
    if not doubt.swatch.doses or 1.0 / _CLEARLY < doubt.dosed < _CLEARLY:
        return ""
    if not 1.0 / _SLIP < doubt.dosed < _SLIP:
        return "No wrong dose explains it: perhaps a tag or a bottle was mixed up."
    if doubt.dosed > 1.0:
        return (
            f"It looks as if dosed {factor} times as deep. "
            "Wet yarn looks deeper too: was it dry?"
        )
    return (
        f"It looks as if it got {factor} of its dose: perhaps an old bottle, "
        "a short hold, or dye left in the bath."
    )


def _as_read(swatch: SwatchNow) -> str:
    if swatch.reading is None:
        return ""
    read_by = swatch.reading.read_by
    if read_by is ReadBy.CHART:
        return "It was taken off a chart, which may be nothing like your yarn."
    if TEACHES_AS[read_by] is Evidence.SCREEN:
        return f"It was {read_by.label}, which is rough: a meter would tell."
    return "Perhaps a tag was swapped, or another spot was read."


def _took(seconds: float | None) -> str:
    if seconds is None:
        return ""
    return f", fitted in {number_text(seconds, digits=2)}{NO_BREAK}s"
