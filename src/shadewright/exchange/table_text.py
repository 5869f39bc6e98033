"""Tables that came out of a spreadsheet: parted by tabs or semicolons, with commas.

They are turned into what the readers of tables take, comma between cells and point in
numbers, line by line, so that a reason still names the line of the text.
"""

import csv
import io
import re

_WORDS = {"base", "doses", "hex", "repeat", "sd", "session", "date", "note"}
_BAND = re.compile(r"R\d{3}")
_MOST_FRACTION = 2.0
_NUMBER = re.compile(r"\s*[+\-−]?\d+,\d+\s*%?\s*")
_DOSE = re.compile(r"(=\s*\d+),(\d)")


def with_commas(text: str) -> str:
    """Return a table parted by commas; keyword text and such a table as they are."""
    head = next((line for line in text.splitlines() if line.strip()), "")
    mark = next((mark for mark in "\t;" if head.count(mark) > head.count(",")), "")
    if not mark or "BEGIN_DATA" in text:
        return text
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    try:
        for cells in csv.reader(io.StringIO(text), delimiter=mark, strict=True):
            table.writerow([_pointed(cell) for cell in cells] or [""])
    except csv.Error:
        return text
    return out.getvalue()


def with_plain_head(text: str) -> str:
    """Return a table whose columns are spelt as the readers know them: L* is L."""
    head, line_end, rest = text.removeprefix("\ufeff").partition("\n")
    cells = [cell.strip().strip('"') for cell in head.split(",")]
    return ",".join(map(_spelt, cells)) + line_end + rest


def _spelt(name: str) -> str:
    if name.casefold() in _WORDS:
        return name.casefold()
    return name.replace("*", "") if "*" in name else name


def with_fractions(text: str) -> str:
    """Return a table whose reflectances are fractions: all by 100 if one is above 2."""
    try:
        rows = list(csv.reader(io.StringIO(text), strict=True))
    except csv.Error:
        return text
    head = next((cells for cells in rows if any(cells)), [])
    bands = {place for place, name in enumerate(head) if _BAND.fullmatch(name.strip())}
    found = [_number(row[place]) for row in rows for place in bands if place < len(row)]
    if max(found, default=0.0) <= _MOST_FRACTION:
        return text
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    for row in rows:
        cells = [_hundredth(x) if at in bands else x for at, x in enumerate(row)]
        table.writerow(cells or [""])
    return out.getvalue()


def _number(cell: str) -> float:
    try:
        return float(cell)
    except ValueError:
        return 0.0


def _hundredth(cell: str) -> str:
    return repr(_number(cell) / 100) if _number(cell) else cell


def _pointed(cell: str) -> str:
    if _NUMBER.fullmatch(cell):
        return cell.replace(",", ".")
    return _DOSE.sub(r"\1.\2", cell)
