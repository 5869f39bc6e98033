"""What a bath cost, checked with a pencil."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.costing import (
    CostPart,
    dye_cost,
    mixed_shares,
    time_cost,
    total_cost,
    weight_cost,
)
from shadewright.errors import OutOfRangeError

GRAMS = st.floats(0.001, 10_000.0)


def test_dye_costs_its_share_of_the_jar() -> None:
    # By hand: 4.4 g of standard dye are 4 g of a powder of 110 %; 4 g of a jar of
    # 50 g that cost 24.50 cost 24.50 x 4 / 50 = 1.96.
    cost = dye_cost(
        dye_g=4.4, powder_strength_percent=110.0, jar_price=24.5, jar_powder_g=50.0
    )
    assert cost == pytest.approx(1.96)


@given(GRAMS)
def test_a_whole_jar_costs_its_price(powder_g: float) -> None:
    cost = dye_cost(
        dye_g=powder_g,
        powder_strength_percent=100.0,
        jar_price=24.5,
        jar_powder_g=powder_g,
    )
    assert cost == pytest.approx(24.5)


def test_yarn_and_time() -> None:
    # By hand: 0.602 kg at 41.50 = 24.983; 25 min at 18 an hour = 7.50.
    assert weight_cost(mass_g=602.0, price_per_kg=41.5) == pytest.approx(24.983)
    assert time_cost(minutes=25.0, rate_per_hour=18.0) == pytest.approx(7.5)


def test_what_is_not_known_is_named_and_left_out() -> None:
    acid = CostPart(name="Citric acid", money=None, why="no price for it")
    cost = total_cost([CostPart(name="Dye", money=1.25), acid])
    assert cost.money == 1.25
    assert cost.missing == (acid,)


def test_nothing_known_is_no_cost_and_not_nought() -> None:
    assert total_cost([CostPart(name="Dye", money=None)]).money is None
    assert total_cost([]).money is None


@pytest.mark.parametrize(
    ("argument", "numbers"),
    [
        ("jar_price", {"jar_price": -1.0}),
        ("jar_powder_g", {"jar_powder_g": 0.0}),
        ("powder_strength_percent", {"powder_strength_percent": 0.0}),
    ],
)
def test_numbers_that_cannot_be_are_refused(
    argument: str, numbers: dict[str, float]
) -> None:
    usual = {"powder_strength_percent": 100.0, "jar_price": 20.0, "jar_powder_g": 50.0}
    with pytest.raises(OutOfRangeError) as caught:
        dye_cost(dye_g=1.0, **(usual | numbers))
    assert caught.value.argument == argument


def test_a_price_and_a_time_below_nought_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"Price of 1 kg must be"):
        weight_cost(mass_g=1.0, price_per_kg=-1.0)
    with pytest.raises(OutOfRangeError, match=r"Minutes must be"):
        time_cost(minutes=-1.0, rate_per_hour=10.0)


@given(GRAMS, GRAMS)
def test_shares_of_a_mixed_stock_are_those_of_its_grams(a: float, b: float) -> None:
    shares = mixed_shares([(a, {"J1": 1.0}), (b, {"J2": 1.0})])
    assert sum(shares.values()) == pytest.approx(1.0)
    assert shares["J1"] == pytest.approx(a / (a + b))


def test_a_stock_without_dye_comes_from_nowhere() -> None:
    assert mixed_shares([(0.0, {"J1": 1.0})]) == {}
