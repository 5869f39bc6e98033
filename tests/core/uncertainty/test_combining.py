"""Sums, products and quotients: by hand, against lots, and as laws."""

from math import sqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from shadewright.core.uncertainty import (
    Shape,
    Value,
    bounded,
    budget,
    exact,
    product,
    quotient,
    scaled,
    total,
)
from shadewright.errors import OutOfRangeError
from tests.core.uncertainty.terms import reckoned, spread, value, values


@pytest.mark.by_hand
def test_a_dose_of_stock_from_powder_to_yarn() -> None:
    """Ten grams to a litre, 50 ml of it on 100 g of yarn."""
    powder = bounded(  # tared on a scale of 0.01 g
        10.0, half_width=0.01, shape=Shape.TRIANGULAR, name="powder", source="powder"
    )
    litre = bounded(  # ±10 ml of a 1000 ml cylinder
        1000.0, half_width=10.0, shape=Shape.RECTANGULAR, name="mark", source="mark"
    )
    pour = bounded(  # ±1 ml of a 100 ml cylinder
        50.0, half_width=1.0, shape=Shape.RECTANGULAR, name="pour", source="pour"
    )
    yarn = bounded(  # tared on a scale of 1 g
        100.0, half_width=1.0, shape=Shape.TRIANGULAR, name="yarn", source="yarn"
    )
    stock = scaled(quotient(powder, litre), by=100.0)
    # 0.01/10/√6 = 0.0408 %; 10/1000/√3 = 0.5774 %; together 0.5788 %
    assert stock.value == pytest.approx(1.0)
    assert stock.u_rel == pytest.approx(0.005788, abs=5e-7)
    depth = quotient(product(stock, pour), yarn)
    # 1/50/√3 = 1.1547 %; 1/100/√6 = 0.4082 %
    # √(0.3350 + 1.3333 + 0.1667) = √1.8350 = 1.3546 %, of 0.5 % 0.00677 %
    assert depth.value == pytest.approx(0.5)
    assert depth.u_rel == pytest.approx(0.013546, abs=5e-7)
    assert depth.u == pytest.approx(0.00677, abs=5e-6)
    assert [line.name for line in budget(depth)] == ["pour", "mark", "yarn", "powder"]


def test_what_is_divided_by_itself_is_one_and_sure() -> None:
    yarn = value(100.0, scale=3.0)
    assert quotient(yarn, yarn) == exact(1.0)


@pytest.mark.by_hand
def test_one_bottle_in_three_baths_is_one_error() -> None:
    # 3 × 20 ml × 1 % with u = 0.05 %: 0.6 g ± 0.03 g, not ± 0.03/√3
    strength = value(1.0, bottle=0.05)
    doses = [product(strength, value(20.0, **{f"pour {n}": 0.2})) for n in range(3)]
    dye = scaled(total(*doses), by=0.01)
    of = {term.source: term.u for term in dye.terms}
    assert of["bottle"] == pytest.approx(0.03)
    assert dye.u == pytest.approx(sqrt(0.03**2 + 3 * 0.002**2))


@pytest.mark.by_hand
def test_the_rest_of_a_bottle_is_its_start_less_what_was_drawn() -> None:
    # 500 ± 3, 20 ± 0.4 drawn: √(9 + 0.16) = 3.0265
    rest = total(value(500.0, mark=3.0), scaled(value(20.0, pour=0.4), by=-1.0))
    assert rest.value == 480.0
    assert rest.u == pytest.approx(3.0265, abs=5e-5)


def test_nothing_is_divided_by_nought() -> None:
    with pytest.raises(OutOfRangeError, match="other than 0"):
        quotient(value(1.0, scale=0.1), exact(0.0))


def test_nothing_added_up_is_nought_and_nothing_multiplied_is_one() -> None:
    assert (total(), product()) == (exact(0.0), exact(1.0))


@given(values(), values(), values())
def test_the_order_does_not_matter(one: Value, two: Value, three: Value) -> None:
    for join in (total, product):
        at_once, in_steps = join(one, two, three), join(three, join(two, one))
        assert in_steps.value == pytest.approx(at_once.value)
        assert in_steps.u == pytest.approx(at_once.u, rel=1e-9, abs=1e-9)


@given(values(), values())
def test_multiplying_undoes_dividing(one: Value, two: Value) -> None:
    back = product(quotient(one, two), two)
    assert back.value == pytest.approx(one.value)
    assert back.u == pytest.approx(one.u, rel=1e-9, abs=1e-9)


@given(values(), st.floats(min_value=-100.0, max_value=100.0))
def test_a_number_without_spread_scales_both(one: Value, by: float) -> None:
    assume(abs(by) > 1e-6)
    found = scaled(one, by=by)
    assert found.u == pytest.approx(abs(by) * one.u)
    assert found.value == product(one, exact(by)).value
    assert found.u == pytest.approx(product(one, exact(by)).u)


@given(values(), values())
def test_independent_shares_add_in_squares_through_a_product(
    one: Value, two: Value
) -> None:
    assume(not {t.source for t in one.terms} & {t.source for t in two.terms})
    for found in (product(one, two), quotient(one, two)):
        assert found.u_rel == pytest.approx(sqrt(one.u_rel**2 + two.u_rel**2))


@pytest.mark.parametrize(
    ("over", "under"),
    [
        # 1 % of powder, half a percent of water, a pour of 2 %, yarn of 1 %
        (
            [value(5.0, scale=0.05), value(10.0, pour=0.2)],
            [value(500.0, mark=2.5), value(100.0, yarn=1.0)],
        ),
        # the bottle's fill is in both, and part of it cancels
        ([value(20.0, fill=0.4, pour=0.3)], [value(50.0, fill=0.5)]),
    ],
)
def test_drawing_lots_agrees_within_its_own_error(
    over: list[Value], under: list[Value]
) -> None:
    draws = 40_000
    first_order = quotient(product(*over), product(*under))
    numbers = reckoned(over, under, draws=draws, seed=7)
    # The standard deviation of n draws is itself unsure by s/√(2n): 0.35 %.
    slack = 4 * first_order.u / sqrt(2 * draws) + first_order.u * 1e-3
    assert spread(numbers) == pytest.approx(first_order.u, abs=slack)
