"""The lines of a typed colour, one reading a line."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.colour import Lab
from shadewright.errors import InputError, MissingError, UnreadableError
from shadewright.exchange.colour_text import TypedColour, measured_lab, typed_colour


@dataclass(frozen=True, kw_only=True)
class ScreenLine:
    """A colour off a screen: Lab as a meter would read it, and what was typed."""

    lab: Lab
    single: dict[str, object]


def lab_lines(texts: Sequence[str], *, argument: str) -> list[Lab]:
    """Return Lab as a meter gave it, in the light and the eye of the meter."""
    return [_lab(colour, name, argument) for name, colour in _typed(texts, argument)]


def screen_lines(texts: Sequence[str], *, argument: str) -> list[ScreenLine]:
    """Return colours off a screen or out of a photo."""
    return [
        ScreenLine(lab=Lab(*measured_lab(colour)), single=_single(colour))
        for _, colour in _typed(texts, argument)
    ]


def _single(colour: TypedColour) -> dict[str, object]:
    if colour.lab is None:
        return {"hex": colour.hex_code}
    return {"light": "D65", "observer": 10, "lab": list(colour.lab)}


def _lab(colour: TypedColour, name: str, argument: str) -> Lab:
    if colour.lab is None:
        raise UnreadableError(
            name=name,
            why=f"A meter gives L, a and b, not {colour.hex_code}.",
            advice="Type three numbers like 50, 12.5, −8, or choose how it was read.",
            argument=argument,
        )
    return Lab(*colour.lab)


def _typed(texts: Sequence[str], argument: str) -> list[tuple[str, TypedColour]]:
    """Return the colour of each line that holds any, and what the line is called."""
    lines = [line for text in texts for line in text.splitlines() if line.strip()]
    if not lines:
        raise MissingError(
            name="The colour",
            advice="Type L, a, b like 50, 12.5, −8, or a colour like #a0522d.",
            argument=argument,
        )
    if len(lines) == 1:
        return [("The colour", _colour(lines[0], "The colour", argument))]
    named = [
        (f"Reading {number}, “{line.strip()[:30]}”,", line)
        for number, line in enumerate(lines, start=1)
    ]
    return [(name, _colour(line, name, argument)) for name, line in named]


def _colour(line: str, name: str, argument: str) -> TypedColour:
    try:
        return typed_colour(line, argument=argument)
    except InputError as error:
        error.name = name  # type: ignore[attr-defined]
        raise
