"""``shadewright lot causes``: what was different in a lot that is off, as a text."""

from pathlib import Path
from typing import TYPE_CHECKING

from shadewright.cli.answers import Rows, say, wrapped
from shadewright.cli.colour_files import text_of

if TYPE_CHECKING:
    from shadewright.core.quality import Cause, LotCauses

_CALLED = {
    "jar": ("jar", ""),
    "bottle": ("bottle", ""),
    "bottle_age_days": ("bottle's age", " days"),
    "mill_lot": ("mill lot", ""),
    "water": ("water", ""),
    "pot": ("pot", ""),
    "load_g_per_l": ("load", " g/l"),
    "ramp_c_per_min": ("ramp", " °C/min"),
    "hold_min": ("hold", " min"),
    "acid_after_min": ("acid after", " min"),
    "person": ("person", ""),
}

_AXES = {"L": "light or dark", "a": "red or green", "b": "yellow or blue"}


def answer_causes(history: Path, *, number: str, as_json: bool) -> None:
    """Read the history, find the causes and say them."""
    from shadewright.core.quality import lot_causes, repeat_test
    from shadewright.exchange.lot_history import (
        causes_answer,
        read_history,
        unread_columns,
    )

    text = text_of(history, name="The lot history")
    lots = read_history(text, number=number)
    strange = [f"column {name} is not known" for name in unread_columns(text)]
    found = lot_causes(lots)
    test = repeat_test(found)
    say(
        causes_answer(found),
        as_json=as_json,
        rows=_rows(found),
        warnings=[*strange, *map(_plain, found.signals)],
        after=wrapped(test, first="", rest="") if test else "",
    )


def _rows(found: "LotCauses") -> Rows:
    rows = [("verdict", f"{found.verdict.value}{_because(found)}")]
    if found.words:
        rows.append(("looks", found.words))
    if found.de is not None:
        noise = f"noise alone gives {found.expected_de:.2f}"
        rows.append(("CIEDE2000", f"{found.de:.2f} to the lots before; {noise}"))
    rows += [(_label(cause), _said(cause)) for cause in found.causes]
    if found.unknown:
        rows.append(("none of these", _percent(found.unknown)))
    return rows


def _because(found: "LotCauses") -> str:
    return f": {found.why}" if found.why else ""


def _label(cause: "Cause") -> str:
    return _CALLED[cause.factor][0]


def _said(cause: "Cause") -> str:
    was, now = (_fact(cause, value) for value in (cause.was, cause.now))
    said = f"{_percent(cause.score)}, was {was}, now {now}"
    if not cause.words:
        return said
    return f"{said}; by the lots before it should be: {cause.words}"


def _fact(cause: "Cause", value: str | float | None) -> str:
    if value is None:
        return "not written down"
    unit = _CALLED[cause.factor][1]
    return value if isinstance(value, str) else f"{value:g}{unit}"


def _plain(signal: str) -> str:
    """Return a signal with the number’s name in words."""
    axis, _, rule = signal.partition(": ")
    return f"{_AXES[axis]}: {rule}"


def _percent(score: float) -> str:
    return f"{100.0 * score:.0f}\u00a0%"
