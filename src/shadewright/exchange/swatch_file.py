"""Swatches as a table: one row a swatch, every bad row told with its line.

::

    base,doses,L,a,b,sd,session
    Hollow 4-ply,,92.1,-0.4,7.9,0.2,May
    Hollow 4-ply,Gorse=0.5;Slate=0.2,55.0,3.2,21.7,0.3,May

``doses`` is empty for undyed yarn. What was read stands as L, a, b (D65/10°), with
``L_A``, ``a_A``, ``b_A`` and ``L_FL11`` … where it was read under those lights too;
or as reflectances ``R400`` … ``R700``, fractions; or as ``hex``.
"""

import csv
import io
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.mixing.swatches import (
    Evidence,
    Reading,
    Swatch,
    checked_doses,
    checked_swatch,
)
from shadewright.errors import StudioError, UnreadableError
from shadewright.exchange.cells import plain_cell, words_cell
from shadewright.exchange.colour_text import (
    hex_of_lab,
    measured_lab,
    typed_colour,
)
from shadewright.exchange.rows import (
    RowError,
    RowProblem,
    in_bands,
    number_of,
    problem_of,
)

__all__ = ["ReadSwatches", "RowProblem", "read_swatches", "written_swatches"]

_BAND = re.compile(r"R(\d{3})")
_LAB = ("L", "a", "b")
_FURTHER = ("A", "FL11")
_DOSE = re.compile(r"\s*(?P<dye>[^=;]+?)\s*=\s*(?P<depth>[^=;]+?)\s*%?\s*")
_MOST_ROWS = 20_000


@dataclass(frozen=True, kw_only=True)
class ReadSwatches:
    """The rows that could be used, and those that could not."""

    swatches: tuple[Swatch, ...]
    rejected: tuple[RowProblem, ...]


def read_swatches(text: str) -> ReadSwatches:
    """Return the swatches of a table; a bad row stops no other.

    Raises UnreadableError where the text is no such table at all.
    """
    rows = _rows(text.removeprefix("\ufeff"))
    if not rows:
        raise UnreadableError(
            name="The swatch file",
            why="It is empty.",
            advice="Begin with a row like base,doses,L,a,b.",
        )
    columns = _columns([cell.strip() for cell in rows[0][1]])
    return _read(rows[1:], columns)


def _rows(text: str) -> list[tuple[int, list[str]]]:
    """Return each row that is not blank, with its line."""
    rows = csv.reader(io.StringIO(text), strict=True)
    try:
        return [(rows.line_num, cells) for cells in rows if any(map(str.strip, cells))]
    except csv.Error as error:
        raise UnreadableError(
            name="The swatch file",
            why=f"Line {rows.line_num} is no row of a table ({error}).",
            advice="Save it as CSV with commas.",
        ) from None


def _read(
    rows: Sequence[tuple[int, list[str]]], columns: Sequence[str]
) -> ReadSwatches:
    swatches: list[Swatch] = []
    rejected: list[RowProblem] = []
    for line, cells in rows:
        if len(swatches) + len(rejected) >= _MOST_ROWS:
            rejected.append(RowProblem(line=line, why=f"after {_MOST_ROWS} rows"))
            break
        try:
            swatches.append(_swatch(line, columns, cells))
        except (RowError, StudioError) as error:
            rejected.append(problem_of(error, line=line))
    return ReadSwatches(swatches=tuple(swatches), rejected=tuple(rejected))


def _columns(head: Sequence[str]) -> Sequence[str]:
    """Return the columns by name, or say what is amiss with the first row."""
    missing = {"base", "doses"} - set(head)
    if missing:
        raise UnreadableError(
            name="The swatch file",
            why=f"Its first row lacks {' and '.join(sorted(missing))}.",
            advice="Begin with a row like base,doses,L,a,b.",
        )
    twice = sorted({name for name in head if name and head.count(name) > 1})
    if twice:
        raise UnreadableError(
            name="The swatch file",
            why=f"Column {twice[0]} stands there twice.",
            advice="Name each column once.",
        )
    if not ({*_LAB} <= set(head) or "hex" in head or any(map(_BAND.fullmatch, head))):
        raise UnreadableError(
            name="The swatch file",
            why="It has no column for a colour.",
            advice="Add L,a,b, or reflectances R400 to R700, or hex.",
        )
    return head


def _swatch(line: int, columns: Sequence[str], cells: Sequence[str]) -> Swatch:
    if len(cells) != len(columns):
        message = f"it has {len(cells)} cells where the first row has {len(columns)}"
        raise RowError(message)
    row = {
        name: plain_cell(cell.strip())
        for name, cell in zip(columns, cells, strict=True)
        if name
    }
    if not row["base"]:
        message = "no base is named"
        raise RowError(message)
    swatch = Swatch(
        number=line,
        base=row["base"],
        doses=_doses(row["doses"]),
        reading=_reading(row),
        session=row.get("session", ""),
    )
    return checked_swatch(swatch)


def _doses(text: str) -> tuple[tuple[str, float], ...]:
    found: dict[str, float] = {}
    for part in filter(str.strip, text.split(";")):
        match = _DOSE.fullmatch(part)
        if match is None:
            message = f"the dose “{part.strip()}” is not written as Gorse=0.5"
            raise RowError(message)
        dye = match["dye"].strip("\"'")
        if dye in found:
            message = f"{dye} stands in it twice"
            raise RowError(message)
        found[dye] = number_of(match["depth"], f"the depth of {dye}")
    return tuple(found.items())


def doses_of(text: str, *, line: int) -> tuple[tuple[str, float], ...]:
    """Return the doses of one cell, or say what is wrong on which line."""
    try:
        return checked_doses(_doses(text))
    except (RowError, StudioError) as error:
        raise UnreadableError(
            name="The table of doses",
            why=f"Line {line}: {problem_of(error, line=line).why}.",
            advice="Write doses as Gorse=0.5;Slate=0.2.",
            argument="dose_table",
        ) from None


def _reading(row: Mapping[str, str]) -> Reading:
    """Return the richest reading of a row."""
    bands = {int(m[1]): row[m[0]] for m in map(_BAND.fullmatch, row) if m}
    if any(bands.values()):
        return _made(row, Evidence.SPECTRUM, _spectrum(bands))
    lab = _lights(row)
    if lab:
        kind = Evidence.THREE_LIGHTS if len(lab) > len(_LAB) else Evidence.LAB
        return _made(row, kind, lab)
    if row.get("hex"):
        typed = typed_colour(row["hex"], argument="hex")
        return _made(row, Evidence.SCREEN, measured_lab(typed))
    message = "no colour is written: neither L, a, b nor reflectances nor hex"
    raise RowError(message)


def _made(
    row: Mapping[str, str], evidence: Evidence, values: tuple[float, ...]
) -> Reading:
    repeat = number_of(row.get("repeat") or "1", "repeat")
    if repeat < 1 or repeat != int(repeat):
        message = f"repeat is no whole number of readings: “{row['repeat']}”"
        raise RowError(message)
    spread = row.get("sd", "")
    return Reading(
        evidence=evidence,
        values=values,
        repeat=int(repeat),
        sd=number_of(spread, "sd") if spread else None,
    )


def _spectrum(bands: Mapping[int, str]) -> tuple[float, ...]:
    empty = [nm for nm, cell in bands.items() if not cell]
    if empty:
        message = f"the reflectance at {empty[0]} nm is missing"
        raise RowError(message)
    return in_bands({nm: number_of(cell, f"R{nm}") for nm, cell in bands.items()})


def _lights(row: Mapping[str, str]) -> tuple[float, ...]:
    """Return L, a, b and, where they are whole, those under A and FL11."""
    plain = _three(row, "")
    further = [_three(row, f"_{light}") for light in _FURTHER]
    if plain is None:
        if any(further):
            message = "L, a, b under D65 are missing"
            raise RowError(message)
        return ()
    if all(further):
        return plain + tuple(value for three in further for value in three or ())
    return plain


def _three(row: Mapping[str, str], suffix: str) -> tuple[float, ...] | None:
    cells = [row.get(name + suffix, "") for name in _LAB]
    if not any(cells):
        return None
    if not all(cells):
        message = f"L{suffix}, a{suffix}, b{suffix} must all be written"
        raise RowError(message)
    return tuple(
        number_of(cell, name + suffix) for cell, name in zip(cells, _LAB, strict=True)
    )


def written_swatches(
    swatches: Sequence[Swatch],
    *,
    dates: Mapping[int, str] | None = None,
    notes: Mapping[int, str] | None = None,
) -> str:
    """Return swatches as a table that ``read_swatches`` reads back equal.

    ``dates`` and ``notes`` are written beside the swatch of that number. A colour off
    a screen is written as its hex, one that no screen shows as Lab.
    """
    nm = range(400, 701, 10)
    lab = [*_LAB, *(f"{name}_{light}" for light in _FURTHER for name in _LAB)]
    columns = ["base", "doses", *lab, *(f"R{band}" for band in nm)]
    columns += ["hex", "repeat", "sd", "session", "date", "note"]
    out = io.StringIO()
    table = csv.DictWriter(out, columns, restval="", lineterminator="\n")
    table.writeheader()
    for each in swatches:
        table.writerow({
            "base": words_cell(each.base),
            "doses": words_cell(";".join(f"{dye}={x!r}" for dye, x in each.doses)),
            **_cells(each.reading, lab, [f"R{band}" for band in nm]),
            "session": words_cell(each.session),
            "date": (dates or {}).get(each.number, ""),
            "note": words_cell((notes or {}).get(each.number, "")),
        })
    return out.getvalue()


def _cells(
    reading: Reading, lab: Sequence[str], bands: Sequence[str]
) -> dict[str, str]:
    """Return what was read, and what it is worth."""
    names = bands if reading.evidence is Evidence.SPECTRUM else lab
    found = dict(zip(names, map(repr, reading.values), strict=False))
    if reading.evidence is Evidence.SCREEN:
        light, a, b = reading.values
        code = hex_of_lab((light, a, b))
        found = {"hex": code} if code else found
    sd = "" if reading.sd is None else repr(reading.sd)
    return {**found, "repeat": str(reading.repeat), "sd": sd}
