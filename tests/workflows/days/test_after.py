"""A day as it went beside its plan, and what it took of water, heat and drains."""

from datetime import datetime, timedelta

import pytest
from time_machine import TimeMachineFixture

from shadewright.records.models import Dye, HeatSource
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.days.after import BathWent, day_after
from shadewright.workflows.days.day_ledger import DayAct, write_day
from shadewright.workflows.days.day_order import clock
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.bench import now
from tests.workflows.days.planned_day import PlannedDay, at, planned_day
from tests.workflows.pots import tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def day(time_machine: TimeMachineFixture) -> PlannedDay:
    time_machine.move_to(datetime(2026, 11, 26, 19, tzinfo=at(0).tzinfo))
    return planned_day()


def dye_first(day: PlannedDay) -> None:
    """Tick the first bath through: the heat late, the hold longer, a dose over."""
    bath = day.first
    tapped(bath, BathAct.STARTED, "fill", value=5.8, unit="l", at=at(8, 10))
    for step, bottle, dose_ml in (
        ("dose-1", day.pot.slate, 132.0),  # 10 % over
        ("dose-2", day.pot.gorse, 60.0),
    ):
        tapped(
            bath,
            BathAct.DOSED,
            step,
            value=dose_ml,
            unit="ml",
            bottle=bottle,
            at=at(8, 15),
        )
    tapped(bath, BathAct.HEAT_ON, "heat", at=at(8, 33))  # 08:21 was planned
    tapped(bath, BathAct.AT_TOP, "top", at=at(9, 25))  # 52 min; 50 were planned
    tapped(bath, BathAct.PH, "hold", value=4.4, unit="pH", at=at(10, 5))
    tapped(bath, BathAct.LEFTOVER, "hold", value=20, unit="%", at=at(10, 6))
    tapped(bath, BathAct.HEAT_OFF, "off", at=at(10, 10))  # 45 min; 32 were planned
    for minute in (0, 6):
        tapped(bath, BathAct.RINSED, "rinse", at=at(12, minute))
    tapped(bath, BathAct.HUNG, "rack", at=at(12, 10))


def after(number: str) -> BathWent:
    return next(each for each in day_after(today()).baths if each.number == number)


def test_times_stand_side_by_side(day: PlannedDay) -> None:
    dye_first(day)
    found = {
        x.what: (clock(x.planned), clock(x.real), x.differs)
        for x in after(day.first).moments
    }
    assert found == {
        "Heat on": ("08:21", "08:33", "12\xa0min later"),
        "At the top": ("09:11", "09:25", "14\xa0min later"),
        "Heat off": ("09:43", "10:10", "27\xa0min later"),
        "First rinse": ("11:43", "12:00", "17\xa0min later"),
        "On the rack": ("11:51", "12:10", "19\xa0min later"),
    }
    lengths = {
        x.what: (x.words(x.planned), x.words(x.real), x.differs)
        for x in after(day.first).lengths
    }
    assert lengths == {
        "Way to the top": ("50\xa0min", "52\xa0min", "as planned"),
        "Hold and look": ("32\xa0min", "45\xa0min", "13\xa0min longer"),
    }


def test_what_differed_is_said_in_sentences(day: PlannedDay) -> None:
    dye_first(day)
    note = Tap(bath=day.first, act=BathAct.PROBLEM, note="A skein floated")
    keep_tap(note, stamp=stamp_now(by=None))
    assert after(day.first).differs == (
        "Slate: 0.66\xa0% instead of 0.6\xa0%, 10\xa0% deeper.",
        "About 20\xa0% of the dye was left at the last look.",
        "Problem: A skein floated.",
    )
    second = after(day.second)
    assert second.status is BathStatus.PLANNED
    assert second.differs == ("It was not begun.",)


def test_a_bath_that_was_given_up_stays_in_the_story(day: PlannedDay) -> None:
    note = Tap(bath=day.second, act=BathAct.GIVEN_UP, note="no yarn")
    keep_tap(note, stamp=stamp_now(by=None))
    assert after(day.second).differs == ("Given up: no yarn.",)


def test_water_is_an_estimate_from_what_was_ticked(day: PlannedDay) -> None:
    dye_first(day)
    use = day_after(today()).use
    # 200 g: soak 10 ml/g = 2 l; 5.8 l were ticked; two rinses of 25 ml/g = 10 l
    assert (use.soak_l, use.bath_l, use.rinse_l) == (2.0, 5.8, 10.0)
    assert use.water_l == pytest.approx(17.8)
    (one,) = use.baths  # the second was not begun
    assert (one.are_rinses_told, one.is_water_told) == (True, True)
    assert use.untold_rinses == 0


def test_energy_lies_between_the_rise_and_full_power(day: PlannedDay) -> None:
    dye_first(day)
    use = day_after(today()).use
    # 1.8 kW for the 97 min from heat on to heat off
    assert use.most_kwh == pytest.approx(1.8 * 97 / 60)
    assert use.rise_kwh is not None
    assert 0.4 < use.rise_kwh < 1.8 * 97 / 60
    assert (use.unheated, use.untimed) == ((), ())


def test_what_nobody_ticked_is_named(day: PlannedDay) -> None:
    HeatSource.objects.update(is_retired=True)
    tapped(day.second, BathAct.STARTED, "fill")
    use = day_after(today()).use
    assert use.most_kwh is None
    assert use.untimed == ("B1 Low Tide",)
    assert use.untold_rinses == 1
    (one,) = use.baths
    assert not one.is_water_told
    # 100 g: the 2.91 l of the plan, and three rinses by habit
    assert use.bath_l == pytest.approx(2.91)
    assert use.rinse_l == 7.5


def test_the_spent_bath_says_what_was_read_and_what_holds_a_metal(
    day: PlannedDay,
) -> None:
    Dye.objects.filter(name="Gorse").update(is_metal_complex=True)
    dye_first(day)
    (one,) = day_after(today()).use.baths
    assert (one.spent_l, one.ph, one.left) == (6.0, "pH\xa04.4", "about 20\xa0%")
    assert one.metal.startswith("Gorse holds a metal")
    assert "local rules" in one.metal


def test_meters_are_told_beside_the_estimate(day: PlannedDay) -> None:
    dye_first(day)
    for value in (10.0, 12.5):
        write_day(today(), DayAct.POWER, value=value, stamp=now())
    found = day_after(today())
    assert found.ledger.power_kwh == 2.5
    assert found.use.most_kwh == pytest.approx(1.8 * 97 / 60)


def test_what_hangs_of_the_day_and_its_last_heat(day: PlannedDay) -> None:
    dye_first(day)
    found = day_after(today())
    assert [each.number for each in found.hung] == [day.first]
    assert found.hung[0].dry_at == at(12, 10) + timedelta(hours=36)
    assert clock(found.last_off.planned) == "09:43"  # of what was dyed
    assert clock(found.last_off.real) == "10:10"


def test_a_day_without_anything_says_nothing() -> None:
    found = day_after(today() + timedelta(days=3))
    assert (found.is_planned, found.baths, found.use.water_l) == (False, (), 0)
    assert not found.last_off.differs
    assert not found.ledger.entries
