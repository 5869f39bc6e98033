"""A recipe's lots as a table, and what changed in the last of them as an answer.

::

    lot,date,L,a,b,jar,bottle,bottle_age_days,mill_lot,water,pot,load_g_per_l,…
    L1,2026-03-02,48.1,22.0,9.7,J1,B3,12,M7,rain,P1,26,1.5,45,15,first

One row a lot, oldest first. What nobody wrote down is an empty cell, or a column that
is not there. Rows after the lot that is asked about are not read.
"""

import csv
import io
from collections.abc import Mapping, Sequence
from datetime import date
from itertools import pairwise
from typing import Any, Final

from shadewright.core.colour import Lab
from shadewright.core.quality import Factor, LotCauses, PastLot
from shadewright.core.quality.causes import NUMBERS
from shadewright.errors import NotFoundError, UnreadableError
from shadewright.exchange.cells import plain_cell, words_cell
from shadewright.exchange.rows import RowError, RowProblem, number_of
from shadewright.exchange.table_text import with_commas

_LAB: Final = ("L", "a", "b")
_NEEDED: Final = ("lot", *_LAB)
_MOST: Final = {
    Factor.BOTTLE_AGE: 36_500.0,
    Factor.LOAD: 1_000.0,
    Factor.RAMP: 100.0,
    Factor.HOLD: 10_000.0,
    Factor.ACID_AFTER: 10_000.0,
}
_FAULTS_SAID = 5


def read_history(text: str, *, number: str) -> tuple[PastLot, ...]:
    """Return the lots up to the one that is asked about, or say all that is amiss."""
    rows = _rows(with_commas(text.removeprefix("\ufeff")))
    columns = _columns(rows)
    lots: list[PastLot] = []
    problems: list[RowProblem] = []
    lines: dict[str, int] = {}
    days: list[str] = []
    for line, cells in rows[1:]:
        try:
            row = _row(columns, cells)
            _require_own_number(row["lot"], lines)
            lines[row["lot"].casefold()] = line
            days += _day(row)
            lots.append(_lot(row))
        except RowError as error:
            problems.append(RowProblem(line=line, why=f"{error}"))
        if number.casefold() in lines:
            break
    _refuse(problems)
    _require_oldest_first(days)
    if number.casefold() not in lines:
        raise _not_there(number, lots)
    return tuple(lots)


def unread_columns(text: str) -> tuple[str, ...]:
    """Return the columns of a history that say nothing of a cause, as a slip does."""
    columns = _columns(_rows(with_commas(text.removeprefix("\ufeff"))))
    known = {"", "date", "note", *_NEEDED, *Factor}
    return tuple(name for name in columns if name not in known)


def history_text(lots: Sequence[PastLot], *, dates: Sequence[date]) -> str:
    """Return lots as a table that ``read_history`` reads as the same lots."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    table.writerow(["lot", "date", *_LAB, *Factor])
    for lot, day in zip(lots, dates, strict=True):
        colour = lot.colour or ("", "", "")
        facts = (getattr(lot, factor) for factor in Factor)
        told = ("" if fact is None else words_cell(f"{fact}") for fact in facts)
        table.writerow([words_cell(lot.number), day.isoformat(), *colour, *told])
    return out.getvalue()


def causes_answer(found: LotCauses) -> dict[str, object]:
    """Return an answer as the command gives it."""
    answer: dict[str, object] = {
        "de": found.de,
        "expected_de": found.expected_de,
        "verdict": found.verdict.value,
        "causes": [
            {
                "factor": cause.factor.value,
                "was": cause.was,
                "now": cause.now,
                "score": cause.score,
                "expected_shift": cause.expected and list(cause.expected),
            }
            for cause in found.causes
        ],
        "unknown": found.unknown,
        "signals": list(found.signals),
    }
    return answer if found.de is not None else {**answer, "de_why": found.why}


def _rows(text: str) -> list[tuple[int, list[str]]]:
    """Return each row that is not blank, with its line."""
    table = csv.reader(io.StringIO(text), strict=True)
    try:
        return [(table.line_num, row) for row in table if any(map(str.strip, row))]
    except csv.Error as error:
        raise _unreadable(
            why=f"Line {table.line_num} is no row of a table ({error})."
        ) from None


def _columns(rows: Sequence[tuple[int, list[str]]]) -> list[str]:
    """Return the names of the columns as they are known, or say what is amiss."""
    if not rows:
        raise _unreadable(why="It is empty.")
    head = [_spelt(cell) for cell in rows[0][1]]
    missing = [name for name in _NEEDED if name not in head]
    if missing:
        raise _unreadable(why=f"Its first row lacks {' and '.join(missing)}.")
    twice = sorted({name for name in head if name and head.count(name) > 1})
    if twice:
        raise _unreadable(why=f"Column {twice[0]} stands there twice.")
    return head


def _spelt(cell: str) -> str:
    name = cell.strip().replace("*", "")
    return "L" if name in {"L", "l"} else name.casefold()


def _row(columns: Sequence[str], cells: Sequence[str]) -> Mapping[str, str]:
    if len(cells) != len(columns):
        message = f"it has {len(cells)} cells where the first row has {len(columns)}"
        raise RowError(message)
    plain = (plain_cell(cell.strip()) for cell in cells)
    row = dict(zip(columns, plain, strict=True))
    if not row["lot"]:
        message = "no lot is named"
        raise RowError(message)
    return row


def _require_own_number(lot: str, lines: Mapping[str, int]) -> None:
    if lot.casefold() in lines:
        message = f"lot {lot} stands in line {lines[lot.casefold()]} too"
        raise RowError(message)


def _day(row: Mapping[str, str]) -> list[str]:
    """Return the date of a row if it has one that can be put in order."""
    try:
        return [date.fromisoformat(row.get("date", "")).isoformat()]
    except ValueError:
        return []


def _require_oldest_first(days: Sequence[str]) -> None:
    """Refuse a table that runs backwards; a single date may be a slip."""
    steps = list(pairwise(days))
    if sum(one > two for one, two in steps) > len(steps) / 2:
        raise _unreadable(
            why="Its dates go back from row to row.",
            advice="Put the oldest lot first.",
        )


def _lot(row: Mapping[str, str]) -> PastLot:
    fields: dict[str, Any] = {
        factor: _number(row, factor) if factor in NUMBERS else row.get(factor) or None
        for factor in Factor
    }
    return PastLot(number=row["lot"], colour=_colour(row), **fields)


def _colour(row: Mapping[str, str]) -> Lab | None:
    cells = [row[name] for name in _LAB]
    if not any(cells):
        return None
    if not all(cells):
        message = "L, a and b must all be written, or none of them"
        raise RowError(message)
    lightness, *rest = map(number_of, cells, _LAB)
    if not 0.0 <= lightness <= 100.0:
        message = f"L is {lightness:g}, outside 0 to 100"
        raise RowError(message)
    for name, value in zip(_LAB[1:], rest, strict=True):
        if abs(value) > 200.0:
            message = f"{name} is {value:g}, outside −200 to 200"
            raise RowError(message)
    return Lab(lightness, *rest)


def _number(row: Mapping[str, str], factor: Factor) -> float | None:
    cell = row.get(factor)
    if not cell:
        return None
    value = number_of(cell, factor)
    if not 0.0 <= value <= _MOST[factor]:
        message = f"{factor} is {value:g}, outside 0 to {_MOST[factor]:g}"
        raise RowError(message)
    return value


def _refuse(problems: Sequence[RowProblem]) -> None:
    """Say all rows that cannot be used in one sentence."""
    if not problems:
        return
    said = [f"line {each.line}: {each.why}" for each in problems[:_FAULTS_SAID]]
    if len(problems) > _FAULTS_SAID:
        said.append(f"and {len(problems) - _FAULTS_SAID} lines more")
    whole = "; ".join(said)
    raise _unreadable(why=f"{whole[0].upper()}{whole[1:]}.", advice="")


def _not_there(number: str, lots: Sequence[PastLot]) -> NotFoundError:
    known = f"It goes from {lots[0].number} to {lots[-1].number}." if lots else ""
    return NotFoundError(
        kind="lot in this history",
        key=number,
        advice=known or "It has no rows.",
        argument="lot",
    )


def _unreadable(
    *, why: str, advice: str = "Begin with a row like lot,date,L,a,b,jar,bottle."
) -> UnreadableError:
    return UnreadableError(name="The lot history", why=why, advice=advice)
