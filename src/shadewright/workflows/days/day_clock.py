"""The clock on the wall of a dye day: minutes after it opens, and back.

Wall time is reckoned with, not elapsed time: on a day on which the clocks change
10:00 is still two hours after 08:00, as the dyer reads it.
"""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from django.utils import timezone

_MINUTE = timedelta(minutes=1)


@dataclass(frozen=True, kw_only=True)
class DayClock:
    """A date, and when its dye day opens."""

    day: date
    opens_at: time

    @property
    def _opening(self) -> datetime:
        return datetime.combine(self.day, self.opens_at)

    def minutes(self, at: time) -> int:
        """Return a time of the day in minutes after the opening."""
        return round((datetime.combine(self.day, at) - self._opening) / _MINUTE)

    def minutes_at(self, moment: datetime) -> int:
        """Return a moment in minutes after the opening, below nought before it."""
        local = timezone.localtime(moment).replace(tzinfo=None)
        return round((local - self._opening) / _MINUTE)

    def time_of(self, minutes: float) -> datetime:
        """Return a minute of the day as a moment."""
        return timezone.make_aware(self._opening + timedelta(minutes=minutes))
