"""How a dose is written: ``Gorse=0.6%@1%+-2%``.

A name, its depth in % on weight of fibre and, behind an ``@``, the strength of
its stock in g per 100 ml, perhaps with a relative standard spread. A name that
holds a blank or one of ``= @ ; ,`` stands in quotes: ``"Sea Kelp"=0.4%``.
"""

import re
from typing import Final

from shadewright.core.baths import Dose
from shadewright.core.baths.depth import MOST_DEPTH_PERCENT
from shadewright.core.quantities import MOST_STRENGTH_PERCENT
from shadewright.core.quantities.ranges import require_above_zero, require_between
from shadewright.core.quantities.reading import Asked, as_given, written
from shadewright.core.quantities.units import PERCENT
from shadewright.errors import UnitError

MOST_CHARACTERS: Final = 120
WRITTEN_AS: Final = (
    "NAME=DEPTH or NAME=DEPTH@STRENGTH, such as Gorse=0.6%@1%; "
    "a name with a blank or one of = @ ; , stands in quotes, and all of it in others "
    "that the terminal takes off, as '\"Sea Kelp\"=0.4%'"
)
_DOSE: Final = re.compile(
    r"""\s*(?:"(?P<double>[^"]+)"|'(?P<single>[^']+)'|(?P<plain>[^\s=@;,"'][^\s=@;,"]*))
        \s*=(?P<depth>[^=@;±+]+)
        (?:@(?P<strength>[^=@;±+]+)(?:(?:\+-|±)(?P<spread>[^=@;±+]+))?)?""",
    re.VERBOSE,
)


def dose_from_words(text: str, *, name: str, argument: str) -> Dose:
    """Return a dose from what was written, or say in a sentence how it is."""
    found = _DOSE.fullmatch(text) if len(text) <= MOST_CHARACTERS else None
    dye = found and (found["double"] or found["single"] or found["plain"]).strip()
    if found is None or not dye or not dye.isprintable():
        raise UnitError(
            name=name, given=as_given(text), allowed=WRITTEN_AS, argument=argument
        )
    strength, spread = found["strength"], found["spread"]
    return Dose(
        dye=dye,
        depth_percent=_depth(found["depth"], dye, argument),
        strength_percent=_strength(strength, dye, argument) if strength else None,
        u_strength_rel=_spread(spread, dye, argument) if spread else 0.0,
    )


def _depth(text: str, dye: str, argument: str) -> float:
    name = f"Depth of {dye}"
    return require_above_zero(
        _percent(text, name=name, argument=argument),
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name=name,
        argument=argument,
    )


def _strength(text: str, dye: str, argument: str) -> float:
    name = f"Strength of {dye}"
    return require_above_zero(
        _percent(text, name=name, argument=argument),
        most=MOST_STRENGTH_PERCENT,
        unit="%",
        name=name,
        argument=argument,
    )


def _spread(text: str, dye: str, argument: str) -> float:
    name = f"Spread of {dye}"
    percent = require_between(
        _percent(text, name=name, argument=argument),
        least=0.0,
        most=100.0,
        unit="%",
        name=name,
        argument=argument,
    )
    return percent / 100


def _percent(text: str, *, name: str, argument: str) -> float:
    """Return a percentage, also a negative one: the range is told elsewhere."""
    asked = Asked(
        name=name, example="a percentage such as 1 % or 0.5 %", argument=argument
    )
    found = written(text, asked=asked)
    if found.unit not in PERCENT:
        raise asked.refusal(text)
    return found.number
