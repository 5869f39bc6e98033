"""What a bath cost, and what is named where nobody wrote it down."""

from decimal import Decimal

import pytest

from shadewright.core.costing import CostPart, total_cost
from shadewright.records.models import Auxiliary, Base, PowderJar, Studio
from shadewright.records.models.baths import BathAct
from shadewright.workflows.costs import cost_words
from shadewright.workflows.lot_pages import lot_now
from shadewright.workflows.mending import merge
from tests.workflows.bench import founded, made, new_jar, now
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def cost_line(number: str) -> str:
    return cost_words(lot_now(number).cost).replace("\u00a0", " ")


def priced(dye_id: int, price: str) -> int:
    jar = new_jar(dye_id)
    PowderJar.objects.filter(pk=jar).update(price=Decimal(price))
    return jar


def set_prices() -> None:
    Base.objects.update(price_per_kg=Decimal("40.00"))
    Auxiliary.objects.update(price_per_kg=Decimal("10.00"))


def test_what_is_not_known_is_named_one_by_one(pot: Ready) -> None:
    said = cost_line(finished(dyed(pot)))
    assert said.startswith("Not known. ")
    assert f"Slate: jar not known of bottle {pot.slate}" in said
    assert "Citric acid: no price for it" in said
    assert "yarn: no price for Fell DK" in said


def test_what_lacks_for_one_reason_is_said_once() -> None:
    parts = [
        CostPart(name=name, money=None, why="no stock to price it from")
        for name in ("Slate", "Gorse", "Slate")
    ]
    said = cost_words(total_cost(parts))
    assert said == "Not known. Slate, Gorse: no stock to price it from"


@pytest.mark.by_hand
def test_a_bath_of_which_all_is_known(pot: Ready) -> None:
    set_prices()
    Studio.objects.update(rate_per_hour=Decimal("18.00"))
    slate = made(pot.slate_dye, priced(pot.slate_dye, "20.00"))
    gorse = made(pot.gorse_dye, priced(pot.gorse_dye, "50.00"))
    for step, bottle, ml in (("dose-1", slate, 60.0), ("dose-2", gorse, 30.0)):
        tapped(pot.number, BathAct.DOSED, step, value=ml, unit="ml", bottle=bottle.code)
    tapped(pot.number, BathAct.ADDED, "add-1", value=2.0, unit="g")
    number = finished(pot.number, minutes=20.0)
    # 60 ml of 1 % are 0.6 g of a jar of 100 g for 20.00: 0.12; 0.3 g of one for
    # 50.00: 0.15; 2 g of acid at 10.00/kg: 0.02; 100 g of yarn at 40.00/kg: 4.00;
    # 20 min at 18.00/h: 6.00. Together 10.29.
    assert cost_line(number) == "10.29"


@pytest.mark.by_hand
def test_a_merged_bottle_costs_by_the_share_of_its_jars(pot: Ready) -> None:
    dear, cheap = priced(pot.slate_dye, "80.00"), priced(pot.slate_dye, "20.00")
    first, second = made(pot.slate_dye, dear), made(pot.slate_dye, cheap)
    merge(code=first.code, from_codes=[second.code], stamp=now())
    tapped(
        pot.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=first.code
    )
    slate = lot_now(finished(pot.number)).cost.parts[0]
    # 0.6 g, half of each jar of 100 g: 0.3 x 0.80 + 0.3 x 0.20 = 0.30.
    assert slate.money == pytest.approx(0.30)


def test_no_price_for_a_jar_is_said(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    bottle = made(pot.slate_dye, jar)
    tapped(
        pot.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=bottle.code
    )
    code = PowderJar.objects.get(pk=jar).code
    assert f"Slate: no price for jar {code}" in cost_line(finished(pot.number))


def test_minutes_are_asked_for_only_where_they_are_worth_something(
    pot: Ready,
) -> None:
    set_prices()
    number = finished(dyed(pot))
    assert "minutes" not in cost_line(number)
    Studio.objects.update(rate_per_hour=Decimal("18.00"))
    assert "time: minutes not written down" in cost_line(number)
    assert cost_line(number).startswith("4.02, without Slate: jar not known")


def test_dye_that_was_left_out_costs_nothing_and_is_no_gap(pot: Ready) -> None:
    set_prices()
    tapped(pot.number, BathAct.MISSED, "dose-1")
    tapped(pot.number, BathAct.MISSED, "dose-2")
    tapped(pot.number, BathAct.ADDED, "add-1", value=2.0, unit="g")
    assert cost_line(finished(pot.number)) == "4.02"
