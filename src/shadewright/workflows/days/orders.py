"""Orders: write one down, change it, promise a day, share baths out, close it.

Each verb says how things are to stand, not what is to be added: sent twice, it finds
them so and writes nothing. A new order is told from the same one by its deed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from hashlib import sha256

from django.db import transaction
from django.db.models import Max

from shadewright.core.quantities import MOST_MASS_G, require_above_zero
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import order_reads, recipe_reads
from shadewright.records.models import Order, OrderLine
from shadewright.workflows.days.order_edits import keep_edit
from shadewright.workflows.days.sending import put_back, take_away
from shadewright.workflows.stamps import Stamp, today

MOST_SKEINS = 10_000
_NEAR = timedelta(days=366)


class Closing(StrEnum):
    """How an order ends."""

    SENT = "Sent"
    CALLED_OFF = "Called off"


@dataclass(frozen=True, kw_only=True)
class LineWish:
    """One colourway on one base; ``skein_g`` is None where the base says it.

    ``as_said`` is what the customer asked for in their own words.
    """

    recipe_id: int
    base_id: int
    skeins: int
    skein_g: float | None = None
    as_said: str = ""
    is_dropped: bool = False


@dataclass(frozen=True, kw_only=True)
class OrderWish:
    """All that is said of an order; its lines in their order."""

    for_whom: str
    lines: tuple[LineWish, ...] = ()
    due_on: date | None = None
    notes: str = ""


@transaction.atomic
def write_order(*, wish: OrderWish, stamp: Stamp) -> int:
    """Write an order down and return its number, which is never used again."""
    recipe_reads.lock_numbers()
    kept = Order.objects.filter(deed=stamp.deed).first()
    if kept is not None:
        return kept.number
    grams = _checked(wish)
    highest = Order.objects.aggregate(highest=Max("number"))["highest"]
    row = Order.objects.create(
        number=(highest or 0) + 1,
        deed=stamp.deed,
        for_whom=wish.for_whom.strip(),
        due_on=wish.due_on,
        notes=wish.notes.strip(),
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    _keep_lines(row, wish.lines, grams)
    return row.number


@transaction.atomic
def change_order(*, number: int, wish: OrderWish, seen: str, stamp: Stamp) -> bool:
    """Let an order be as it is said; ``seen`` is the order that the change began from.

    A line is never taken out, only dropped. What was different is kept in the order's
    ledger. Returns whether anything was.
    """
    row = _locked(number)
    grams = _checked(wish)
    before, said = fingerprint(row), row.said()
    if len(wish.lines) < row.lines.count():
        raise ConflictError(
            why="A line of the order is missing here.",
            advice="Load the page again, then drop the line that is not wanted.",
        )
    row.for_whom, row.due_on = wish.for_whom.strip(), wish.due_on
    row.notes = wish.notes.strip()
    row.save(update_fields=["for_whom", "due_on", "notes"])
    _keep_lines(row, wish.lines, grams)
    after = fingerprint(order_reads.order_row(number))
    if before not in {after, seen}:
        raise ConflictError(
            why="Somebody changed this order since you opened it.",
            advice="Open it in a second window, compare, and send again what holds.",
        )
    return keep_edit(row, said, stamp)


def fingerprint(row: Order) -> str:
    """Return what an order says, short, so that a change meanwhile is seen."""
    lines = [
        (x.recipe_id, x.base_id, x.skeins, x.skein_g, x.as_said, x.is_dropped)
        for x in row.lines.all()
    ]
    said = (row.for_whom, str(row.due_on), row.notes, lines)
    return sha256(repr(said).encode()).hexdigest()[:16]


@transaction.atomic
def promise(*, number: int, promised_on: date | None, stamp: Stamp) -> bool:
    """Note the day that was told to whoever ordered; None takes it back.

    Returns whether that is another day than before.
    """
    row = _locked(number)
    said = row.said()
    if promised_on is not None and promised_on != row.promised_on:
        _check_promise(promised_on)
    row.promised_on = promised_on
    row.save(update_fields=["promised_on"])
    return keep_edit(row, said, stamp)


@transaction.atomic
def close_order(*, number: int, how: Closing, stamp: Stamp) -> None:
    """Close an order; what is sent leaves the count of the lots that it came from."""
    row = _locked(number)
    if row.is_closed:
        return
    if how is Closing.SENT:
        take_away(row, stamp)
    _end(row, how.value, stamp)


@transaction.atomic
def open_order_again(*, number: int, stamp: Stamp) -> None:
    """Open a closed order; what was counted as sent is in its lots again."""
    row = _locked(number)
    if not row.is_closed:
        return
    put_back(row, stamp)
    _end(row, "", stamp)


def _end(row: Order, why: str, stamp: Stamp) -> None:
    said = row.said()
    row.is_closed, row.why_closed = bool(why), why
    row.save(update_fields=["is_closed", "why_closed"])
    keep_edit(row, said, stamp)


def _locked(number: int) -> Order:
    recipe_reads.lock_numbers()
    return order_reads.order_row(number)


def _keep_lines(row: Order, lines: Sequence[LineWish], grams: Sequence[float]) -> None:
    for position, (line, skein_g) in enumerate(zip(lines, grams, strict=True), start=1):
        OrderLine.objects.update_or_create(
            order=row,
            position=position,
            defaults={
                "recipe_id": line.recipe_id,
                "base_id": line.base_id,
                "skeins": line.skeins,
                "skein_g": skein_g,
                "as_said": line.as_said.strip(),
                "is_dropped": line.is_dropped,
            },
        )


def _checked(wish: OrderWish) -> list[float]:
    """Return the grams a skein of each line; refuse an order that cannot be meant."""
    if not wish.for_whom.strip():
        raise MissingError(
            name="For whom it is",
            advice="A name, a shop, a fair: one word will do.",
            argument="for_whom",
        )
    if not wish.lines and not wish.notes.strip():
        raise MissingError(
            name="The colourway",
            advice="Choose it, or write what they asked for in their own words.",
            argument="recipe_1",
        )
    _check_due(wish.due_on)
    return [_skein_g(line, place) for place, line in enumerate(wish.lines, start=1)]


def _skein_g(line: LineWish, place: int) -> float:
    recipe_reads.recipe_row(line.recipe_id)
    base = recipe_reads.base_row(line.base_id)
    check_skeins(line.skeins, argument=f"skeins_{place}")
    return skein_weight_g(line.skein_g or base.skein_g, base.name, place=place)


def check_skeins(skeins: int, *, argument: str, least: int = 1) -> None:
    """Refuse a number of skeins that cannot be meant."""
    if not least <= skeins <= MOST_SKEINS:
        raise OutOfRangeError(
            name="The number of skeins",
            given=f"{skeins}",
            allowed=f"from {least} to 10 000",
            argument=argument,
        )


def skein_weight_g(skein_g: float | None, base_name: str, *, place: int) -> float:
    """Return the weight of a skein, or ask for it where nobody knows it."""
    argument = f"skein_g_{place}"
    if skein_g is None:
        raise MissingError(
            name="The weight of a skein",
            advice=f"{base_name} has none written down: type the grams here.",
            argument=argument,
        )
    return require_above_zero(
        skein_g, most=MOST_MASS_G, unit="g", name="A skein", argument=argument
    )


def _check_due(due_on: date | None) -> None:
    """Refuse a slip of the year; an order that is late already can be written down."""
    if due_on is not None and abs(due_on - today()) > _NEAR:
        raise OutOfRangeError(
            name="The day it is wanted",
            given=f"{due_on.day} {due_on:%B} {due_on.year}",
            allowed="within a year of today",
            argument="due_on",
        )


def _check_promise(promised_on: date) -> None:
    if not timedelta() <= promised_on - today() <= _NEAR:
        raise OutOfRangeError(
            name="The promised day",
            given=f"{promised_on.day} {promised_on:%B} {promised_on.year}",
            allowed="from today to a year from now",
            argument="promised_on",
        )
