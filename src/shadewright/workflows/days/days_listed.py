"""The dye days in a list: what is planned from today on, and the days that were."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby

from shadewright.records import day_reads, recipe_reads
from shadewright.records.models import Bath
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.day_now import status_of_row
from shadewright.workflows.stamps import today

_BACK = timedelta(days=60)


@dataclass(frozen=True, kw_only=True)
class DayListed:
    """A day in one line; ``finished`` counts the baths that are through."""

    day: date
    baths: int
    finished: int
    fibre_g: float
    skeins: int
    has_plan: bool


def days_listed() -> tuple[DayListed, ...]:
    """Return today, every later day with a bath or a word said of it, the last weeks.

    The soonest comes first; the days that were follow, the newest first.
    """
    rows = recipe_reads.listed_bath_rows().filter(dyed_on__gte=today() - _BACK)
    by_day = _by_day(rows.order_by("dyed_on", "id"))
    planned = set(day_reads.days_with_plan(today() - _BACK))
    said = {row.day for row in day_reads.days_from(today())}
    coming = sorted({today(), *said, *(day for day in by_day if day >= today())})
    were = sorted((day for day in by_day if day < today()), reverse=True)
    return tuple(
        _entry(day, by_day.get(day, ()), has_plan=day in planned)
        for day in (*coming, *were)
    )


def _by_day(rows: Iterable[Bath]) -> dict[date, tuple[Bath, ...]]:
    return {
        day: tuple(each for each in group if not _is_given_up(each))
        for day, group in groupby(rows, key=lambda row: row.dyed_on)
    }


def _is_given_up(row: Bath) -> bool:
    return status_of_row(row) is BathStatus.GIVEN_UP


def _entry(day: date, rows: Iterable[Bath], *, has_plan: bool) -> DayListed:
    known = tuple(rows)
    return DayListed(
        day=day,
        baths=len(known),
        finished=sum(status_of_row(each) is BathStatus.FINISHED for each in known),
        fibre_g=sum(each.fibre_g for each in known),
        skeins=sum(each.skeins or 0 for each in known),
        has_plan=has_plan,
    )
