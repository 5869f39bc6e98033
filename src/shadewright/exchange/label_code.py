"""The text inside a bottle label's square code, written and read back.

The text is ``SHADEWRIGHT:BOTTLE:`` and the bottle's short code, in capitals:
the square code packs capitals tighter, so that the same small square carries
a quarter of its area as repair (ISO/IEC 18004, alphanumeric mode, level Q).
"""

from shadewright.core.solutions.codes import typed_code
from shadewright.errors import UnreadableError

_PREFIX = "SHADEWRIGHT:BOTTLE:"


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
