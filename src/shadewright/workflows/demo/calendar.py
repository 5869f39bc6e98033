"""The demo's own calendar: moments gone by, and a diary that tells them in order."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from heapq import heappop, heappush
from itertools import count
from random import Random
from uuid import UUID

from django.utils import timezone

from shadewright.records.writes import Stamp
from shadewright.workflows.stamps import as_of

SEED = 2611

Happening = Callable[[Stamp], object]
"""Something that somebody does; it is handed its stamp when its time comes."""


class Diary:
    """What happens in the studio, told moment by moment up to now.

    Whatever happens may bring about more, later. What would happen after now is
    never told: a bath whose hold ends in ten minutes is still on the heat.
    """

    def __init__(self, now: datetime) -> None:
        self.now = timezone.localtime(now)
        self.chance = Random(SEED)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
        self._told_at = datetime.min.replace(tzinfo=UTC)
        self._to_come: list[tuple[datetime, int, int, Happening]] = []
        self._order = count()

    def at(self, days_ago: int, clock: str) -> datetime:
        """Return a time of day so many days ago."""
        hour, minute = (int(part) for part in clock.split(":"))
        day = self.now - timedelta(days=days_ago)
        return day.replace(hour=hour, minute=minute, second=0, microsecond=0)

    def before(self, minutes: float) -> datetime:
        """Return the moment so many minutes before now."""
        return timezone.localtime(self.now.astimezone(UTC) - timedelta(minutes=minutes))

    def day(self, days_ago: int) -> date:
        """Return the date so many days ago."""
        return (self.now - timedelta(days=days_ago)).date()

    def slip(self, wanted: float, step: float) -> float:
        """Return what the hand really weighed: up to two steps of the scale off."""
        return round((round(wanted / step) + self.chance.randint(-2, 2)) * step, 6)

    def note(self, at: datetime, by: int, happening: Happening) -> None:
        """Write down what somebody will do at a moment."""
        heappush(self._to_come, (at.astimezone(UTC), next(self._order), by, happening))

    def tell(self) -> None:
        """Tell all that happened, in the order of time."""
        while self._to_come and self._to_come[0][0] <= self.now:
            at, _, by, happening = heappop(self._to_come)
            self._told_at = max(at, self._told_at)
            with as_of(self._told_at):
                happening(self.stamp(by))

    def stamp(self, by: int) -> Stamp:
        """Return a stamp of the moment that is told, with a key of its own."""
        deed = UUID(int=self.chance.getrandbits(128), version=4)
        at = self._told_at
        return Stamp(by=by, at=at, deed=deed, written_at=at)
