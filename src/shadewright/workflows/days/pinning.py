"""What is wished of a bath within its day: pins, when it is due, how it cools."""

from dataclasses import dataclass, fields
from datetime import date, time

from django.db import transaction

from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.records import day_reads, heat_reads, recipe_reads
from shadewright.records.models import Bath, DayWish, HeatSource, Pot
from shadewright.records.models.catalogue import SourceKind
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.day_now import DayNow, day_now, status_of_row
from shadewright.workflows.days.room import require_known_clock

_OVER = {BathStatus.FINISHED, BathStatus.GIVEN_UP}


@dataclass(frozen=True, kw_only=True)
class WishSaid:
    """What is wished of a bath; None and empty where the plan may choose."""

    pot_id: int | None = None
    source_id: int | None = None
    starts_at: time | None = None
    due_at: time | None = None
    is_overnight: bool | None = None
    cools_on_source: bool | None = None
    is_steamed: bool = False
    family: str = ""


@transaction.atomic
def keep_wish(*, day: date, number: str, wish: WishSaid) -> None:
    """Keep what is wished of a bath of a day; the next plan respects it."""
    row = _locked(day, number)
    now = day_now(day)
    _check(wish, now)
    said = {field.name: getattr(wish, field.name) for field in fields(wish)}
    DayWish.objects.update_or_create(bath=row, defaults=said)
    _place_begun(row, wish)


def pin_place(*, day: date, number: str, source: str, starts_at: time) -> None:
    """Pin a bath to a source and a start, as when its bar was dragged there."""
    row = day_reads.baths_of_day(day).filter(number=number).first()
    wish = None if row is None else getattr(row, "day_wish", None)
    names = () if wish is None else tuple(field.name for field in fields(WishSaid))
    known = {name: getattr(wish, name) for name in names}
    found = next((x for x in day_reads.source_rows() if x.name == source), None)
    if found is None:
        raise NotFoundError(kind="burner", key=source, argument="source")
    said = {**known, "source_id": found.pk, "starts_at": starts_at}
    keep_wish(day=day, number=number, wish=WishSaid(**said))


def _locked(day: date, number: str) -> Bath:
    row = recipe_reads.locked_bath(number)
    if row.dyed_on != day:
        raise NotFoundError(kind="bath of this day", key=number, argument="number")
    if status_of_row(row) in _OVER:
        raise ConflictError(why=f"Bath {number} is over, so nothing is wished of it.")
    return row


def _check(wish: WishSaid, now: DayNow) -> None:
    if wish.is_overnight and wish.due_at is not None:
        raise ConflictError(
            why="A bath that cools overnight cannot be rinsed by a time of its day.",
            advice="Leave one of the two away.",
            argument="due_at",
        )
    if wish.is_steamed and wish.pot_id is not None:
        raise ConflictError(
            why="Steamed yarn lies on trays and takes no pot.",
            advice="Leave the pot away.",
            argument="pot",
        )
    _check_source(wish)
    times = (
        ("The filling", wish.starts_at, "starts_at"),
        ("The rinse", wish.due_at, "due_at"),
    )
    for name, at, argument in times:
        if at is not None and not now.opens_at <= at <= now.closes_at:
            raise OutOfRangeError(
                name=name,
                given=f"{at:%H:%M}",
                allowed=f"within the day, {now.opens_at:%H:%M} to "
                f"{now.closes_at:%H:%M}",
                argument=argument,
            )
    require_known_clock(now.day, wish.starts_at, argument="starts_at")


def _check_source(wish: WishSaid) -> None:
    if wish.pot_id is not None:
        recipe_reads.pot_row(wish.pot_id)
    if wish.source_id is None:
        return
    source = heat_reads.source_row(wish.source_id)
    if wish.is_steamed != (source.kind == SourceKind.STEAMER):
        kind = "is no steamer" if wish.is_steamed else "is a steamer and takes no pot"
        raise ConflictError(
            why=f"{source.name} {kind}.",
            advice="Choose another, or leave it to the plan.",
            argument="source",
        )


def _place_begun(row: Bath, wish: WishSaid) -> None:
    """Write down where a bath that has begun really stands."""
    if status_of_row(row) is BathStatus.PLANNED:
        return
    if wish.pot_id is not None:
        row.pot = Pot.objects.get(pk=wish.pot_id)
    if wish.source_id is not None:
        row.source = HeatSource.objects.get(pk=wish.source_id)
    row.save(update_fields=["pot", "source"])
