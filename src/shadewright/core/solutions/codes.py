"""Bottle codes: three signs that wet hands can read, say and type.

A code is letter, digit, letter (``S7K``). Signs that look alike are left out:
0 and O, 1 and I, 2 and Z, 5 and S, 8 and B. As the middle sign is
always a digit, G and 6 or T and 7 cannot be mistaken for each other either.
There are 2205 such codes; a crowded shelf gets a fourth letter.
"""

from collections.abc import Collection
from typing import Protocol

from shadewright.errors import OutOfRangeError

CODE_LETTERS = "ACDEFGHJKLMNPQRTUVWXY"
CODE_DIGITS = "34679"
_FORM = "letter, digit, letter, as on the bottle’s label (like K7R)"


class IntegerSource(Protocol):
    """A random generator, or anything that draws whole numbers below a bound."""

    def randrange(self, stop: int, /) -> int:
        """Return a whole number from 0 up to, not including, ``stop``."""
        ...


def unused_code(*, taken: Collection[str], numbers: IntegerSource) -> str:
    """Return a code that no bottle, present or past, has carried.

    Parameters
    ----------
    taken : collection of str
        Codes already given out, ever.
    numbers : IntegerSource
        Where the draw comes from.

    Returns
    -------
    str
        A code of three signs, or of four once half of the short ones are gone.

    Notes
    -----
    A code is never given twice, so an old label cannot point at a new bottle.
    """
    is_crowded = 2 * len(taken) > len(CODE_LETTERS) ** 2 * len(CODE_DIGITS)
    signs = (CODE_LETTERS, CODE_DIGITS, CODE_LETTERS, CODE_LETTERS)
    while True:
        drawn = [row[numbers.randrange(len(row))] for row in signs]
        code = "".join(drawn if is_crowded else drawn[:3])
        if code not in taken:
            return code


def typed_code(text: str) -> str:
    """Return the code that was typed, in its printed form.

    Parameters
    ----------
    text : str
        What was typed: case, spaces and hyphens do not matter.

    Returns
    -------
    str
        The code in capitals, without spaces.

    Raises
    ------
    OutOfRangeError
        If the text has not the form of a code.

    Examples
    --------
    >>> typed_code(" t7k ")
    'T7K'
    """
    code = "".join(text.split()).replace("-", "").upper()
    signs = (CODE_LETTERS, CODE_DIGITS, CODE_LETTERS, CODE_LETTERS)
    fits = len(code) in {3, 4} and all(
        c in s for c, s in zip(code, signs, strict=False)
    )
    if not fits:
        given = f"“{text.strip()[:20]}”"
        raise OutOfRangeError(
            name="A bottle’s code", given=given, allowed=_FORM, argument="code"
        )
    return code
