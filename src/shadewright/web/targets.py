"""A wanted colour in an address: typed, or by the number of where it stands.

``?colour=#556f4a`` or Lab numbers, ``?swatch=12``, ``?lot=261103-B1``, ``?wanted=4``,
``?spectrum=`` 31 reflectances from 400 to 700 nm; ``&name=`` names what was typed.
"""

from collections.abc import Callable, Mapping
from urllib.parse import parse_qsl, urlencode

from shadewright.errors import StudioError, UnreadableError
from shadewright.web.asking import number_of
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.shades.wanted import (
    MOST_NAME,
    CameFrom,
    Wanted,
    wanted_colour,
    wanted_of_lot,
    wanted_of_spectrum,
    wanted_of_swatch,
    wanted_of_text,
)

NAME = "name"


def target_asked(said: Mapping[str, str]) -> Wanted | None:
    """Return the colour that an address wants, or None where it names none."""
    name = said.get(NAME, "").strip()[:MOST_NAME]
    for kind in CameFrom:
        if text := said.get(kind, "").strip():
            return _READ[kind](text, name)
    return None


def target_query(wanted: Wanted) -> dict[str, str]:
    """Return a wanted colour as the parts of an address."""
    is_typed = wanted.came_from in {CameFrom.COLOUR, CameFrom.SPECTRUM}
    is_named = is_typed and wanted.name not in {wanted.key, wanted.as_typed}
    query = {str(wanted.came_from): wanted.key}
    return query | {NAME: wanted.name} if is_named else query


def target_told(text: str) -> Wanted | None:
    """Return the colour of ``target_text``, or None where there is none to be had."""
    try:
        return target_asked(dict(parse_qsl(text)))
    except StudioError:
        return None


def target_text(wanted: Wanted) -> str:
    """Return a wanted colour as an address writes it: ``colour=%23556f4a``."""
    return urlencode(target_query(wanted))


def _typed(text: str, name: str) -> Wanted:
    return wanted_of_text(text, name=name)


def _spectrum(text: str, name: str) -> Wanted:
    try:
        values = tuple(float(part) for part in text.split(","))
    except ValueError:
        raise UnreadableError(
            name="The spectrum in this address",
            why="It is not a row of numbers.",
            argument="spectrum",
        ) from None
    return wanted_of_spectrum(values, name=name)


def _swatch(text: str, _name: str) -> Wanted:
    return wanted_of_swatch(
        swatch_now(number_of(text, kind="swatch", argument="swatch"))
    )


def _lot(text: str, _name: str) -> Wanted:
    return wanted_of_lot(text)


def _kept(text: str, _name: str) -> Wanted:
    return wanted_colour(number_of(text, kind="wanted colour", argument="wanted"))


_READ: dict[CameFrom, Callable[[str, str], Wanted]] = {
    CameFrom.COLOUR: _typed,
    CameFrom.SPECTRUM: _spectrum,
    CameFrom.SWATCH: _swatch,
    CameFrom.LOT: _lot,
    CameFrom.WANTED: _kept,
}
