"""A day's own hours, who is in, and what is out of use on it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, time
from itertools import pairwise

from django.db import transaction

from shadewright.errors import ConflictError, NotFoundError
from shadewright.records import heat_reads, recipe_reads
from shadewright.records.models import DayOutage, DayPresence
from shadewright.workflows.days.day_now import PersonIn, day_now
from shadewright.workflows.days.room import require_hours
from shadewright.workflows.days.scheduling import day_said
from shadewright.workflows.people import people
from shadewright.workflows.stamps import Stamp, today


@dataclass(frozen=True, kw_only=True)
class HoursSaid:
    """What is said of a day; None is as the room has it, nobody is everybody."""

    opens_at: time
    closes_at: time
    people: Sequence[PersonIn]
    sinks: int | None = None
    rack_slots: int | None = None
    rack_used: int | None = None


@transaction.atomic
def keep_hours(*, day: date, said: HoursSaid, stamp: Stamp) -> None:
    """Keep a day's hours, its people, its sinks and its rack."""
    _require_to_come(day)
    require_hours(said.opens_at, said.closes_at)
    _require_once(said.people)
    room = day_now(day).room
    row = day_said(day, stamp)
    row.opens_at = None if said.opens_at == room.opens_at else said.opens_at
    row.closes_at = None if said.closes_at == room.closes_at else said.closes_at
    row.sinks = None if said.sinks == room.sinks else said.sinks
    row.rack_slots = None if said.rack_slots == room.rack_slots else said.rack_slots
    row.rack_used = said.rack_used
    row.save()
    row.presences.all().delete()
    known = {each.name.casefold(): each.id for each in people()}
    for each in said.people:
        DayPresence.objects.create(
            dye_day=row,
            person_id=known.get(each.name.casefold()),
            name=each.name,
            starts_at=each.starts_at,
            ends_at=each.ends_at,
        )


@transaction.atomic
def put_out(
    *,
    day: date,
    pot_id: int | None = None,
    source_id: int | None = None,
    starts_at: time | None = None,
    why: str = "",
    stamp: Stamp,
) -> str:
    """Write down that a pot or a burner is out, and return what it is called."""
    _require_to_come(day)
    pot = None if pot_id is None else recipe_reads.pot_row(pot_id)
    source = None if source_id is None else heat_reads.source_row(source_id)
    row = day_said(day, stamp)
    DayOutage.objects.update_or_create(
        dye_day=row,
        pot=pot,
        source=source,
        defaults={"starts_at": starts_at, "why": why.strip()[:120]},
    )
    return str(pot or source)


def take_back(*, day: date, outage_id: int) -> str:
    """Write down that something is in use again, and return what it is called."""
    row = DayOutage.objects.filter(pk=outage_id, dye_day__day=day).first()
    if row is None:
        raise NotFoundError(
            kind="thing that is out", key=str(outage_id), advice="Perhaps it is back."
        )
    name = str(row.pot or row.source)
    row.delete()
    return name


def _require_to_come(day: date) -> None:
    if day < today():
        raise ConflictError(why="This day is over, so nothing is changed in it.")


def _require_once(said: Sequence[PersonIn]) -> None:
    """Refuse somebody who is in twice at once, or leaves before they come."""
    by_name = sorted(said, key=lambda each: (each.name.casefold(), each.starts_at))
    for each in by_name:
        if each.ends_at <= each.starts_at:
            raise ConflictError(
                why=f"{each.name} leaves at {each.ends_at:%H:%M}, before they come.",
                advice="Write the earlier time first.",
                argument="people",
            )
    for one, other in pairwise(by_name):
        is_same = one.name.casefold() == other.name.casefold()
        if is_same and other.starts_at < one.ends_at:
            raise ConflictError(
                why=f"{one.name} is in twice at once.",
                advice="Join the two times, or tell the two apart by a letter.",
                argument="people",
            )
