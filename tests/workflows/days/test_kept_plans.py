"""What is kept of a day's plan is read again on its page, whatever was ticked."""

from datetime import date, datetime, time

import pytest
from django.utils import timezone

from shadewright.errors import StudioError
from shadewright.records.models import Bath, DaySchedule, HeatSource
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.asked import asked_of
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.picture import picture_of
from shadewright.workflows.days.rack import rack_now
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.stamps import as_of, stamp_now
from shadewright.workflows.undo import undo
from tests.workflows.days.rooms import Dyehouse, dyehouse
from tests.workflows.pots import tapped

DAY = date(2026, 11, 26)


def at(hour: int, minute: int = 0) -> datetime:
    return timezone.make_aware(datetime.combine(DAY, time(hour, minute)))


@pytest.fixture
def house(db: None) -> Dyehouse:
    del db
    with as_of(at(6)):
        return dyehouse()


def drawn() -> list[str]:
    made = make_plan(day=DAY, stamp=stamp_now(by=None), seconds=0.02)
    return [each.number for each in picture_of(made).baths]


def test_steam_is_up_before_a_look_would_be_due(house: Dyehouse) -> None:
    HeatSource.objects.create(name="Steam box", kind="steamer", power_kw=2.0)
    with as_of(at(7)):
        number = house.bath(DAY, is_steamed=True)
        assert drawn() == [number]
        (bath,) = asked_of(day_now(DAY)).day.baths
    assert all(x.at + x.minutes <= bath.minutes[x.stage] for x in bath.touches)


def test_what_was_heated_nobody_knows_where_is_set_aside(house: Dyehouse) -> None:
    with as_of(at(9)):
        number = house.bath(DAY)
        Bath.objects.filter(number=number).update(pot=house.pots[0])
        tapped(number, BathAct.STARTED, "fill")
        deed = tapped(number, BathAct.HEAT_OFF, "off")
        ((name, why),) = asked_of(day_now(DAY)).aside
        assert (name, "which burner" in why) == (number, True)
        undo(deed=deed, stamp=stamp_now(by=None))
        assert asked_of(day_now(DAY)).aside == ()


def test_ticks_late_or_ahead_of_the_clock_are_put_in_their_order(
    house: Dyehouse,
) -> None:
    """A phone is a minute ahead; the filling was ticked after the heat."""
    with as_of(at(9)):
        number = house.bath(DAY, pot=house.pots[0], source=house.sources[0])
        drawn()
        tapped(number, BathAct.HEAT_ON, "heat", at=at(8, 50))
        tapped(number, BathAct.STARTED, "fill", at=at(9, 1))
        assert drawn() == [number]
        (bath,) = asked_of(day_now(DAY)).day.baths
    assert bath.going is not None
    assert (bath.going.fill_start, bath.going.heat_start) == (50, 50)


def test_a_top_without_a_tick_of_the_heat_is_hot(house: Dyehouse) -> None:
    with as_of(at(9)):
        number = house.bath(DAY, pot=house.pots[0], source=house.sources[0])
        drawn()
        tapped(number, BathAct.AT_TOP, "top")
        (bath,) = asked_of(day_now(DAY)).day.baths
    assert bath.going is not None
    assert bath.going.heat_start == 60


def test_a_burner_retired_under_its_pot_is_out_and_still_known(house: Dyehouse) -> None:
    with as_of(at(9)):
        first = house.bath(DAY, pot=house.pots[0], source=house.sources[0])
        house.bath(DAY, pot=house.pots[1], source=house.sources[0])
        drawn()
        tapped(first, BathAct.STARTED, "fill")
        tapped(first, BathAct.HEAT_ON, "heat")
        HeatSource.objects.filter(pk=house.sources[0].pk).update(is_retired=True)
        type(house.pots[1]).objects.filter(pk=house.pots[1].pk).update(is_retired=True)
        drawn()
        plan = DaySchedule.objects.latest("pk").plan
    assert "Plate A is out" in plan["conflicts"][0]["why"]
    assert {x["name"]: x["source"] for x in plan["baths"]}[first] == "Plate A"


def test_a_day_is_not_planned_after_its_close(house: Dyehouse) -> None:
    with as_of(at(18, 5)):
        house.bath(DAY)
        with pytest.raises(StudioError, match=r"past 18:00.* Hours and people"):
            drawn()


def test_uncounted_yarn_takes_the_same_places_in_the_plan_as_on_the_rack(
    house: Dyehouse,
) -> None:
    with as_of(at(9)):
        number = house.bath(DAY, fibre_g=140.0)
        Bath.objects.filter(number=number).update(skeins=None)
        (bath,) = asked_of(day_now(DAY)).day.baths
        tapped(number, BathAct.HUNG, "")
        assert rack_now().skeins == bath.skeins == 2
