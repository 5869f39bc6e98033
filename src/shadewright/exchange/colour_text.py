"""A colour as somebody types it: CIELAB numbers, or what a screen calls it.

Lab means D65 and the 10° observer, as hand-held meters give it. A hex or CSS
colour is what a screen shows: D65 and the 2° observer (IEC 61966-2-1). From the one
to the other and back it is carried as ``core.colour.observer_change`` says. What CSS
writes, and what a screen can show, is for coloraide to know.
"""

import re
from dataclasses import dataclass
from math import dist

from shadewright.core.colour import Lab as CoreLab
from shadewright.core.colour import lab_2_of_10, lab_10_of_2
from shadewright.errors import OutOfRangeError, UnreadableError

_NUMBER = r"([+-]?\d+(?:\.\d+)?)"
_GAP = r"(?:\s*[,;]\s*|\s+)"
_LAB = re.compile(
    rf"(?:Lab\s*=?\s*)?{_NUMBER}{_GAP}{_NUMBER}{_GAP}{_NUMBER}", re.IGNORECASE
)
_WITH_COMMA = r"([+-]?\d+(?:,\d+)?)"
_WIDE_GAP = r"(?:\s*;\s*|,?\s+)"
_LAB_WITH_COMMAS = re.compile(
    rf"(?:Lab\s*=?\s*)?{_WITH_COMMA}{_WIDE_GAP}{_WITH_COMMA}{_WIDE_GAP}{_WITH_COMMA}",
    re.IGNORECASE,
)
_BARE_HEX = re.compile(r"[0-9a-fA-F]{6}")
_MOST_AB = 150.0
_HEX_STEP = 0.5
"""How far off the nearest hex may be: its steps are 0.2 to 0.4 in Lab. [1]"""

Lab = tuple[float, float, float]


@dataclass(frozen=True, kw_only=True)
class TypedColour:
    """A colour as it was typed: ``lab``, or a screen’s own ``hex_code``."""

    lab: Lab | None = None
    hex_code: str = ""


@dataclass(frozen=True, kw_only=True)
class ScreenColour:
    """What a screen can show of a colour; ``is_true`` unless it lies beyond."""

    hex_code: str
    is_true: bool


def typed_colour(text: str, *, argument: str = "colour") -> TypedColour:
    """Return the colour that was typed, or refuse it in one sentence.

    Lab is read with decimal commas where they part no numbers: 50,1 12,5 -8, or
    50,1, 12,5, -8.
    """
    plain = text.strip().replace("−", "-")
    found = _LAB.fullmatch(plain) or _LAB_WITH_COMMAS.fullmatch(plain)
    if found is not None:
        return TypedColour(lab=_lab(found, argument))
    if plain.lower().startswith("lab"):
        raise _unreadable(argument, why=_why_no_lab(plain))
    return TypedColour(hex_code=_hex(plain, argument))


def measured_lab(colour: TypedColour) -> Lab:
    """Return a typed colour as a meter would read it: Lab under D65, 10°."""
    if colour.lab is not None:
        return colour.lab
    from coloraide import Color

    shown = Color(colour.hex_code).convert("lab-d65")
    return lab_10_of_2(CoreLab(*shown.coords()))


def on_screen(lab: Lab) -> ScreenColour:
    """Return the nearest that a screen can show of a colour in Lab."""
    from coloraide import Color

    shown = Color("lab-d65", list(lab_2_of_10(CoreLab(*lab)))).convert("srgb")
    is_true = shown.in_gamut()
    code = shown.fit().to_string(hex=True)
    return ScreenColour(hex_code=code, is_true=is_true)


def hex_of_lab(lab: Lab) -> str:
    """Return the hex that reads back as this colour; nothing where none does."""
    shown = on_screen(lab)
    back = measured_lab(TypedColour(hex_code=shown.hex_code))
    return shown.hex_code if shown.is_true and dist(back, lab) < _HEX_STEP else ""


def _lab(found: re.Match[str], argument: str) -> Lab:
    light, a, b = (float(part.replace(",", ".")) for part in found.groups())
    if not 0 <= light <= 100 or max(abs(a), abs(b)) > _MOST_AB:
        raise OutOfRangeError(
            name="The colour",
            given=f"Lab {light:g}, {a:g}, {b:g}",
            allowed=f"L from 0 to 100, a and b from −{_MOST_AB:g} to {_MOST_AB:g}",
            argument=argument,
        )
    return light, a, b


def _why_no_lab(plain: str) -> str:
    if plain.lower().startswith("lab("):
        return "In CSS, lab() means another light."
    return "Lab takes three numbers, with decimal points."


def _hex(plain: str, argument: str) -> str:
    from coloraide import Color

    text = f"#{plain}" if _BARE_HEX.fullmatch(plain) else plain
    found = Color.match(text, fullmatch=True)
    if found is None:
        raise _unreadable(argument, why="It is neither Lab nor a screen’s colour.")
    colour = found.color.convert("srgb")
    if colour.alpha() < 1 or not colour.in_gamut():
        raise _unreadable(argument, why="It is none that a screen shows.")
    code: str = colour.to_string(hex=True, compress=False)
    return code


def _unreadable(argument: str, *, why: str) -> UnreadableError:
    return UnreadableError(
        name="The colour",
        why=why,
        advice="Write it like #a0522d, or like 50, 12.5, −8 for L, a, b.",
        argument=argument,
    )
