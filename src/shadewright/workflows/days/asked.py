"""A day as the planner is asked for it: what there is, who is in, what is to be dyed.

The baths are those of the day that are not over, and those of days before that still
stand in their pots: these wait for a rinse, which takes hands, sink and rack.
Times are the clock on the wall, in minutes after the day opens.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeVar

from shadewright.core.planning import (
    Day,
    DayCircuit,
    DayPerson,
    DayPot,
    DaySource,
    PlaceBefore,
    Stage,
)
from shadewright.core.tables.heat import Source
from shadewright.records import day_reads
from shadewright.records.models import Bath, HeatSource, Pot
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.day_clock import DayClock
from shadewright.workflows.days.day_now import DayNow, OutNow, status_of_row
from shadewright.workflows.days.heat_minutes import HeatKnown
from shadewright.workflows.days.left_standing import left_standing
from shadewright.workflows.days.rack import hung_at
from shadewright.workflows.days.stage_times import stage_minutes
from shadewright.workflows.days.wanted_baths import wanted_baths
from shadewright.workflows.stamps import this_moment, today

_Place = TypeVar("_Place", Pot, HeatSource)


@dataclass(frozen=True, kw_only=True)
class Asked:
    """The day for the planner, where each bath stood before, what it leaves out.

    ``aside`` are baths that the planner is not asked about, each with why.
    """

    day: Day
    before: Mapping[str, PlaceBefore]
    aside: tuple[tuple[str, str], ...]


def asked_of(now: DayNow) -> Asked:
    """Return a day as the planner is asked for it; today, from this moment on."""
    clock = DayClock(day=now.day, opens_at=now.opens_at)
    rows = [row for row in day_reads.baths_of_day(now.day) if _is_going(row)]
    pots = _with_retired(day_reads.pot_rows(), (row.pot for row in rows))
    sources = _with_retired(day_reads.source_rows(), (row.source for row in rows))
    times, at = stage_minutes(), _moment(now, clock)
    wanted = wanted_baths(
        now, clock, HeatKnown(pots, sources), times, pots=pots, now=at
    )
    names = [each.name for each in sources]
    standing = left_standing(now.day, clock, times, sources=names)
    baths = (*standing, *wanted.baths)
    day = Day(
        length=clock.minutes(now.closes_at),
        people=tuple(_people(now, clock)),
        pots=tuple(_pot(each, now.outages, clock) for each in pots),
        circuits=tuple(
            DayCircuit(name=each.name, limit_kw=each.limit_kw)
            for each in day_reads.circuit_rows()
        ),
        sources=tuple(_source(each, now.outages, clock) for each in sources),
        sinks=now.sinks,
        rack_slots=now.rack_slots,
        rack_used=_rack_used(now, clock, {each.name for each in baths}),
        washout=round(now.room.washout_min),
        baths=baths,
        opens_min=now.opens_at.hour * 60 + now.opens_at.minute,
        now=at,
    )
    return Asked(day=day, before=dict(_before(now, clock)), aside=wanted.aside)


def _is_going(row: Bath) -> bool:
    return status_of_row(row) not in {BathStatus.PLANNED, BathStatus.GIVEN_UP}


def _with_retired(
    rows: Iterable[_Place], taken: Iterable[_Place | None]
) -> list[_Place]:
    """Return what is in use, and what was retired while something was in or on it."""
    known = {row.pk: row for row in rows}
    known |= {row.pk: row for row in taken if row is not None}
    return list(known.values())


def _moment(now: DayNow, clock: DayClock) -> int:
    """Return now in minutes of the day; the opening of a day that has not come."""
    if now.day != today():
        return 0
    return max(0, clock.minutes_at(this_moment()))


def _people(now: DayNow, clock: DayClock) -> Iterator[DayPerson]:
    for each in now.people:
        yield DayPerson(
            name=each.name,
            starts=clock.minutes(each.starts_at),
            ends=clock.minutes(each.ends_at),
        )


def _pot(row: Pot, outages: tuple[OutNow, ...], clock: DayClock) -> DayPot:
    return DayPot(
        name=row.name,
        volume_l=row.volume_l,
        mass_kg=row.mass_kg or 0.0,
        material=row.material,
        out_from=_out_from(row, outages, clock),
    )


def _source(row: HeatSource, outages: tuple[OutNow, ...], clock: DayClock) -> DaySource:
    circuit = row.circuit
    return DaySource(
        name=row.name,
        power_kw=row.power_kw,
        kind=Source(row.kind),
        circuit="" if circuit is None or circuit.is_retired else circuit.name,
        out_from=_out_from(row, outages, clock),
        room_g=row.room_g,
    )


def _out_from(
    row: Pot | HeatSource, outages: tuple[OutNow, ...], clock: DayClock
) -> int | None:
    """Return from when on it is out: the earliest that was said; retired is out."""
    times = [
        0 if each.starts_at is None else max(0, clock.minutes(each.starts_at))
        for each in outages
        if each.is_pot is isinstance(row, Pot) and each.name == row.name
    ]
    return min([*times, 0] if row.is_retired else times, default=None)


def _rack_used(now: DayNow, clock: DayClock, names: set[str]) -> int:
    """Return how many skeins hang there besides those of the baths in the plan."""
    if now.rack_used is not None:
        return now.rack_used
    opens = clock.time_of(0)
    at = max(opens, this_moment()) if now.day == today() else opens
    hung = (each for each in hung_at(at) if each.number not in names)
    return sum(each.skeins for each in hung if not each.is_due(at))


def _before(now: DayNow, clock: DayClock) -> Iterator[tuple[str, PlaceBefore]]:
    plan = now.schedule
    if plan is None:
        return
    for each in plan.baths:
        filled = each.stage(Stage.FILL)
        if filled is not None:
            start = clock.minutes_at(filled.starts_at)
            place = PlaceBefore(pot=each.pot, source=each.source, start=start)
            yield each.number, place
