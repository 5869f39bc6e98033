"""Numbers of things in an address, such as ``?base=4``."""

from collections.abc import Mapping

from shadewright.errors import NotFoundError

_MOST_DIGITS = 9


def number_asked(said: Mapping[str, str], name: str, *, kind: str) -> int | None:
    """Return the number that an address gives for a thing; None where it names none."""
    text = said.get(name, "").strip()
    return number_of(text, kind=kind, argument=name) if text else None


def number_of(text: str, *, kind: str, argument: str) -> int:
    """Return the number of a thing; what is none names nothing that there is."""
    if not (text.isascii() and text.isdecimal() and len(text) <= _MOST_DIGITS):
        raise NotFoundError(kind=kind, key=text[:20], argument=argument)
    return int(text)
