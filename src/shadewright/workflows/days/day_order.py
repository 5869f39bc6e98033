"""The baths of a day in the order in which they begin, each with its planned times."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from django.utils import timezone

from shadewright.records import day_reads
from shadewright.workflows.bath_pages import shaped_bath
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


@dataclass(frozen=True, kw_only=True)
class DayInOrder:
    """A day's plan, if it has one, and its baths but for those that were given up."""

    day: date
    schedule: Schedule | None
    baths: tuple[OrderedBath, ...]


def day_in_order(day: date) -> DayInOrder:
    """Return the baths of a day: first as planned, then those that no plan holds."""
    schedule = schedule_of(day)
    baths = sorted(_baths(day, schedule), key=_rank)
    return DayInOrder(day=day, schedule=schedule, baths=tuple(baths))


def clock(at: datetime | None) -> str:
    """Return the studio's clock at a moment, as 08:05; nothing where there is none."""
    return "" if at is None else f"{timezone.localtime(at):%H:%M}"


def _baths(day: date, schedule: Schedule | None) -> Iterator[OrderedBath]:
    for row in day_reads.baths_of_day(day):
        bath = shaped_bath(row)
        if bath.status is BathStatus.GIVEN_UP:
            continue
        planned = None if schedule is None else schedule.bath(bath.number)
        steps = [each.step for each in bath.steps]
        yield OrderedBath(
            bath=bath, planned=planned, times=planned_times(planned, steps)
        )


def _rank(each: OrderedBath) -> tuple[bool, str]:
    begins = each.begins
    return begins is None, "" if begins is None else begins.isoformat()
