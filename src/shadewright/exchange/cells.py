"""Words in a cell that a spreadsheet would take for a formula, and reckon.

A note of somebody else’s file that begins with = may fetch or send what it likes where
the table is opened next. An apostrophe before it makes it words; it is taken away again
where the table is read.
"""

import re

_BEGINS = ("=", "+", "-", "@", "\t")
_WORDS = "'"
_NUMBER = re.compile(r"[+-]?[0-9]+(?:\.[0-9]*)?", re.ASCII)


def words_cell(text: str) -> str:
    """Return words as a spreadsheet leaves them alone; a number stays one."""
    if not text.startswith(_BEGINS) or _NUMBER.fullmatch(text):
        return text
    return f"{_WORDS}{text}"


def plain_cell(text: str) -> str:
    """Return the words of a cell as they were before ``words_cell``."""
    plain = text.removeprefix(_WORDS)
    return plain if plain.startswith(_BEGINS) else text
