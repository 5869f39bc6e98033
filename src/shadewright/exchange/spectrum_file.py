"""Spectra as somebody keeps them: a table by rows or by columns, or keyword text.

::

    name,R400,R410,…,R700          nm,R                    CGATS.17
    Gorse,0.05,0.06,…,0.62         400,0.05                …

Reflectances are fractions, in an even step of 5, 10 or 20 nm that holds 400 and 700.
Where people hand in what their meter wrote, ``told_apart_spectra`` takes per cent too.
"""

import csv
import io
import re
from collections.abc import Sequence

from shadewright.errors import UnreadableError
from shadewright.exchange.cgats import is_cgats, read_cgats
from shadewright.exchange.rows import (
    RowError,
    RowProblem,
    in_bands,
    number_of,
    problem_of,
)
from shadewright.exchange.spectra import ReadSpectra, Spectrum

__all__ = ["is_spectra", "read_spectra", "told_apart_spectra"]

_BAND = re.compile(r"R_?(\d{3})", re.IGNORECASE)
_NM = re.compile(r"(?:nm|wavelength.*|lambda|λ)", re.IGNORECASE)
_NAMES = {"name", "sample", "base"}
_PER_CENT = 0.01
_MOST_FRACTION = 2.0


def read_spectra(text: str, *, worth: float = 1.0) -> ReadSpectra:
    """Return the spectra of a text; a bad row stops no other.

    ``worth`` is what a plain number stands for. Raises UnreadableError where the text
    holds no spectrum at all.
    """
    if is_cgats(text):
        return _useful(read_cgats(text, worth=worth))
    rows = _rows(text.removeprefix("\ufeff"))
    head = [cell.strip() for cell in rows[0][1]] if rows else []
    if any(map(_BAND.fullmatch, head)):
        return _useful(_across(head, rows[1:], worth))
    if head and _NM.fullmatch(head[0]):
        return _useful(_down(head, rows[1:], worth))
    raise _unreadable(why="It has neither columns R400 to R700 nor a first column nm.")


def is_spectra(text: str) -> bool:
    """Tell whether a text begins as one that holds spectra does."""
    first = next(iter(text.removeprefix("\ufeff").splitlines()), "")
    head = [cell.strip() for cell in first.split(",")]
    has_bands = any(map(_BAND.fullmatch, head)) or bool(_NM.fullmatch(head[0]))
    return has_bands or is_cgats(text)


def told_apart_spectra(text: str) -> ReadSpectra:
    """Return the spectra of a text whose numbers are per cent, or all fractions.

    They are per cent where the largest of the whole text is above 2.
    """
    as_per_cent = read_spectra(text, worth=_PER_CENT)
    most = max(max(each.values) for each in as_per_cent.spectra)
    is_per_cent = most > _MOST_FRACTION * _PER_CENT
    return as_per_cent if is_per_cent else read_spectra(text)


def _unreadable(*, why: str) -> UnreadableError:
    return UnreadableError(
        name="The spectrum file",
        why=why,
        advice="Begin with a row like name,R400,R410 … R700, or like nm,R.",
    )


def _useful(read: ReadSpectra) -> ReadSpectra:
    """Return what was read, unless not one spectrum can be used."""
    if read.spectra:
        return read
    first = next(iter(read.rejected), None)
    raise _unreadable(
        why=f"Line {first.line}: {first.why}." if first else "It has no rows."
    )


def _rows(text: str) -> list[tuple[int, list[str]]]:
    """Return each row that is not blank, with its line."""
    rows = csv.reader(io.StringIO(text), strict=True)
    try:
        return [(rows.line_num, cells) for cells in rows if any(map(str.strip, cells))]
    except csv.Error as error:
        raise _unreadable(why=f"Line {rows.line_num} is no row ({error}).") from None


def _across(
    head: Sequence[str], rows: Sequence[tuple[int, list[str]]], worth: float
) -> ReadSpectra:
    """Return a spectrum a row."""
    spectra: list[Spectrum] = []
    rejected: list[RowProblem] = []
    for line, cells in rows:
        try:
            spectra.append(_row(head, line, cells, worth))
        except RowError as error:
            rejected.append(problem_of(error, line=line))
    return ReadSpectra(spectra=tuple(spectra), rejected=tuple(rejected))


def _row(
    head: Sequence[str], line: int, cells: Sequence[str], worth: float
) -> Spectrum:
    if len(cells) != len(head):
        message = f"it has {len(cells)} cells where the first row has {len(head)}"
        raise RowError(message)
    name, bands = "", {}
    for column, cell in zip(head, map(str.strip, cells), strict=True):
        match = _BAND.fullmatch(column)
        if match is not None:
            bands[int(match[1])] = number_of(cell, column)
        elif column.casefold() in _NAMES:
            name = name or cell
    values = in_bands(bands, worth=worth)
    return Spectrum(name=name or f"line {line}", line=line, values=values)


def _down(
    head: Sequence[str], rows: Sequence[tuple[int, list[str]]], worth: float
) -> ReadSpectra:
    """Return a spectrum a column, the wavelengths in the first."""
    if not rows:
        raise _unreadable(why="It has no rows.")
    spectra: list[Spectrum] = []
    rejected: list[RowProblem] = []
    for column, name in enumerate(head[1:], start=1):
        try:
            values = in_bands(_column(column, rows), worth=worth)
            spectra.append(Spectrum(name=name, line=1, values=values))
        except RowError as error:
            rejected.append(RowProblem(line=1, why=f"column {name or column}: {error}"))
    return ReadSpectra(spectra=tuple(spectra), rejected=tuple(rejected))


def _column(column: int, rows: Sequence[tuple[int, list[str]]]) -> dict[int, float]:
    """Return reflectances by wavelength from one column."""
    found = {}
    for line, cells in rows:
        if column >= len(cells):
            message = f"line {line} has no value"
            raise RowError(message)
        nm = round(number_of(cells[0].strip(), f"the wavelength in line {line}"))
        found[nm] = number_of(cells[column].strip(), f"line {line}")
    return found
