"""Sort a table by the address: ``?sort=age`` upwards, ``?sort=-age`` downwards."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from django.http import HttpRequest

Row = TypeVar("Row")
Keys = Mapping[str, Callable[[Row], Any]]


@dataclass(frozen=True, kw_only=True)
class Order:
    """The column a table is sorted by, and which way."""

    column: str
    is_descending: bool = False

    def aria(self, column: str) -> str:
        """Say how a column is sorted, in the words of ``aria-sort``; else nothing."""
        if column != self.column:
            return ""
        return "descending" if self.is_descending else "ascending"

    def next_for(self, column: str) -> str:
        """Return what ``?sort=`` says when that column's head is pressed."""
        turns = column == self.column and not self.is_descending
        return f"-{column}" if turns else column


def read_order(request: HttpRequest, keys: Keys[Row], *, default: str) -> Order:
    """Read the order from the address; an unknown column means the default."""
    asked = request.GET.get("sort", default)
    column = asked.removeprefix("-")
    if column not in keys:
        return read_order_text(default)
    return read_order_text(asked)


def read_order_text(text: str) -> Order:
    """Read ``column`` or ``-column``."""
    return Order(column=text.removeprefix("-"), is_descending=text.startswith("-"))


def arrange(rows: Iterable[Row], order: Order, keys: Keys[Row]) -> tuple[Row, ...]:
    """Sort rows; equal ones keep their places, and what is unknown stands last."""
    key = keys[order.column]
    every = tuple(rows)
    known = [row for row in every if key(row) is not None]
    unknown = [row for row in every if key(row) is None]
    known.sort(key=key, reverse=order.is_descending)
    return (*known, *unknown)
