"""What the hands take is learned from the ticks at the pot."""

from collections.abc import Iterator
from datetime import datetime, timedelta

import pytest
from django.utils import timezone

from shadewright.core.planning import Stage
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.days.stage_times import FEWEST, USUAL, stage_minutes
from shadewright.workflows.people import people
from shadewright.workflows.stamps import stamp_now
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def noon() -> datetime:
    yesterday = timezone.localtime() - timedelta(days=1)
    return yesterday.replace(hour=12, minute=0, second=0, microsecond=0)


def tick(
    number: str, act: BathAct, step: str, *, minute: float, by: int, device: str = ""
) -> None:
    at = noon() + timedelta(minutes=minute)
    keep_tap(
        Tap(bath=number, act=act, step=step, device=device),
        stamp=stamp_now(by=by, at=at),
    )


def baths(pot: Ready, count: int) -> Iterator[tuple[str, float]]:
    """Plan baths an hour apart, from noon yesterday."""
    for place in range(count):
        yield pot.another(), 60.0 * place


def test_usual_values_stand_until_there_are_enough_timings(pot: Ready) -> None:
    (ines, *_others) = people()
    for number, begins in baths(pot, FEWEST - 1):
        tick(number, BathAct.CHECKED, "hold", minute=begins, by=ines.id)
        tick(number, BathAct.HEAT_OFF, "off", minute=begins + 7, by=ines.id)
    check = stage_minutes().check_min
    assert (check.minutes, check.rests_on) == (USUAL.check_min.minutes, FEWEST - 1)
    assert not check.is_learned


def test_the_median_of_enough_timings_goes_before(pot: Ready) -> None:
    (ines, *_others) = people()
    for place, (number, begins) in enumerate(baths(pot, FEWEST)):
        took = (4, 5, 6, 7, 25)[place]  # its median is 6, one long gap or not
        tick(number, BathAct.CHECKED, "hold", minute=begins, by=ines.id)
        tick(number, BathAct.HEAT_OFF, "off", minute=begins + took, by=ines.id)
    check = stage_minutes().check_min
    assert (check.minutes, check.rests_on, check.is_learned) == (6.0, FEWEST, True)


def test_filling_is_timed_from_the_last_tick_of_the_same_person(pot: Ready) -> None:
    ines, tam, *_others = people()
    for number, begins in baths(pot, FEWEST):
        tick(number, BathAct.STARTED, "yarn", minute=begins, by=ines.id)
        tick(pot.number, BathAct.CHECKED, "look", minute=begins + 5, by=tam.id)
        tick(number, BathAct.STARTED, "fill", minute=begins + 6, by=ines.id)
    fill = stage_minutes().fill_min_per_l
    assert fill.minutes == pytest.approx(6 / 3.0)  # 100 g at 1:30 are 3 l
    assert fill.rests_on == FEWEST


def test_a_dose_is_timed_only_within_its_own_bath_and_not_over_a_break(
    pot: Ready,
) -> None:
    (ines, *_others) = people()
    for number, begins in baths(pot, FEWEST):
        tick(number, BathAct.STARTED, "fill", minute=begins, by=ines.id)
        tick(number, BathAct.MISSED, "dose-1", minute=begins + 3, by=ines.id)
        tick(number, BathAct.ADDED, "add-1", minute=begins + 4, by=ines.id)
        tick(pot.number, BathAct.ADDED, "add-1", minute=begins + 6, by=ines.id)
        tick(pot.number, BathAct.ADDED, "add-1", minute=begins + 40, by=ines.id)
    assert stage_minutes().dose_min.rests_on == 0


def test_cards_are_no_timings(pot: Ready) -> None:
    (ines, *_others) = people()
    for number, begins in baths(pot, FEWEST):
        for step, minute in (("hold", 0), ("off", 5)):
            act = BathAct.CHECKED if step == "hold" else BathAct.HEAT_OFF
            tick(number, act, step, minute=begins + minute, by=ines.id, device="card")
    assert stage_minutes().check_min.rests_on == 0


def test_cooling_runs_to_the_first_rinse_of_the_same_day(pot: Ready) -> None:
    (ines, *_others) = people()
    for number, begins in baths(pot, FEWEST):
        tick(number, BathAct.HEAT_OFF, "off", minute=begins, by=ines.id)
        tick(number, BathAct.RINSED, "", minute=begins + 150, by=ines.id)
    overnight = pot.another()
    tick(overnight, BathAct.HEAT_OFF, "off", minute=-60 * 20, by=ines.id)
    tick(overnight, BathAct.RINSED, "", minute=-60 * 8, by=ines.id)
    cool = stage_minutes().cool_min
    assert (cool.minutes, cool.rests_on) == (150.0, FEWEST)


def test_all_rinses_of_a_bath_and_its_hanging_are_one(pot: Ready) -> None:
    (ines, *_others) = people()
    for number, begins in baths(pot, FEWEST):
        Bath.objects.filter(number=number).update(skeins=2)
        tick(number, BathAct.HEAT_OFF, "off", minute=begins, by=ines.id)
        tick(number, BathAct.RINSED, "rinse", minute=begins + 3, by=ines.id)
        tick(number, BathAct.RINSED, "rinse", minute=begins + 6, by=ines.id)
        tick(number, BathAct.HUNG, "rack", minute=begins + 10, by=ines.id)
    assert stage_minutes().rinse_min_per_skein.minutes == 5.0  # 10 min for two skeins


def test_a_bath_has_whole_minutes_of_each_stage() -> None:
    minutes = USUAL.of_bath(liquor_l=8.0, doses=2, skeins=4)
    assert minutes == {
        Stage.FILL: 4,  # 0.4 min/l, rounded up
        Stage.DOSE: 6,
        Stage.CHECK: 2,
        Stage.COOL: 120,
        Stage.RINSE: 8,
    }
    assert USUAL.of_bath(liquor_l=0.4, doses=0, skeins=0)[Stage.RINSE] == 1
