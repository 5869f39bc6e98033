"""The demo's own calendar: stamps for days gone by, from a fixed seed."""

from datetime import date, datetime, timedelta
from random import Random
from uuid import UUID

from shadewright.records.writes import Stamp

SEED = 2611


class Calendar:
    """Stamps counted back from the day on which the demo is built."""

    def __init__(self, now: datetime) -> None:
        self._now = now
        self._random = Random(SEED)  # ruff: ignore[suspicious-non-cryptographic-random-usage]

    def stamp(self, by: int, *, days_ago: int, clock: str = "10:00") -> Stamp:
        """Return a stamp for a time of day so many days ago; never after now."""
        hour, minute = (int(part) for part in clock.split(":"))
        day = self._now - timedelta(days=days_ago)
        at = min(
            day.replace(hour=hour, minute=minute, second=0, microsecond=0), self._now
        )
        deed = UUID(int=self._random.getrandbits(128), version=4)
        return Stamp(by=by, at=at, deed=deed, written_at=at)

    def day(self, days_ago: int) -> date:
        """Return the date so many days ago."""
        return (self._now - timedelta(days=days_ago)).date()

    def slip(self, wanted: float, step: float) -> float:
        """Return what the hand really weighed: up to two steps of the scale off."""
        return round((round(wanted / step) + self._random.randint(-2, 2)) * step, 6)
