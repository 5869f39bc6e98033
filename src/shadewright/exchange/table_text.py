"""Tables that came out of a spreadsheet: parted by tabs or semicolons, with commas.

They are turned into what the readers of tables take, comma between cells and point in
numbers, line by line, so that a reason still names the line of the text.
"""

import csv
import io
import re

_NUMBER = re.compile(r"\s*[+-]?\d+,\d+\s*%?\s*")
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


def _pointed(cell: str) -> str:
    if _NUMBER.fullmatch(cell):
        return cell.replace(",", ".")
    return _DOSE.sub(r"\1.\2", cell)
