"""How fast the room works: skeins a dye day and days between them, from its baths."""

from collections import Counter
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import quantiles

from shadewright.core.planning.promises import Habit, KnownDay
from shadewright.records import day_reads, order_reads
from shadewright.records.models import Bath
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.closed_days import closed_dates
from shadewright.workflows.days.room import Room, room_now
from shadewright.workflows.days.yields import shaped_yield
from shadewright.workflows.stamps import today

_LOOK_BACK = timedelta(days=90)
_FEWEST_DAYS = 4
_USUAL_SKEINS = (20, 25)
_USUAL_DAYS_BETWEEN = (7.0, 3.5)
"""Where nobody dyed yet: 20 to 25 skeins on a dye day in a kitchen, one or two a week.

Common practice.
"""


@dataclass(frozen=True, kw_only=True)
class Pace:
    """The room on slow and on good days, and the dye days that are planned.

    ``rests_on`` is how many dye days it was learned from; none: usual values.
    """

    slow: Habit
    good: Habit
    known: tuple[KnownDay, ...]
    rests_on: int


def pace_now() -> Pace:
    """Return how fast the room works."""
    room, loads = room_now(), _loads()
    past = {day: count for day, count in loads.items() if day <= today() and count}
    skeins, between = _learned(past) if len(past) >= _FEWEST_DAYS else _usual()
    slow, good = (
        _habit(room, skeins_a_day=count, days_between=days)
        for count, days in zip(skeins, between, strict=True)
    )
    return Pace(
        slow=slow,
        good=good,
        known=_known(loads, slow.skeins_a_day),
        rests_on=len(past) if len(past) >= _FEWEST_DAYS else 0,
    )


def _habit(room: Room, *, skeins_a_day: int, days_between: float) -> Habit:
    return Habit(
        skeins_a_day=max(1, min(skeins_a_day, room.rack_slots)),
        days_between=days_between,
        dry_hours=room.dry_hours,
        pack_days=room.pack_days,
        cools_overnight=room.cools_overnight,
        closed=closed_dates(),
    )


def _usual() -> tuple[tuple[int, int], tuple[float, float]]:
    return _USUAL_SKEINS, _USUAL_DAYS_BETWEEN


def _learned(past: dict[date, int]) -> tuple[tuple[int, int], tuple[float, float]]:
    """Return the quartiles of skeins a day, and the days between a quarter wider."""
    low, _middle, high = quantiles(past.values(), n=4, method="inclusive")
    span_days = (today() - min(past)).days
    between = max(1.0, span_days / len(past))
    return (int(low), int(high)), (1.25 * between, between)


def _loads() -> dict[date, int]:
    """Return the skeins of each dye day, those that were and those that come."""
    loads: Counter[date] = Counter()
    for row in order_reads.baths_from(today() - _LOOK_BACK):
        loads[row.dyed_on] += _load(row)
    for dye_day in day_reads.days_from(today()):
        loads[dye_day.day] += 0
    return dict(loads)


def _load(row: Bath) -> int:
    found = shaped_yield(row)
    is_over = found.status is BathStatus.GIVEN_UP
    is_idle = found.status is BathStatus.PLANNED and row.dyed_on < today()
    return 0 if is_over or is_idle else row.skeins or found.skeins


def _known(loads: dict[date, int], skeins_a_day: int) -> tuple[KnownDay, ...]:
    days = sorted(day for day in loads if day > today())
    return tuple(
        KnownDay(day=day, free_skeins=max(0, skeins_a_day - loads[day])) for day in days
    )


def coming_dye_day() -> date:
    """Return the next day that is planned, or the next open one where none is."""
    tomorrow = _next_open(today() + timedelta(days=1))
    dyed = order_reads.baths_from(tomorrow).values_list("dyed_on", flat=True)
    said = (each.day for each in day_reads.days_from(tomorrow))
    return min({*dyed, *said}, default=tomorrow)


def _next_open(day: date) -> date:
    closed = closed_dates()
    while day in closed:
        day += timedelta(days=1)
    return day
