"""A table line by line: what else stands in a row, and the bad rows to be mended."""

import csv
import io
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from shadewright.exchange.cells import plain_cell, words_cell
from shadewright.exchange.rows import RowProblem

_WHY = "reason"


@dataclass(frozen=True, kw_only=True)
class TableLines:
    """The columns of a table and the cells of each row, by its line."""

    columns: tuple[str, ...]
    rows: Mapping[int, tuple[str, ...]]

    def cell(self, line: int, column: str) -> str:
        """Return a cell of a line, or nothing where there is no such column."""
        if column not in self.columns:
            return ""
        cells = self.rows[line]
        place = self.columns.index(column)
        return plain_cell(cells[place].strip()) if place < len(cells) else ""

    def words(self, line: int) -> str:
        """Return a line as it stands there; nothing where it is none of a row."""
        return ", ".join(filter(None, map(str.strip, self.rows.get(line, ()))))


def table_lines(text: str) -> TableLines:
    """Return a table that ``read_swatches`` takes, line by line; nothing of others."""
    table = csv.reader(io.StringIO(text.removeprefix("\ufeff")))
    try:
        rows = [(table.line_num, x) for x in table if any(map(str.strip, x))]
    except csv.Error:
        rows = []
    if not rows:
        return TableLines(columns=(), rows={})
    head = tuple(cell.strip() for cell in rows[0][1])
    return TableLines(
        columns=head, rows={line: tuple(cells) for line, cells in rows[1:]}
    )


def lines_to_mend(table: TableLines, problems: Iterable[RowProblem]) -> str:
    """Return bad rows as a table of their own, each with its reason at the end."""
    names = [name for name in table.columns if name != _WHY]
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([*names, _WHY])
    for problem in problems:
        if problem.line in table.rows:
            cells = [table.cell(problem.line, name) for name in names]
            writer.writerow([words_cell(cell) for cell in (*cells, problem.why)])
    return out.getvalue()
