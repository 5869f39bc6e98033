"""Lists for a dye day, to tick: the yarn to soak, the bottles to pull off the shelf."""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.errors import MissingError
from shadewright.paper.bath_card import SAFETY
from shadewright.paper.papers import paper_size
from shadewright.paper.typeset import printable, typeset
from shadewright.paper.words import day_words

_MOST_CELL = 160


@dataclass(frozen=True, kw_only=True)
class ListColumn:
    """A column: its head, its share of the width, and whether it is read from afar."""

    head: str
    share: float
    is_large: bool = False


@dataclass(frozen=True, kw_only=True)
class ListPart:
    """A table to tick; a cell that is empty is a line to write on."""

    name: str
    said: str
    columns: tuple[ListColumn, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, kw_only=True)
class DayList:
    """A list of a day; parts without a row are left out."""

    name: str
    day: dt.date
    parts: tuple[ListPart, ...]
    cautions: tuple[str, ...] = ()
    is_demo: bool = False


def day_list_pdf(what: DayList, *, paper: str = "a4", printed_on: dt.date) -> bytes:
    """Return a list as a PDF."""
    return typeset("tick_lists.typ", data=list_data(what, paper=paper), on=printed_on)


def list_data(what: DayList, *, paper: str) -> Mapping[str, object]:
    """Return what the template is given: the paper's size and the texts."""
    parts = [part for part in what.parts if part.rows]
    if not parts:
        raise MissingError(
            name="A bath to print for",
            advice="Put one on this day that has not begun.",
            argument="day",
        )
    return {
        "title": f"{what.name} {day_words(what.day)}",
        "page_mm": paper_size(paper),
        "name": what.name,
        "day": day_words(what.day),
        "parts": [_part(part) for part in parts],
        "cautions": [printable(words) for words in what.cautions],
        "safety": SAFETY,
        "demo": what.is_demo,
    }


def _part(part: ListPart) -> Mapping[str, object]:
    whole = sum(column.share for column in part.columns)
    return {
        "name": part.name,
        "said": part.said,
        "heads": [column.head for column in part.columns],
        "shares": [column.share / whole for column in part.columns],
        "large": [column.is_large for column in part.columns],
        "rows": [_row(row) for row in part.rows],
    }


def _row(cells: Sequence[str]) -> list[str]:
    return [printable(cell[:_MOST_CELL]) for cell in cells]
