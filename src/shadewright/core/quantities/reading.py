"""A text with a number and a unit, taken apart.

A decimal comma is as good as a decimal point. What could be meant in two ways
is refused: ``1,234.5`` has two signs, and ``1,500`` is one and a half to one
reader and fifteen hundred to another.
"""

import re
from collections.abc import Mapping
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
        return UnitError(
            name=self.name,
            given=as_given(text),
            allowed=allowed or self.example,
            argument=self.argument,
        )


def as_given(text: str) -> str:
    r"""Return what was typed as a sentence can hold it: one line, not too long.

    Parameters
    ----------
    text : str
        What was typed, whatever it was. [-]

    Returns
    -------
    str
        The text; signs that no one can see are shown as �. [-]

    Notes
    -----
    So that no line break and no order to the terminal gets out again.

    Examples
    --------
    >>> as_given("5\n00 ml")
    '5 00 ml'
    """
    line = " ".join(text.split())
    seen = "".join(sign if sign.isprintable() else "�" for sign in line)
    return seen if len(seen) <= MOST_CHARACTERS else f"{seen[:MOST_CHARACTERS]}…"


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
    unit = (found["unit"] or "").replace(".", "").strip()  # "fl. oz."
    return Written(number=sign * value, unit=unit)


def _both_meanings(number: str) -> str:
    """Say how a comma before three digits can be written without doubt."""
    whole, part = number.split(",")
    return f"{whole}.{part} or as {whole}{part}, since a comma could mean either"


def with_unit(text: str, *, asked: Asked, default_unit: str | None) -> Written:
    """Return what was written, with the printed unit where none was typed.

    Parameters
    ----------
    text : str
        What was typed. [-]
    asked : Asked
        What the text should tell. [-]
    default_unit : str or None
        Unit of a bare number, where one is printed beside the field. [-]

    Returns
    -------
    Written
        The number with its unit word. [-]

    Notes
    -----
    See ``written``.

    Examples
    --------
    >>> asked = Asked(name="Water", example="500 ml")
    >>> with_unit("500", asked=asked, default_unit="ml")
    Written(number=500.0, unit='ml')
    """
    found = written(text, asked=asked)
    if found.unit or default_unit is None:
        return found
    return Written(number=found.number, unit=default_unit.casefold())


def read_amount(
    text: str,
    *,
    asked: Asked,
    worth: Mapping[str, float],
    default_unit: str | None,
) -> float:
    """Return an amount in the unit whose worth is 1.

    Parameters
    ----------
    text : str
        What was typed. [-]
    asked : Asked
        What the text should tell. [-]
    worth : mapping of str to float
        What each unit word is worth. [-]
    default_unit : str or None
        Unit of a bare number, where one is printed beside the field. [-]

    Returns
    -------
    float
        The amount, of any size and either sign. [in that unit]

    Raises
    ------
    UnitError
        If the unit word is none of them.

    Notes
    -----
    See ``written``.

    Examples
    --------
    >>> asked = Asked(name="Water", example="500 ml")
    >>> worth = {"ml": 1.0, "l": 1000.0}
    >>> read_amount("0.5 l", asked=asked, worth=worth, default_unit=None)
    500.0
    """
    found = with_unit(text, asked=asked, default_unit=default_unit)
    if found.unit not in worth:
        raise asked.refusal(text)
    return found.number * worth[found.unit]
