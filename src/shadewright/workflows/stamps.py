"""Who did it, when, and the key of the deed."""

from collections.abc import Generator
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import date, datetime, timedelta
from uuid import UUID, uuid4

from django.utils import timezone

from shadewright.errors import OutOfRangeError
from shadewright.records.deeds import is_deed_written
from shadewright.records.writes import Stamp

__all__ = [
    "Stamp",
    "as_of",
    "is_written",
    "past_date",
    "stamp_now",
    "this_moment",
    "today",
]

_CLOCKS_DIFFER = timedelta(minutes=2)
_TOLD: ContextVar[datetime | None] = ContextVar("told", default=None)


@contextmanager
def as_of(moment: datetime) -> Generator[None, None, None]:
    """Let the verbs believe that it is another moment, as when a story is told."""
    token = _TOLD.set(moment)
    try:
        yield
    finally:
        _TOLD.reset(token)


def this_moment() -> datetime:
    """Return now, or the moment that is told of."""
    return _TOLD.get() or timezone.now()


def stamp_now(
    *, by: int | None, deed: UUID | None = None, at: datetime | None = None
) -> Stamp:
    """Return a stamp for a deed of now, or of an earlier time that was typed."""
    now = this_moment()
    if at is not None and at > now + _CLOCKS_DIFFER:
        raise _future_error(name="The time", given=at.date(), argument="at")
    return Stamp(by=by, at=at or now, deed=deed or uuid4(), written_at=now)


def past_date(value: date | None, *, name: str, argument: str) -> date | None:
    """Return a date that is not in the future, or refuse it."""
    if value is not None and value > today():
        raise _future_error(name=name, given=value, argument=argument)
    return value


def today() -> date:
    """Return the studio's own date."""
    return timezone.localdate(this_moment())


def is_written(deed: UUID) -> bool:
    """Whether a deed of this key stands in a ledger already."""
    return is_deed_written(deed)


def _future_error(*, name: str, given: date, argument: str) -> OutOfRangeError:
    return OutOfRangeError(
        name=name,
        given=f"{given.day} {given:%B %Y}",
        allowed="today or earlier",
        argument=argument,
    )
