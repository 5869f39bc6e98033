"""Planning a day: what the planner is asked, what is kept, what is refused."""

import json
from datetime import date, datetime, time, timedelta

import pytest
from django.utils import timezone

from shadewright.core.planning import Pin, Stage
from shadewright.errors import StudioError
from shadewright.exchange.day_file import read_before, read_day
from shadewright.records.models import (
    Bath,
    DayOutage,
    DayPresence,
    DaySchedule,
    DyeDay,
    DyeRoom,
    HeatSource,
    Pot,
    Studio,
)
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.asked import Asked, asked_of
from shadewright.workflows.days.asked_file import file_of
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.pinning import WishSaid, keep_wish
from shadewright.workflows.days.scheduling import make_plan
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.stamps import as_of, stamp_now, today
from tests.core.planning.plan_checker import faults_of
from tests.workflows.days.rooms import Dyehouse, dyehouse
from tests.workflows.pots import tapped

DAY = date(2026, 11, 26)
EVE = DAY - timedelta(days=1)


def at(hour: int, minute: int = 0, *, day: date = DAY) -> datetime:
    return timezone.make_aware(datetime.combine(day, time(hour, minute)))


@pytest.fixture
def house(db: None) -> Dyehouse:
    del db
    with as_of(at(12, day=EVE)):
        return dyehouse()


def asked(day: date = DAY) -> Asked:
    return asked_of(day_now(day))


def planned(day: date = DAY) -> DaySchedule:
    make_plan(day=day, stamp=stamp_now(by=None), seconds=0.02)
    found = DaySchedule.objects.first()
    assert found is not None
    return found


def rinsed_today() -> None:
    DyeRoom.objects.create(studio=Studio.objects.get(), cools_overnight=False)


def test_the_file_that_is_kept_gives_the_same_day(house: Dyehouse) -> None:
    with as_of(at(15, day=EVE)):
        house.bath(DAY, pot=house.pots[0], starts_at=time(9, 30), due_at=time(16))
        house.bath(DAY, fibre_g=200.0)
        said = DyeDay.objects.create(day=DAY)
        DayOutage.objects.create(dye_day=said, pot=house.pots[1], starts_at=time(12))
        found = asked()
        text = json.dumps(file_of(found.day, found.before))
    assert read_day(text) == found.day
    assert read_before(text) == found.before


def test_a_plan_is_kept_and_its_baths_stand_where_it_says(house: Dyehouse) -> None:
    with as_of(at(15, day=EVE)):
        number = house.bath(DAY)
        stamp = stamp_now(by=None)
        first = make_plan(day=DAY, stamp=stamp, seconds=0.02)
        again = make_plan(day=DAY, stamp=stamp, seconds=0.02)
    assert first.id == again.id
    (bath,) = first.baths
    row = Bath.objects.get(number=number)
    assert (bath.number, bath.pot, bath.source) == (
        number,
        str(row.pot),
        str(row.source),
    )
    fill = bath.stage(Stage.FILL)
    assert fill is not None
    assert timezone.localtime(fill.starts_at) == at(8)


def test_the_same_day_has_the_same_plan(house: Dyehouse) -> None:
    with as_of(at(15, day=EVE)):
        for _n in range(4):
            house.bath(DAY)
        one = planned().plan
        DaySchedule.objects.all().delete()
        other = planned().plan
    assert one == other


def test_overnight_is_the_habit_unless_there_are_more_baths_than_pots(
    house: Dyehouse,
) -> None:
    with as_of(at(15, day=EVE)):
        due = house.bath(DAY, due_at=time(17))
        large, small = house.bath(DAY, fibre_g=200.0), house.bath(DAY, fibre_g=50.0)
        left = {x.name for x in asked().day.baths if x.is_overnight}
        assert left == {large}
        rinsed_today()
        left = {x.name for x in asked().day.baths if x.is_overnight}
    assert left == set()
    assert due != small


def test_an_overnight_bath_is_rinsed_the_next_morning(house: Dyehouse) -> None:
    with as_of(at(15, day=EVE)):
        number = house.bath(DAY)
        planned()
        house.bath(DAY + timedelta(days=1))
        (standing, _new) = asked(DAY + timedelta(days=1)).day.baths
        plan = planned(DAY + timedelta(days=1)).plan
    assert standing.name == number
    assert standing.going is not None
    assert standing.going.checked_at == -1
    rinse = plan["baths"][0]["stages"][-1]
    assert (rinse["stage"], rinse["start_min"] >= 0) == ("rinse", True)
    assert plan["left_out"] == []


def test_what_is_on_the_heat_stays_and_the_rest_is_planned_after_now(
    house: Dyehouse,
) -> None:
    rinsed_today()
    with as_of(at(7)):
        going, waits = house.bath(DAY), house.bath(DAY)
        planned()
    with as_of(at(8, 5)):
        tapped(going, BathAct.STARTED, "fill")
    with as_of(at(8, 25)):
        tapped(going, BathAct.HEAT_ON, "heat")
    with as_of(at(11)):
        found = asked()
        plan = planned().plan
    by_name = {each.name: each for each in found.day.baths}
    state = by_name[going].going
    assert state is not None
    assert (state.fill_start, state.heat_start, state.checked_at) == (5, 25, None)
    # No tick at the top by 11:00: the rise lasts until now at least.
    assert by_name[going].minutes[Stage.RAMP] >= 180 - 25
    placed = {each["name"]: each for each in plan["baths"]}
    assert placed[waits]["stages"][0]["start_min"] >= 180


def test_the_checker_finds_no_fault_in_what_is_kept(house: Dyehouse) -> None:
    """The checker was written apart from the solver; it reads the kept file alone."""
    with as_of(at(7)):
        rinsed_today()
        house.bath(DAY - timedelta(days=1))
        numbers = [house.bath(DAY) for _n in range(3)]
        house.bath(DAY, starts_at=time(13), source=house.sources[1])
        first = planned()
    with as_of(at(8, 5)):
        tapped(numbers[0], BathAct.STARTED, "fill")
    with as_of(at(8, 25)):
        tapped(numbers[0], BathAct.HEAT_ON, "heat")
    with as_of(at(9, 30)):
        said = DyeDay.objects.get(day=DAY)
        DayOutage.objects.create(dye_day=said, pot=house.pots[1], starts_at=time(9))
        again = planned()
    for row in (first, again):
        assert faults_of(row.asked, row.plan) == []
    assert again.plan["changes"] != []


def test_a_swatch_is_left_aside_unless_it_is_pinned(house: Dyehouse) -> None:
    with as_of(at(15, day=EVE)):
        loose, pinned = house.bath(DAY), house.bath(DAY, pot=house.pots[0])
        Bath.objects.update(is_swatch=True)
        found = asked()
    assert [each.name for each in found.day.baths] == [pinned]
    assert [name for name, _why in found.aside] == [loose]
    assert "share a water bath" in found.aside[0][1]


def test_somebody_may_come_twice(house: Dyehouse) -> None:
    said = DyeDay.objects.create(day=DAY)
    for start, end in ((time(8), time(11)), (time(14), time(17))):
        DayPresence.objects.create(
            dye_day=said, name="Ines", starts_at=start, ends_at=end
        )
    with as_of(at(7)):
        house.bath(DAY)
        people = asked().day.people
    assert [(x.starts, x.ends) for x in people] == [(0, 180), (360, 540)]


def test_steamed_yarn_goes_into_a_steamer_and_no_pot(house: Dyehouse) -> None:
    HeatSource.objects.create(name="Steam box", kind="steamer", power_kw=2.0)
    with as_of(at(7)):
        house.bath(DAY, is_steamed=True)
        (bath,) = planned().plan["baths"]
        row = Bath.objects.get(dyed_on=DAY)
    assert (bath["pot"], bath["source"]) == (None, "Steam box")
    assert (row.pot, str(row.source)) == (None, "Steam box")


def test_a_bath_that_began_nowhere_is_set_aside_until_somebody_says_where(
    house: Dyehouse,
) -> None:
    with as_of(at(8, 10)):
        number = house.bath(DAY)
        tapped(number, BathAct.STARTED, "fill")
        ((name, why),) = asked().aside
        assert (name, "in which pot" in why) == (number, True)
        keep_wish(day=DAY, number=number, wish=WishSaid(pot_id=house.pots[0].pk))
        (bath,) = asked().day.baths
    assert bath.going is not None
    assert bath.going.pot == house.pots[0].name
    assert Bath.objects.get(number=number).pot == house.pots[0]


def test_what_is_given_up_or_through_asks_for_nothing(house: Dyehouse) -> None:
    with as_of(at(8, 10)):
        gone, left = house.bath(DAY), house.bath(DAY)
        give_up(number=gone, why="", stamp=stamp_now(by=None))
        assert [each.name for each in asked().day.baths] == [left]
        tapped(left, BathAct.FINISHED, "finish")
        assert asked().day.baths == ()


def test_a_pinned_start_binds_until_it_is_past(house: Dyehouse) -> None:
    with as_of(at(8)):
        house.bath(DAY, starts_at=time(9))
        assert asked().day.baths[0].pin == Pin(start=60)
    with as_of(at(9, 5)):
        assert asked().day.baths[0].pin is None


def test_a_retired_pot_takes_nothing(house: Dyehouse) -> None:
    Pot.objects.filter(pk=house.pots[0].pk).update(is_retired=True)
    with as_of(at(7)):
        house.bath(DAY)
        assert [each.name for each in asked().day.pots] == ["Pot 2"]


def test_a_bath_that_fits_no_pot_is_left_out_with_why(house: Dyehouse) -> None:
    with as_of(at(7)):
        number = house.bath(DAY, fibre_g=800.0)
        plan = planned().plan
    (out,) = plan["left_out"]
    assert out["name"] == number
    assert "No pot holds" in out["why"]


@pytest.mark.parametrize(("model", "said"), [(Pot, "A pot"), (HeatSource, "A burner")])
def test_a_day_that_lacks_something_says_so(
    house: Dyehouse, model: type[Pot] | type[HeatSource], said: str
) -> None:
    with as_of(at(7)):
        house.bath(DAY)
        model.objects.update(is_retired=True)
        with pytest.raises(StudioError, match=said):
            make_plan(day=DAY, stamp=stamp_now(by=None))


def test_no_bath_and_a_day_that_is_over_are_refused(house: Dyehouse) -> None:
    del house
    with pytest.raises(StudioError, match="nothing to plan"):
        make_plan(day=today(), stamp=stamp_now(by=None))
    with pytest.raises(StudioError, match="over"):
        make_plan(day=today() - timedelta(days=1), stamp=stamp_now(by=None))


def test_only_pots_that_hold_a_bath_keep_it_overnight(house: Dyehouse) -> None:
    Pot.objects.create(name="Swatch jar", volume_l=1.0)
    with as_of(at(15, day=EVE)):
        large = house.bath(DAY, fibre_g=200.0)
        house.bath(DAY, fibre_g=150.0)
        house.bath(DAY, fibre_g=100.0)
        left = {x.name for x in asked().day.baths if x.is_overnight}
        plan = planned().plan
    assert large in left
    assert len(left) == 2
    assert plan["left_out"] == []
