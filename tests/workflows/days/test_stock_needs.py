"""The stock that a day wants, against the bottles that stand there."""

from datetime import timedelta

import pytest

from shadewright.records.models import Bath, BathDose, Dye, StockBottle
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bottles import draw
from shadewright.workflows.days.stock_needs import (
    DyeNeed,
    StockNeeds,
    stock_needs,
    take_new_bottles,
)
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.promised import days_without_bottle
from shadewright.workflows.stamps import today
from tests.workflows.bench import entered, now
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


def eight_pots(*, bottle_ml: float) -> tuple[Ready, list[str]]:
    """Plan eight baths of 100 g: 60 ml of Slate and 30 ml of Gorse each."""
    pot = ready(bottle_ml=bottle_ml)
    return pot, [pot.number, *(pot.another() for _ in range(7))]


def slate_of(needs: StockNeeds) -> DyeNeed:
    return next(each for each in needs.dyes if each.dye_name == "Slate")


@pytest.mark.store
@pytest.mark.by_hand
def test_enough_for_seven_of_eight_pots() -> None:
    # 450 ml give 60 ml seven times; 30 ml are left for the eighth, 0.3 g short.
    # Gorse: 240 of 450 ml. A tenth of 4.8 g is 0.48 g to spare.
    pot, numbers = eight_pots(bottle_ml=450.0)
    needs = stock_needs(today())
    slate, gorse = needs.dyes
    assert (slate.dye_name, slate.enough_for, slate.baths) == ("Slate", 7, 8)
    assert slate.first_short == f"{numbers[7].rpartition('-')[2]} Low Tide"
    assert slate.short_g == pytest.approx(0.3)
    assert slate.spare_g == pytest.approx(0.48)
    # 0.3 g in one bath of 3 l, 0.78 g in all: 78 ml of 1 % and the last drops.
    assert slate.make is not None
    assert (slate.make.strength_percent, slate.make.volume_ml) == (1.0, 100.0)
    assert (gorse.enough_for, gorse.make, gorse.is_short) == (8, None, False)
    assert gorse.left_g == pytest.approx(2.1)
    assert not needs.is_enough
    assert needs.baths == 8
    assert [each.code for each in slate.bottles] == [pot.slate]
    assert slate.bottles[0].taken_ml == pytest.approx(450.0)


@pytest.mark.by_hand
def test_a_bottle_that_was_made_since_is_taken_in_one_tap() -> None:
    pot, numbers = eight_pots(bottle_ml=450.0)
    assert days_without_bottle(pot.slate_dye) == {today(): 1}
    assert days_without_bottle(pot.gorse_dye) == {}
    new = entered(pot.slate_dye, volume_ml=100.0).code
    needs = stock_needs(today())
    assert needs.is_enough
    assert [(x.number, x.code) for x in needs.redraws] == [(numbers[7], new)]
    stamp = now()
    assert take_new_bottles(today(), stamp) == 1
    assert take_new_bottles(today(), stamp) == 0
    dose = BathDose.objects.get(bath__number=numbers[7], bottle__code=new)
    assert dose.volume_ml == pytest.approx(30.0)
    assert stock_needs(today()).redraws == ()
    assert days_without_bottle(pot.slate_dye) == {}


def test_what_was_emptied_since_is_short_again() -> None:
    pot, _ = eight_pots(bottle_ml=600.0)
    assert stock_needs(today()).is_enough
    draw(code=pot.slate, volume_ml=400.0, stamp=now())
    slate = stock_needs(today()).dyes[0]
    # 200 ml are three doses of 60 ml and 20 ml of the fourth.
    assert (slate.enough_for, slate.baths) == (3, 8)
    assert slate.short_g == pytest.approx(2.8)


def test_other_days_keep_what_they_were_promised() -> None:
    _, numbers = eight_pots(bottle_ml=500.0)
    later = today() + timedelta(days=1)
    Bath.objects.filter(number__in=numbers[4:]).update(dyed_on=later)
    slate = slate_of(stock_needs(later))
    # 500 ml less 240 ml for today: 260 ml for four doses of 60 ml.
    assert (slate.enough_for, slate.baths) == (4, 4)
    assert slate.bottles[0].there_ml == pytest.approx(260.0)
    assert stock_needs(today() + timedelta(days=2)).dyes == ()


def test_what_is_in_the_pot_or_given_up_wants_nothing_more() -> None:
    pot, numbers = eight_pots(bottle_ml=1000.0)
    tapped(numbers[0], BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate)
    give_up(number=numbers[1], why="", stamp=now())
    slate = slate_of(stock_needs(today()))
    assert slate.baths == 6
    assert slate.wanted_g == pytest.approx(3.6)


def test_without_any_bottle_everything_is_to_be_made() -> None:
    pot, _ = eight_pots(bottle_ml=450.0)
    StockBottle.objects.filter(code=pot.slate).update(discard_by=today())
    draw(code=pot.slate, volume_ml=450.0, stamp=now())
    Dye.objects.filter(pk=pot.slate_dye).update(
        is_metal_complex=True, solubility_g_per_l=8.0
    )
    needs = stock_needs(today())
    slate = needs.dyes[0]
    assert (slate.enough_for, slate.bottles) == (0, ())
    # It dissolves to 8 g/l: 0.1 % is the strongest with room to spare, 60 ml a
    # dose become 600 ml of a bath of 3 l, for lack of a stronger one.
    assert slate.make is not None
    assert slate.make.strength_percent == 0.1
    assert "Slate holds a metal" in needs.metal


def test_too_little_to_spare_is_said_before_the_first_pot() -> None:
    eight_pots(bottle_ml=490.0)
    slate = slate_of(stock_needs(today()))
    # 10 ml are left, 0.1 g of the 0.48 g to spare.
    assert not slate.is_short
    assert slate.left_g == pytest.approx(0.1)
    assert slate.make is not None
    assert slate.make.volume_ml == 100.0
