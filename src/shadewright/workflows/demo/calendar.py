"""The demo's own calendar: moments gone by, and a diary that tells them in order."""

from collections.abc import Callable
from copy import copy
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from heapq import heappop, heappush
from itertools import count
from random import Random
from uuid import UUID

from django.utils import timezone

from shadewright.records.writes import Stamp
from shadewright.workflows.stamps import as_of

SEED = 2611

_LONG_AGO = datetime.min.replace(tzinfo=UTC)

Happening = Callable[[Stamp], object]
"""Something that somebody does; it is handed its stamp when its time comes."""


@dataclass(frozen=True, kw_only=True)
class _Told:
    """Something to come: who does it, and in whose diary it stands."""

    by: int
    diary: "Diary"
    happening: Happening


@dataclass(kw_only=True)
class _Queue:
    """All that is to come, the soonest first, and the moment that is told."""

    told_at: datetime = _LONG_AGO
    to_come: list[tuple[datetime, int, _Told]] = field(default_factory=list)


class Diary:
    """What happens in the studio, told moment by moment up to now.

    Whatever happens may bring about more, later. What would happen after now is
    never told: a bath whose hold ends in ten minutes is still on the heat.
    """

    def __init__(self, now: datetime) -> None:
        self.now = timezone.localtime(now)
        self.chance = Random(SEED)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
        self._queue = _Queue()
        self._order = count()

    def aside(self, seed: int) -> "Diary":
        """Return the same diary with a chance of its own for what it is told.

        What is written down there moves nobody’s hand in what is written here.
        """
        other = copy(self)
        other.chance = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
        return other

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
        told = _Told(by=by, diary=self, happening=happening)
        heappush(self._queue.to_come, (at.astimezone(UTC), next(self._order), told))

    def tell(self) -> None:
        """Tell all that happened, in the order of time."""
        queue = self._queue
        while queue.to_come and queue.to_come[0][0] <= self.now:
            at, _, told = heappop(queue.to_come)
            queue.told_at = max(at, queue.told_at)
            with as_of(queue.told_at):
                told.happening(told.diary.stamp(told.by))

    def stamp(self, by: int) -> Stamp:
        """Return a stamp of the moment that is told, with a key of its own."""
        deed = UUID(int=self.chance.getrandbits(128), version=4)
        at = self._queue.told_at
        return Stamp(by=by, at=at, deed=deed, written_at=at)
