"""Stocks that could be made, each the surest way."""

from dataclasses import replace
from math import sqrt

import pytest

from shadewright.core.baths.levers.makeable import stocks_to_make
from tests.core.baths.levers.studio import (
    CYLINDER,
    MAKING,
    SMALL,
    STRONG,
    SYRINGE,
    bottle,
)


@pytest.mark.by_hand
def test_a_weak_stock_is_thinned_and_a_strong_one_weighed() -> None:
    made = {
        round(stock.strength.value, 4): stock
        for stock in stocks_to_make(
            making=MAKING,
            standing=[STRONG],
            devices=[SYRINGE, CYLINDER],
            strengths_percent=[2.0, 0.1],
        )
    }
    # 10 g on 0.1 g (off by 0.2): √(0.01/6 + 0.04/3)/10; 500 ml ± 5: 0.01/√3
    strong = sqrt((0.01 / 6 + 0.04 / 3) / 100 + 0.01**2 / 3)
    assert made[2.0].how.replace("\u00a0", " ") == "10 g of powder to 500 ml"
    assert made[2.0].strength.u_rel == pytest.approx(strong)
    # 50 ml of 1 % ± 1 % from a cylinder of ± 1 ml to 500 ml ± 5
    weak = sqrt((0.01**2 + (1 / 50) ** 2 + 0.01**2) / 3)
    assert made[0.1].how.replace("\u00a0", " ") == "50 ml of bottle T7KK to 500 ml"
    assert made[0.1].strength.u_rel == pytest.approx(weak)
    assert not made[0.1].is_there


def test_a_guess_is_not_thinned_where_powder_is_surer() -> None:
    guess = bottle("G4RR", percent=2.0, half_width_rel=0.2)
    (made,) = stocks_to_make(
        making=MAKING,
        standing=[guess],
        devices=[CYLINDER],
        strengths_percent=[1.0],
    )
    assert "powder" in made.how


def test_the_bottle_that_a_new_stock_is_thinned_from_stays_in_its_terms() -> None:
    (made,) = stocks_to_make(
        making=MAKING, standing=[STRONG], devices=[SMALL], strengths_percent=[0.1]
    )
    names = {term.name for term in made.strength.terms}
    assert made.thinned_with == SMALL
    assert "T7KK, weighed, to" in made.how
    assert "reading the scale, stock thinned" in names
    assert "mark of the 500 ml cylinder" in names


@pytest.mark.parametrize(
    ("changes", "strength"),
    [
        ({"vessel": None}, 1.0),
        ({"powder_scale": None}, 1.0),
        ({}, 0.05),  # 0.25 g is less than five steps of 0.1 g
    ],
)
def test_what_cannot_be_made_is_not_proposed(
    changes: dict[str, None], strength: float
) -> None:
    making = replace(MAKING, **changes)  # type: ignore[arg-type]
    assert stocks_to_make(making=making, strengths_percent=[strength]) == ()


def test_a_bottle_with_too_little_in_it_is_not_thinned() -> None:
    low = replace(STRONG, usable_ml=49.0)
    making = replace(MAKING, powder_scale=None)
    asked = {"making": making, "devices": [CYLINDER], "strengths_percent": [0.1]}
    assert stocks_to_make(standing=[low], **asked) == ()  # type: ignore[arg-type]
    assert stocks_to_make(standing=[STRONG], **asked) != ()  # type: ignore[arg-type]
