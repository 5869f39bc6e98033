"""Days on which the studio is closed: promises and proposals pass over them."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from django.db import transaction

from shadewright.errors import NotFoundError, OutOfRangeError
from shadewright.records import day_reads
from shadewright.records.models import ClosedDays
from shadewright.workflows.stamps import today

_NEAR, _LONGEST = timedelta(days=2 * 366), timedelta(days=366)
_DAY = timedelta(days=1)


@dataclass(frozen=True, kw_only=True)
class Closed:
    """Days from the first to the last, and why."""

    id: int
    first_on: date
    last_on: date
    why: str


@transaction.atomic
def close_days(*, first_on: date, last_on: date | None = None, why: str = "") -> Closed:
    """Keep days on which nobody works; said again, only the reason is new."""
    last_on = last_on or first_on
    _check(first_on, last_on)
    row, _is_new = ClosedDays.objects.update_or_create(
        first_on=first_on, last_on=last_on, defaults={"why": why.strip()[:80]}
    )
    return _shaped(row)


@transaction.atomic
def open_days_again(closed_id: int) -> Closed:
    """Let days be as any others, and return which they were."""
    row = ClosedDays.objects.filter(pk=closed_id).first()
    if row is None:
        raise NotFoundError(
            kind="closed day", key=str(closed_id), advice="Perhaps it is open again."
        )
    found = _shaped(row)
    row.delete()
    return found


def closed_to_come() -> tuple[Closed, ...]:
    """Return the closed days of today and later, the soonest first."""
    return tuple(_shaped(row) for row in day_reads.closed_rows(since=today()))


def closed_dates() -> frozenset[date]:
    """Return every date from today on on which nobody works."""
    return frozenset(day for each in closed_to_come() for day in _days(each))


def closed_on(day: date) -> Closed | None:
    """Return what closes a day, if anything does."""
    rows = day_reads.closed_rows(since=day).filter(first_on__lte=day)
    return next((_shaped(row) for row in rows), None)


def _days(each: Closed) -> Iterator[date]:
    count = (each.last_on - each.first_on).days + 1
    return (each.first_on + timedelta(days=past) for past in range(count))


def _check(first_on: date, last_on: date) -> None:
    last = f"{last_on.day} {last_on:%B} {last_on.year}"
    if not _DAY <= last_on - first_on + _DAY <= _LONGEST:
        raise OutOfRangeError(
            name="The last closed day",
            given=last,
            allowed="the first one or later, within a year of it",
            argument="last_on",
        )
    if not timedelta() <= last_on - today() <= _NEAR:
        raise OutOfRangeError(
            name="The last closed day",
            given=last,
            allowed="from today to two years from now",
            argument="last_on",
        )


def _shaped(row: ClosedDays) -> Closed:
    return Closed(id=row.pk, first_on=row.first_on, last_on=row.last_on, why=row.why)
