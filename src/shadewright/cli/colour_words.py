"""How a colour, a light and a surface term are typed."""

import re

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.quantities import percent, require_above_zero
from shadewright.errors import OutOfRangeError
from shadewright.exchange.colour_text import measured_lab, typed_colour

MOST_SURFACE_PERCENT = 10.0
MOST_TOLERANCE = 100.0
_PLAIN_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def colour(text: str, *, name: str, argument: str) -> tuple[float, float, float]:
    """Return Lab (D65/10°) of a colour: ``Lab=50,2.7,-79.8``, or of a screen."""
    del name
    return measured_lab(typed_colour(text, argument=argument))


def light(text: str, *, name: str, argument: str) -> Light:
    """Return a light by its name: ``A``, ``D50``, ``FL11``, ``LED-B3``."""
    for each in Light:
        if text.strip().casefold() == each.value.casefold():
            return each
    raise OutOfRangeError(
        name=name,
        given=f"“{text[:20]}”",
        allowed=f"one of {', '.join(Light)}",
        argument=argument,
    )


def surface_share(text: str, *, name: str, argument: str) -> float:
    """Return a surface term as a share: ``0.5%`` is 0.005."""
    found = percent(text, name=name, argument=argument)
    require_above_zero(
        found, most=MOST_SURFACE_PERCENT, unit="%", name=name, argument=argument
    )
    return found / 100.0


def count(text: str, *, name: str, argument: str) -> int:
    """Return a whole number from one up."""
    if text.strip().isdecimal() and int(text) > 0:
        return int(text)
    raise OutOfRangeError(
        name=name,
        given=f"“{text[:20]}”",
        allowed="a whole number from 1 up",
        argument=argument,
    )


def dye_names(text: str, *, name: str, argument: str) -> tuple[str, ...]:
    """Return names with commas between: ``Gorse,Slate``."""
    del name, argument
    return tuple(dict.fromkeys(filter(None, map(str.strip, text.split(",")))))


def tolerance(text: str, *, name: str, argument: str) -> float:
    """Return a difference that still passes, a plain number above zero."""
    plain = text.strip().replace(",", ".")
    found = float(plain) if _PLAIN_NUMBER.fullmatch(plain) else 0.0
    if not 0.0 < found <= MOST_TOLERANCE:
        raise OutOfRangeError(
            name=name,
            given=f"“{text[:20]}”",
            allowed=f"a plain number above 0 and at most {MOST_TOLERANCE:g}",
            argument=argument,
        )
    return found
