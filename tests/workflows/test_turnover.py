"""What to mix, what to pour away, and the money that goes with it."""

from datetime import timedelta
from decimal import Decimal

import pytest

from shadewright.records.models import Dye, PowderJar, StockBottle
from shadewright.workflows.bottles import Look, draw, look_at, record_strength
from shadewright.workflows.stamps import today
from shadewright.workflows.turnover import turnover
from tests.workflows.bench import made, new_dye, new_jar, now
from tests.workflows.pots import ready

pytestmark = pytest.mark.django_db


def aged(code: str, *, days: int) -> None:
    day = today() - timedelta(days=days)
    StockBottle.objects.filter(code=code).update(made_on=day)


@pytest.mark.by_hand
def test_planned_baths_that_want_more_than_good_bottles_hold_ask_for_a_stock() -> None:
    # 100 g want 0.6 g of Slate, and 100 ml of 1 % hold 1 g. A second bath makes it
    # 1.2 g: 0.2 g short. Of Gorse 0.6 g are wanted, which 1 g covers.
    pot = ready(bottle_ml=100.0)
    assert turnover().to_mix == ()
    pot.another()
    (mix,) = turnover().to_mix
    assert mix.dye_name == "Slate"
    assert mix.wanted_g == pytest.approx(0.2)
    look_at(code=pot.gorse, look=Look.SETTLED, stamp=now())
    assert {each.dye_name for each in turnover().to_mix} == {"Slate", "Gorse"}


def test_a_dye_that_is_nearly_used_up_is_mixed_again() -> None:
    dye = new_dye()
    bottle = made(dye)
    draw(code=bottle.code, volume_ml=440.0, stamp=now())
    (mix,) = turnover().to_mix
    assert f"60\N{NO-BREAK SPACE}ml in {bottle.code}" in mix.why
    made(dye)
    assert turnover().to_mix == ()


@pytest.mark.by_hand
def test_what_is_past_its_time_goes_with_the_money_that_it_cost() -> None:
    # 5 g in 500 ml from a jar of 100 g for 20.00: 1.00; 100 ml drawn leave 0.80.
    dye = new_dye()
    jar = new_jar(dye)
    PowderJar.objects.filter(pk=jar).update(price=Decimal("20.00"))
    bottle = made(dye, jar)
    draw(code=bottle.code, volume_ml=100.0, stamp=now())
    assert turnover().to_let_go == ()
    aged(bottle.code, days=200)
    found = turnover()
    (going,) = found.to_let_go
    assert going.is_test_worth
    assert going.why == "It is older than six months."
    assert going.cost.money == pytest.approx(0.80)
    assert found.lost.money == pytest.approx(0.80)
    record_strength(code=bottle.code, strength_percent=0.9, stamp=now())
    assert turnover().to_let_go == ()


def test_settled_and_past_its_time_is_not_worth_a_test() -> None:
    bottle = made(new_dye())
    look_at(code=bottle.code, look=Look.SETTLED, stamp=now())
    assert turnover().to_let_go == ()
    aged(bottle.code, days=200)
    (going,) = turnover().to_let_go
    assert not going.is_test_worth
    assert going.why == "It has settled and is past its time."
    assert going.cost.money is None
    assert going.cost.why == f"jar not known of bottle {bottle.code}"


def test_a_dye_made_for_the_day_goes_the_day_after_the_next() -> None:
    dye = new_dye()
    Dye.objects.filter(pk=dye).update(is_mix_fresh=True)
    bottle = made(dye)
    aged(bottle.code, days=2)
    (going,) = turnover().to_let_go
    assert going.why == "Its dye is mixed fresh for the day."
