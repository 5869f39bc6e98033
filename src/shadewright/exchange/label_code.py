"""The text inside the square code of a bottle's label or a bath's card, and back.

The text is ``SHADEWRIGHT:BOTTLE:`` and the bottle's short code, or
``SHADEWRIGHT:BATH:`` and the bath's number, in capitals: the square code packs
capitals tighter, so that the same small square carries a quarter of its area as
repair (ISO/IEC 18004, alphanumeric mode, level Q).
"""

import re
from dataclasses import dataclass
from typing import Literal

from shadewright.core.solutions.codes import typed_code
from shadewright.errors import OutOfRangeError, UnreadableError

_PREFIX = "SHADEWRIGHT:BOTTLE:"
_BATH_PREFIX = "SHADEWRIGHT:BATH:"
_BATH_NUMBER = re.compile(r"(\d{6})-?([BS])(\d{1,4})", re.ASCII)
_A_DAY = re.compile(r"\d{6}", re.ASCII)


@dataclass(frozen=True)
class Scanned:
    """What a code leads to: a bottle by its code, or a bath by its number."""

    kind: Literal["bottle", "bath"]
    key: str


def label_text(code: str) -> str:
    """Return what the square code of a bottle says.

    >>> label_text("T7K")
    'SHADEWRIGHT:BOTTLE:T7K'
    """
    return _PREFIX + typed_code(code)


def code_from_text(text: str) -> str:
    """Return the bottle code in what was scanned or typed.

    >>> code_from_text("shadewright:bottle:t7k"), code_from_text(" t 7 k ")
    ('T7K', 'T7K')
    """
    said = text.strip().upper()
    if ":" in said.removeprefix(_PREFIX):
        raise UnreadableError(
            name="The code",
            why="It is not from a bottle’s label.",
            advice="Scan the square on the label, or type the short code beside it.",
            argument="code",
        )
    return typed_code(said.removeprefix(_PREFIX))


def bath_text(number: str) -> str:
    """Return what the square code of a bath's card says.

    >>> bath_text("261125-B2")
    'SHADEWRIGHT:BATH:261125-B2'
    """
    return _BATH_PREFIX + _bath_number(number)


def scanned_from_text(text: str) -> Scanned:
    """Return the bottle or the bath that a scanned or typed text names.

    >>> scanned_from_text("261125 b2"), scanned_from_text("t7k")
    (Scanned(kind='bath', key='261125-B2'), Scanned(kind='bottle', key='T7K'))
    """
    said = "".join(text.split()).upper()
    if said.startswith(_BATH_PREFIX) or _A_DAY.match(said):
        return Scanned("bath", _bath_number(said.removeprefix(_BATH_PREFIX)))
    return Scanned("bottle", code_from_text(text))


def _bath_number(text: str) -> str:
    found = _BATH_NUMBER.fullmatch(text)
    if found is None:
        raise OutOfRangeError(
            name="A bath’s number",
            given=f"“{text[:20]}”",
            allowed="the day, a letter and a count, as on its card (like 261125-B2)",
            argument="code",
        )
    day, letter, count = found.groups()
    return f"{day}-{letter}{int(count)}"
