"""The baths of a day in the order in which they begin, each with its planned times."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from django.utils import timezone

from shadewright.records import day_reads, recipe_reads
from shadewright.workflows.bath_pages import shaped_baths
from shadewright.workflows.bath_shapes import BathNow, BathStatus
from shadewright.workflows.days.schedules import BathAt, Schedule, schedule_of
from shadewright.workflows.days.step_clock import planned_times


@dataclass(frozen=True, kw_only=True)
class OrderedBath:
    """A bath of a day, where the plan has it, and when each of its steps is planned."""

    bath: BathNow
    planned: BathAt | None
    times: dict[str, datetime]

    @property
    def begins(self) -> datetime | None:
        """When its pot is to be filled."""
        return None if self.planned is None else self.planned.stages[0].starts_at

    def of_day(self, day: date) -> bool:
        """Whether it is dyed on a day, and not only rinsed then."""
        return self.bath.dyed_on == day

    def called_on(self, day: date) -> str:
        """Return its name on a day: by its whole number if it is of another day.

        Yesterday's B1 and today's stand side by side, and one of them may be hot.
        """
        bath = self.bath
        return bath.called if self.of_day(day) else f"{bath.number} {bath.recipe_name}"


@dataclass(frozen=True, kw_only=True)
class DayInOrder:
    """A day's plan, if it has one, and its baths but for those that were given up.

    ``left`` are baths of days before that the plan has standing in their pots.
    """

    day: date
    schedule: Schedule | None
    baths: tuple[OrderedBath, ...]
    left: tuple[OrderedBath, ...] = ()


def day_in_order(day: date) -> DayInOrder:
    """Return the baths of a day: first as planned, then those that no plan holds."""
    schedule = schedule_of(day)
    baths = sorted(_baths(day, schedule), key=_rank)
    return DayInOrder(
        day=day,
        schedule=schedule,
        baths=tuple(x for x in baths if x.of_day(day)),
        left=tuple(x for x in baths if not x.of_day(day)),
    )


def clock(at: datetime | None) -> str:
    """Return the studio's clock at a moment, as 08:05; nothing where there is none."""
    return "" if at is None else f"{timezone.localtime(at):%H:%M}"


def _baths(day: date, schedule: Schedule | None) -> Iterator[OrderedBath]:
    rows = list(day_reads.baths_of_day(day))
    known = {row.number for row in rows}
    planned = () if schedule is None else schedule.baths
    rows += [
        recipe_reads.bath_row(each.number)
        for each in planned
        if each.number not in known
    ]
    for bath in shaped_baths(rows):
        if bath.status is BathStatus.GIVEN_UP:
            continue
        found = None if schedule is None else schedule.bath(bath.number)
        steps = [each.step for each in bath.steps]
        times = planned_times(found, steps)
        yield OrderedBath(bath=bath, planned=found, times=times)


def _rank(each: OrderedBath) -> tuple[bool, str]:
    begins = each.begins
    return begins is None, "" if begins is None else begins.isoformat()
