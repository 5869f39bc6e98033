"""What a bath really took, where its heat rose faster than the plan had it."""

import json
from datetime import date, datetime, time

import pytest
from django.utils import timezone

from shadewright.core.planning import Stage
from shadewright.exchange.day_file import read_day
from shadewright.records.models import Bath, DaySchedule
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.asked import asked_of
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.hours import put_out
from shadewright.workflows.days.pinning import WishSaid, keep_wish
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import as_of, stamp_now
from tests.workflows.days.rooms import dyehouse
from tests.workflows.pots import tapped

DAY = date(2026, 11, 26)


def at(hour: int, minute: int = 0) -> datetime:
    return timezone.make_aware(datetime.combine(DAY, time(hour, minute)))


@pytest.mark.django_db
def test_a_top_that_came_early_takes_the_looks_that_were_to_come_with_it() -> None:
    """The look at 15 minutes lies past a rise of 5: the kept day must still be read."""
    with as_of(at(7)):
        house = dyehouse()
        number = house.bath(DAY)
        (before,) = asked_of(day_now(DAY)).day.baths
        make_plan(day=DAY, stamp=stamp_now(by=None), seconds=0.02)
    for hour, act, step in (
        (at(8), BathAct.STARTED, "fill"),
        (at(8, 20), BathAct.HEAT_ON, "heat"),
        (at(8, 25), BathAct.AT_TOP, "top"),
    ):
        with as_of(hour):
            tapped(number, act, step)
    with as_of(at(8, 30)):
        make_plan(day=DAY, stamp=stamp_now(by=None), seconds=0.02)
    (kept,) = read_day(json.dumps(DaySchedule.objects.latest("pk").asked)).baths
    assert [each.stage for each in before.touches] == [Stage.RAMP]
    assert (kept.minutes[Stage.RAMP], kept.touches) == (5, ())


@pytest.mark.django_db
def test_who_says_where_a_bath_stands_is_believed() -> None:
    """It was planned on one plate and put on the other."""
    with as_of(at(7)):
        house = dyehouse()
        number = house.bath(DAY)
        make_plan(day=DAY, stamp=stamp_now(by=None), seconds=0.02)
    row = Bath.objects.get(number=number)
    other = next(each for each in house.sources if each != row.source)
    with as_of(at(8)):
        tapped(number, BathAct.STARTED, "fill")
        keep_wish(day=DAY, number=number, wish=WishSaid(source_id=other.pk))
    row.refresh_from_db()
    assert row.source == other


@pytest.mark.django_db
@pytest.mark.parametrize("is_hot", [False, True])
def test_a_filled_pot_goes_to_the_burner_that_a_new_plan_gives_it(
    *, is_hot: bool
) -> None:
    """Its burner fails: card and pot must not send a helper to the broken one."""
    with as_of(at(7)):
        house = dyehouse()
        number = house.bath(DAY)
        make_plan(day=DAY, stamp=stamp_now(by=None), seconds=0.02)
    row = Bath.objects.get(number=number)
    broken, pot = row.source, row.pot
    assert broken is not None
    other = next(each for each in house.sources if each != broken)
    with as_of(at(8)):
        tapped(number, BathAct.STARTED, "fill")
    if is_hot:
        with as_of(at(8, 20)):
            tapped(number, BathAct.HEAT_ON, "heat")
    with as_of(at(8, 30)):
        put_out(day=DAY, source_id=broken.pk, stamp=stamp_now(by=None))
        plan = make_plan(day=DAY, stamp=stamp_now(by=None), seconds=0.02)
    row.refresh_from_db()
    assert row.pot == pot
    if is_hot:  # it stays where it stands, and the plan says that this cannot be
        assert row.source == broken
        assert [each["name"] for each in plan.plan["conflicts"]] == [number]
        return
    planned = plan.bath(number)
    assert planned is not None
    assert (planned.source, row.source) == (other.name, other)
