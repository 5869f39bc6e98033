"""The ledger of an order: who changed what, from what to what."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from itertools import zip_longest
from typing import Any
from uuid import UUID

from shadewright.core.quantities import amount_text
from shadewright.records import order_reads
from shadewright.records.models import Order, OrderEdit, OrderLine
from shadewright.records.writes import keep_line
from shadewright.workflows.order_undo import HELD
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.undo import may_undo

Said = Mapping[str, Any]
_TERMS = {
    "for_whom": "For whom",
    "due_on": "Wanted by",
    "promised_on": "Promised for",
    "notes": "What they said",
    "why_closed": "How it ended",
}
_DAYS = {"due_on", "promised_on"}


@dataclass(frozen=True, kw_only=True)
class Change:
    """One thing that an edit changed; an empty text or None is nothing."""

    what: str
    was: str | date | None
    now: str | date | None


@dataclass(frozen=True, kw_only=True)
class EditNow:
    """A line of an order's ledger."""

    deed: UUID
    at: datetime
    by: str
    changes: tuple[Change, ...]
    is_counter: bool
    is_undone: bool
    may_undo: bool


def keep_edit(row: Order, before: Said, stamp: Stamp) -> bool:
    """Write down what an order said before, if it says anything else now."""
    after = row.said()
    if after == before:
        return False
    keep_line(OrderEdit(order=row, before=dict(before), after=after), stamp)
    return True


def keep_holding(
    line: OrderLine, was: Mapping[str, int], now: Mapping[str, int], stamp: Stamp
) -> None:
    """Write down how many skeins of some lots a line held before, and holds now."""
    before, after = (
        line.order.said()
        | {HELD: [[line.position, lot, skeins] for lot, skeins in held.items()]}
        for held in (was, now)
    )
    keep_line(OrderEdit(order=line.order, before=before, after=after), stamp)


def order_edits(row: Order) -> tuple[EditNow, ...]:
    """Return the edits of an order, the newest first."""
    lines = list(row.edits.select_related("by", "undone_by").order_by("-id"))
    called = order_reads.called_in_orders() if lines else {}
    return tuple(
        EditNow(
            deed=line.deed,
            at=line.at,
            by="" if line.by is None else line.by.name,
            changes=tuple(_changes(line.before, line.after, called)),
            is_counter=line.undoes_id is not None,
            is_undone=hasattr(line, "undone_by"),
            may_undo=may_undo(line) and not line.is_closing,
        )
        for line in lines
    )


def _changes(before: Said, after: Said, called: Mapping[str, str]) -> Iterator[Change]:
    for key, what in _TERMS.items():
        was, now = (_value(key, said[key]) for said in (before, after))
        if was != now:
            yield Change(what=what, was=was, now=now)
    pairs = zip_longest(before["lines"], after["lines"])
    for place, (was_line, now_line) in enumerate(pairs, start=1):
        if was_line != now_line:
            yield Change(
                what=f"Line {place}",
                was=_line(was_line, called),
                now=_line(now_line, called),
            )
    was, now = map(_held, (before, after))
    if was != now:
        yield Change(what="Set aside", was=was, now=now)


def _value(key: str, said: str | None) -> str | date | None:
    if key in _DAYS and said:
        return date.fromisoformat(said)
    return said or None


def _held(said: Said) -> str:
    held = said.get(HELD, ())
    return ", ".join(f"{skeins} of {lot}" for _place, lot, skeins in held if skeins)


def _line(line: Said | None, called: Mapping[str, str]) -> str:
    if line is None:
        return ""
    recipe = called[f"recipe {line['recipe_id']}"]
    base = called[f"base {line['base_id']}"]
    grams = amount_text(line["skein_g"], "g")
    words = f"{line['skeins']} × {recipe} on {base}, {grams}"
    words += f", “{line['as_said']}”" if line["as_said"] else ""
    return f"{words}, not wanted any more" if line["is_dropped"] else words
