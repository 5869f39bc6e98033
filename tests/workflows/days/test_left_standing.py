"""Pots of the days before that still stand full when a day opens."""

import json
from datetime import date, datetime, time, timedelta

import pytest
from django.utils import timezone

from shadewright.core.planning import Day
from shadewright.exchange.day_file import read_day
from shadewright.records.models import Bath, DaySchedule
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.asked import asked_of
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import as_of, stamp_now
from tests.workflows.days.rooms import Dyehouse, dyehouse
from tests.workflows.pots import tapped

pytestmark = pytest.mark.django_db

FRIDAY, MONDAY = date(2026, 11, 20), date(2026, 11, 23)


def at(day: date, hour: int) -> datetime:
    return timezone.make_aware(datetime.combine(day, time(hour)))


def placed(house: Dyehouse, day: date) -> str:
    """Plan a bath in the first pot on the first plate."""
    number = house.bath(day)
    where = {"pot": house.pots[0], "source": house.sources[0]}
    Bath.objects.filter(number=number).update(**where)
    return number


def left(house: Dyehouse, day: date) -> str:
    """Leave a bath to cool in its pot at noon of a day."""
    number = placed(house, day)
    for hour, act, step in (
        (9, BathAct.STARTED, "fill"),
        (10, BathAct.HEAT_ON, "heat"),
        (11, BathAct.AT_TOP, "top"),
        (12, BathAct.HEAT_OFF, "off"),
    ):
        with as_of(at(day, hour)):
            tapped(number, act, step)
    return number


@pytest.mark.parametrize("days_ago", [1, 2, 3, 6])
def test_a_pot_left_for_days_is_planned_around(days_ago: int) -> None:
    """From Friday to Monday is more than a day's file goes back."""
    dyed_on = MONDAY - timedelta(days=days_ago)
    with as_of(at(dyed_on, 7)):
        house = dyehouse()
    number = left(house, dyed_on)
    with as_of(at(MONDAY, 8)):
        (standing,) = asked_of(day_now(MONDAY)).day.baths
        assert standing.name == number
        make_plan(day=MONDAY, stamp=stamp_now(by=None), seconds=0.02)
    assert [bath.name for bath in kept().baths] == [number]


@pytest.mark.parametrize("hour", [8, 17])
def test_a_bath_begun_days_before_its_day_is_planned_on(hour: int) -> None:
    with as_of(at(FRIDAY, 7)):
        house = dyehouse()
        number = placed(house, MONDAY)
    with as_of(at(FRIDAY, 9)):
        tapped(number, BathAct.STARTED, "fill")
    with as_of(at(MONDAY, hour)):
        (begun,) = asked_of(day_now(MONDAY)).day.baths
        make_plan(day=MONDAY, stamp=stamp_now(by=None), seconds=0.02)
    assert begun.going is not None
    assert begun.going.fill_start < 0
    assert [bath.name for bath in kept().baths] == [number]


def kept() -> Day:
    """Return the day as the newest plan keeps it."""
    return read_day(json.dumps(DaySchedule.objects.latest("pk").asked))
