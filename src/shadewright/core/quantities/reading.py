"""A text with a number and a unit, taken apart.

A decimal comma is as good as a decimal point. What could be meant in two ways
is refused: ``1,234.5`` has two signs, and ``1,500`` is one and a half to one
reader and fifteen hundred to another.
"""

import re
from dataclasses import dataclass

from shadewright.errors import MissingError, UnitError

MOST_CHARACTERS = 40
"""No amount that a person writes is longer."""

_NUMBER = re.compile(
    r"(?P<sign>[-+−]?) ?"
    r"(?P<number>[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+) ?"
    r"(?P<unit>[^0-9.,].*)?"
)
_TWO_SIGNS = re.compile(r"[-+−]? ?[0-9]+[.,][0-9]+[.,][0-9.,]*.*")
_COULD_BE_THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")


@dataclass(frozen=True, kw_only=True)
class Written:
    """A number and the unit word that stood behind it, in small letters."""

    number: float
    unit: str


@dataclass(frozen=True, kw_only=True)
class Asked:
    """What a text should tell: its name, how it is written, and who asks."""

    name: str
    example: str
    argument: str = ""

    def refusal(self, text: str, *, allowed: str = "") -> UnitError:
        """Return the sentence for a text that cannot be taken."""
        given = text if len(text) <= MOST_CHARACTERS else f"{text[:MOST_CHARACTERS]}…"
        return UnitError(
            name=self.name,
            given=given,
            allowed=allowed or self.example,
            argument=self.argument,
        )


def written(text: str, *, asked: Asked) -> Written:
    """Return the number and the unit word of a text.

    Parameters
    ----------
    text : str
        What was typed, as ``0,5 l`` or ``500ml``. [-]
    asked : Asked
        What the text should tell. [-]

    Returns
    -------
    Written
        The number with its unit word; the word is empty where none stood. [-]

    Raises
    ------
    MissingError
        If nothing was typed.
    UnitError
        If it is no plain number, or one that could be meant in two ways.

    Notes
    -----
    Powers of ten (``1e3``) are not read: nobody writes them at a bench.

    Examples
    --------
    >>> written("1,5 UK fl oz", asked=Asked(name="Water", example="500 ml"))
    Written(number=1.5, unit='uk fl oz')
    """
    tidy = " ".join(text.split()).casefold()
    if not tidy:
        raise MissingError(
            name=asked.name,
            advice=f"Write {asked.example}.",
            argument=asked.argument,
        )
    if _TWO_SIGNS.fullmatch(tidy):
        raise asked.refusal(
            text, allowed="a number with one decimal sign, such as 1234.5"
        )
    found = _NUMBER.fullmatch(tidy)
    if len(tidy) > MOST_CHARACTERS or found is None:
        raise asked.refusal(text)
    number = found["number"]
    if _COULD_BE_THOUSANDS.fullmatch(number):
        raise asked.refusal(text, allowed=_both_meanings(number))
    value = float(number.replace(",", "."))
    sign = -1.0 if found["sign"] in {"-", "−"} else 1.0
    return Written(number=sign * value, unit=(found["unit"] or "").strip())


def _both_meanings(number: str) -> str:
    """Say how a comma before three digits can be written without doubt."""
    whole, part = number.split(",")
    return f"{whole}.{part} or as {whole}{part}, since a comma could mean either"
