"""The clock on the wall, on days on which it is changed too."""

from datetime import date, time

import pytest
from django.utils import timezone

from shadewright.errors import ConflictError
from shadewright.workflows.days.day_clock import DayClock
from shadewright.workflows.days.room import require_known_clock

FORWARD, BACK = date(2026, 3, 29), date(2026, 10, 25)  # Europe, by law of the EU


@pytest.mark.parametrize("day", [FORWARD, BACK, date(2026, 11, 26)])
@pytest.mark.parametrize("hour", [0, 5, 12, 20])
def test_ten_is_two_hours_after_eight_and_back_again(day: date, hour: int) -> None:
    with timezone.override("Europe/Berlin"):
        clock = DayClock(day=day, opens_at=time(0, 30))
        minutes = clock.minutes(time(hour))
        assert minutes == 60 * hour - 30
        moment = clock.time_of(minutes)
        assert timezone.localtime(moment).time() == time(hour)
        assert clock.minutes_at(moment) == minutes


def test_a_time_that_the_clock_leaps_over_is_refused() -> None:
    with timezone.override("Europe/Berlin"):
        with pytest.raises(ConflictError, match="02:30 is left out"):
            require_known_clock(FORWARD, time(2, 30), argument="starts_at")
        require_known_clock(BACK, time(2, 30), argument="starts_at")
        require_known_clock(FORWARD, time(3, 30), argument="starts_at")
