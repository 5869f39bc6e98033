"""Numbers and days in an address, such as ``?base=4``, and in what a form holds."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from shadewright.errors import NotFoundError, OutOfRangeError

_MOST_DIGITS = 9


def number_asked(said: Mapping[str, str], name: str, *, kind: str) -> int | None:
    """Return the number that an address gives for a thing; None where it names none."""
    text = said.get(name, "").strip()
    return number_of(text, kind=kind, argument=name) if text else None


def number_of(text: str, *, kind: str, argument: str) -> int:
    """Return the number of a thing; what is none names nothing that there is."""
    found = _number(text)
    if found is None:
        raise NotFoundError(kind=kind, key=text[:20], argument=argument)
    return found


def number_said(said: Mapping[str, Any], name: str) -> int | None:
    """Return a number that was chosen, or None where none was."""
    return _number(str(said.get(name) or ""))


def day_asked(said: Mapping[str, str]) -> date | None:
    """Return the day that an address names, if it names one."""
    text = said.get("day", "").strip()
    try:
        return date.fromisoformat(text) if text else None
    except ValueError:
        raise OutOfRangeError(
            name="The day",
            given=text[:20],
            allowed="a date such as 2026-11-26",
            argument="day",
        ) from None


def _number(text: str) -> int | None:
    is_number = text.isascii() and text.isdecimal() and len(text) <= _MOST_DIGITS
    return int(text) if is_number else None
