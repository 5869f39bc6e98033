"""The small test that would tell: what to dye twice, with one thing changed."""

from typing import Final

from shadewright.core.quality.causes.answer import Cause, LotCauses
from shadewright.core.quality.causes.history import Factor

TESTS: Final = {
    Factor.JAR: "dye two swatches from fresh stocks, one of jar {was}, one of {now}",
    Factor.BOTTLE: "dye two swatches, one from bottle {was}, one from {now}",
    Factor.BOTTLE_AGE: (
        "warm and shake the bottle, then dye a swatch from it beside one from a "
        "fresh stock"
    ),
    Factor.MILL_LOT: "dye yarn of mill lot {was} and of {now} in the same bath",
    Factor.WATER: "dye two swatches, one in water {was}, one in {now}",
    Factor.POT: "dye two swatches on one day, one in pot {was}, one in {now}",
    Factor.LOAD: "dye two swatches, one at {was} g of yarn a litre, one at {now}",
    Factor.RAMP: "dye two swatches, one rising {was} °C a minute, one {now}",
    Factor.HOLD: (
        "dye two swatches in one bath and take one out after {now} min of holding, "
        "the other after {was}"
    ),
    Factor.ACID_AFTER: (
        "dye two swatches, one with the acid after {was} min, one after {now}"
    ),
    Factor.PERSON: "let {was} and {now} each dye the same swatch",
}

_CALLED: Final = {
    Factor.JAR: "jar",
    Factor.BOTTLE: "bottle",
    Factor.BOTTLE_AGE: "age of the bottle",
    Factor.MILL_LOT: "mill lot",
    Factor.WATER: "water",
    Factor.POT: "pot",
    Factor.LOAD: "yarn in a litre",
    Factor.RAMP: "ramp",
    Factor.HOLD: "hold",
    Factor.ACID_AFTER: "time of the acid",
    Factor.PERSON: "person",
}

_AS_BEFORE: Final = (
    "Dye a swatch with everything as it was before: if it comes out like the old lots, "
    "this bath went wrong at the pot; if it is off again, something changed that is "
    "not in the table."
)


def repeat_test(found: LotCauses) -> str:
    """Return what to dye next to be sure of the cause.

    Parameters
    ----------
    found : LotCauses
        An answer. [-]

    Returns
    -------
    str
        One or two sentences; nothing where no cause is looked for. [-]

    Notes
    -----
    Both swatches of a pair are dyed alike in all else. Common practice. Where a cell is
    empty no swatch helps, but asking does.
    """
    if not found.causes or found.causes[0].score < found.unknown:
        return _AS_BEFORE if found.unknown else ""
    first, *others = found.causes[:2]
    if first.now is None:
        said, then = f"To be sure, {_test(first)}.", "If it was as before"
    else:
        said, then = f"To be sure, {_test(first)}, and all else alike.", "If they match"
    return f"{said} {then}, {_test(others[0])}." if others else said


def _test(cause: Cause) -> str:
    if cause.now is None:
        return (
            f"find out the {_CALLED[cause.factor]}, which nobody wrote down: it was "
            f"{_said(cause.was)} before"
        )
    return TESTS[cause.factor].format(was=_said(cause.was), now=_said(cause.now))


def _said(value: str | float) -> str:
    return value if isinstance(value, str) else f"{value:g}"
