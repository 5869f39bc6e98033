"""Spectra as somebody pastes them for one colour: a file’s text, or bare numbers.

Bare numbers run from 400 to 700 nm: 31 of them, 16 or 61, one spectrum a line or one
number a line; or each stands behind its wavelength, one pair a line. They are per cent
where the largest is above 2.
"""

import re
from collections.abc import Sequence
from itertools import pairwise

from shadewright.errors import InputError, UnreadableError
from shadewright.exchange.spectrum_file import told_apart_spectra
from shadewright.exchange.table_text import with_commas

_STEPS_NM = {16: 20, 31: 10, 61: 5}
_PAIR, _LEAST_PAIRS, _SHORTEST_NM = 2, 3, 200.0
_NUMBER = re.compile(r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?")
_SPACES = re.compile(r"[;\s]+")
_GAPS = re.compile(r"[;,\s]+")


def typed_spectra(
    text: str, *, argument: str = "spectrum"
) -> tuple[tuple[float, ...], ...]:
    """Return each spectrum, 31 fractions; refuse the text if one row is none."""
    headed = _headed(text.strip(), argument)
    try:
        read = told_apart_spectra(headed or with_commas(text))
    except InputError as error:
        error.argument = argument
        raise
    if read.rejected:
        first = read.rejected[0]
        line = first.line - 1 if headed else first.line
        raise _unreadable(argument, why=f"Line {line}: {first.why}.")
    return tuple(each.values for each in read.spectra)


def _headed(text: str, argument: str) -> str:
    """Return bare numbers as a table with a head, or nothing if they are none."""
    lines = [_words(line) for line in text.splitlines() if line.strip()]
    if not lines or not all(_NUMBER.fullmatch(x) for words in lines for x in words):
        return ""
    if all(len(words) == 1 for words in lines):
        lines = [[words[0] for words in lines]]
    rows = [",".join(word.replace(",", ".") for word in words) for words in lines]
    if _are_pairs(lines):
        return "\n".join(["nm,R", *rows])
    count = len(lines[0])
    if count not in _STEPS_NM:
        numbers = "1 number stands" if count == 1 else f"{count} numbers stand"
        raise _unreadable(argument, why=f"{numbers} there.")
    head = ",".join(f"R{nm}" for nm in range(400, 701, _STEPS_NM[count]))
    return "\n".join([head, *rows])


def _are_pairs(lines: Sequence[Sequence[str]]) -> bool:
    """Whether each line is a wavelength and its reflectance, the shortest first."""
    if len(lines) < _LEAST_PAIRS or any(len(words) != _PAIR for words in lines):
        return False
    nm = [float(words[0].replace(",", ".")) for words in lines]
    return nm[0] >= _SHORTEST_NM and all(a < b for a, b in pairwise(nm))


def _words(line: str) -> Sequence[str]:
    """Return the numbers of a line; a comma parts them where nothing else does."""
    words = _SPACES.split(line.strip().strip(";,"))
    is_parted_by_commas = any(word.count(",") > 1 or word[-1:] == "," for word in words)
    return _GAPS.split(line.strip().strip(";,")) if is_parted_by_commas else words


def _unreadable(argument: str, *, why: str) -> UnreadableError:
    return UnreadableError(
        name="The spectrum",
        why=why,
        advice="Paste 31 numbers from 400 to 700 nm, or what the meter’s file holds.",
        argument=argument,
    )
