"""Spectra as keyword text, the graphic arts’ way of passing on what a meter read.

The text is that of ISO 28178 [iso28178]_, first agreed as CGATS.17: a first word,
keywords with their values, the names of the fields, then a row a sample.

::

    CGATS.17
    NUMBER_OF_FIELDS 33
    BEGIN_DATA_FORMAT
    SAMPLE_ID SAMPLE_NAME SPECTRAL_NM400 … SPECTRAL_NM700
    END_DATA_FORMAT
    NUMBER_OF_SETS 1
    BEGIN_DATA
    1 "Gorse 1 %" 0.0512 … 0.6217
    END_DATA

Bands are columns of their own, or pairs of ``SPECTRAL_NM`` and ``SPECTRAL_DEC`` (a
fraction) or ``SPECTRAL_PCT`` (per cent). Names are as remembered from the standard;
meters spell the columns in more than one way, and all of them are read.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from shadewright.errors import UnreadableError
from shadewright.exchange.rows import (
    RowError,
    RowProblem,
    in_bands,
    number_of,
    problem_of,
)
from shadewright.exchange.spectra import ReadSpectra, Spectrum

__all__ = ["is_cgats", "read_cgats", "written_cgats"]

_WORD = re.compile(r'#.*|"((?:[^"]|"")*)"|(\S+)')
_BAND = re.compile(r"(?:SPECTRAL_?)?(?:NM)?_?(\d{3})(?:\.0+)?", re.IGNORECASE)
_AT, _AS_FRACTION, _AS_PERCENT = "SPECTRAL_NM", "SPECTRAL_DEC", "SPECTRAL_PCT"
_NAMED_BY = ("SAMPLE_NAME", "SAMPLE_ID")
_NM = range(400, 701, 10)


@dataclass
class _Table:
    """What was read so far of a file: fields, sets, and what is amiss."""

    worth: float = 1.0
    fields: tuple[str, ...] = ()
    spectra: list[Spectrum] = field(default_factory=list)
    rejected: list[RowProblem] = field(default_factory=list)
    promised: int = 0
    promised_in: int = 0

    def promise(self, line: int, words: Sequence[str]) -> None:
        """Note how many rows the text says that it has."""
        count = words[1] if len(words) > 1 else ""
        if count.isdecimal():
            self.promised, self.promised_in = self.promised + int(count), line

    def close(self) -> None:
        """Say so where rows lack: the text was cut short."""
        came = len(self.spectra) + len(self.rejected)
        if came < self.promised:
            why = f"it says {self.promised} rows, {came} came; the rest is cut off"
            self.rejected.append(RowProblem(line=self.promised_in, why=why))

    def take(self, line: int, words: Sequence[str]) -> None:
        """Take one row in, or say why it cannot be used."""
        try:
            found = _spectrum(line, self.fields, words, self.worth)
            self.spectra.append(found)
        except RowError as error:
            self.rejected.append(problem_of(error, line=line))


def is_cgats(text: str) -> bool:
    """Tell whether a text has the sections of keyword text."""
    return re.search(r"^\s*BEGIN_DATA\b", text, re.MULTILINE) is not None


def read_cgats(text: str, *, worth: float = 1.0) -> ReadSpectra:
    """Return the spectra of a text; a bad row stops no other.

    ``worth`` is what a plain number stands for: 0.01 where they are per cent.
    Raises UnreadableError where no table of spectra is in it.
    """
    table, section = _Table(worth=worth), ""
    named: list[str] = []
    for line, words in _lines(text):
        match words[0].upper():
            case "BEGIN_DATA_FORMAT" | "BEGIN_DATA":
                section = words[0].upper()
                named = []
            case "END_DATA_FORMAT":
                table.fields, section = _checked_fields(named), ""
            case "END_DATA":
                section = ""
            case _ if section == "BEGIN_DATA_FORMAT":
                named += words
            case _ if section:
                table.take(line, words)
            case "NUMBER_OF_SETS":
                table.promise(line, words)
    if not table.fields or not (table.spectra or table.rejected):
        raise _unreadable(why="It has no rows of data with named fields.")
    table.close()
    return ReadSpectra(spectra=tuple(table.spectra), rejected=tuple(table.rejected))


def _lines(text: str) -> list[tuple[int, list[str]]]:
    """Return the words of each line that holds any, with its number."""
    lines = enumerate(text.removeprefix("\ufeff").splitlines(), start=1)
    return [(line, words) for line, whole in lines if (words := _words(whole))]


def _words(line: str) -> list[str]:
    """Return the words of a line, what stands in quotes as one of them."""
    return [
        match[2] or match[1].replace('""', '"')
        for match in _WORD.finditer(line)
        if match[1] is not None or match[2]
    ]


def _checked_fields(names: Sequence[str]) -> tuple[str, ...]:
    fields = tuple(name.upper() for name in names)
    if _AT not in fields and not any(map(_BAND.fullmatch, fields)):
        raise _unreadable(why="None of its fields is a band of a spectrum.")
    return fields


def _unreadable(*, why: str) -> UnreadableError:
    return UnreadableError(
        name="The spectra",
        why=why,
        advice=f"Name the fields like SAMPLE_NAME, {_AT}400 … {_AT}700.",
    )


def _spectrum(
    line: int, fields: Sequence[str], words: Sequence[str], worth: float
) -> Spectrum:
    if len(words) != len(fields):
        message = f"it has {len(words)} values for {len(fields)} fields"
        raise RowError(message)
    named = dict(zip(fields, words, strict=True))
    return Spectrum(
        name=next((named[key] for key in _NAMED_BY if named.get(key)), f"line {line}"),
        line=line,
        values=in_bands(_pairs(fields, words) or _columns(named), worth=worth),
    )


def _columns(named: Mapping[str, str]) -> dict[int, float]:
    """Return the bands that are columns of their own."""
    found = {}
    for name, word in named.items():
        match = _BAND.fullmatch(name)
        if match is not None:
            found[int(match[1])] = number_of(word, name)
    return found


def _pairs(fields: Sequence[str], words: Sequence[str]) -> dict[int, float]:
    """Return the bands that are written as wavelength and value, in turn."""
    found, nm = {}, 0
    for name, word in zip(fields, words, strict=True):
        if name == _AT:
            nm = round(number_of(word, name))
        elif name in {_AS_FRACTION, _AS_PERCENT}:
            share = 100.0 if name == _AS_PERCENT else 1.0
            found[nm] = number_of(word, f"{name} at {nm} nm") / share
    return found


def written_cgats(spectra: Iterable[tuple[str, Sequence[float]]]) -> str:
    """Return spectra, each a name and 31 fractions, as text that reads back equal."""
    rows = list(spectra)
    fields = ["SAMPLE_ID", "SAMPLE_NAME", *(f"{_AT}{nm}" for nm in _NM)]
    sets = [
        " ".join([f"{place}", _quoted(name), *(repr(float(each)) for each in values)])
        for place, (name, values) in enumerate(rows, start=1)
    ]
    return "\n".join([
        "CGATS.17",
        f"NUMBER_OF_FIELDS {len(fields)}",
        "BEGIN_DATA_FORMAT",
        " ".join(fields),
        "END_DATA_FORMAT",
        f"NUMBER_OF_SETS {len(sets)}",
        "BEGIN_DATA",
        *sets,
        "END_DATA",
        "",
    ])


def _quoted(name: str) -> str:
    """Return a name in quotes, on one line."""
    return '"' + " ".join(name.split()).replace('"', '""') + '"'
