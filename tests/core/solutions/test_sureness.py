"""How sure a strength is once it is made, and after something came in."""

from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import balance, measuring_tool
from shadewright.core.solutions import (
    cooled,
    diluted_strength,
    filled_mass_g,
    joined_strength,
    labelled_strength,
    made_strength,
    of_stock,
    strengthened_strength,
    weighed_volume,
)
from shadewright.core.uncertainty import Term, Value, budget, exact
from shadewright.core.uncertainty.tools import mass_read, volume_read
from shadewright.errors import OutOfRangeError

VOLUMES = st.floats(min_value=1.0, max_value=5_000.0)
STRENGTHS = st.floats(min_value=0.05, max_value=10.0)
SPREADS = st.floats(min_value=1e-4, max_value=0.2)


def weighed(grams: float, *, scale: str = "0.01g", role: str = "powder") -> Value:
    return mass_read(balance(scale, name="Scale"), grams, role=role, key="tool 1")


def marked(millilitres: float, *, ware: str = "cylinder 1000ml B") -> Value:
    tool = measuring_tool(ware, name="Vessel")
    return volume_read(tool, millilitres, role="stock", key="tool 2")


def known(value: float, u_rel: float, source: str = "one") -> Value:
    return Value(
        value=value, terms=(Term(name=source, source=source, u=value * u_rel),)
    )


@pytest.mark.by_hand
def test_ten_grams_in_a_litre_cylinder() -> None:
    """A step of 0.01 g, tared: 0.01/√6 = 0.00408 g; ±10 ml: 10/√3 = 5.774 ml.

    √(0.000408² + 0.005774²) = 0.005788; the mark has all but a two-hundredth.
    """
    stock = made_strength(powder=weighed(10.0), volume=marked(1000.0))
    assert stock.value == 1.0
    assert stock.u_rel == pytest.approx(0.005788, abs=5e-7)
    mark, scale = budget(stock)
    assert (mark.name, scale.name) == (
        "mark of the 1000\u00a0ml cylinder",
        "reading the scale, powder",
    )
    assert mark.share == pytest.approx(0.995, abs=5e-4)


@pytest.mark.by_hand
def test_one_gram_on_a_kitchen_scale() -> None:
    """0.1/√6 = 0.0408 g of 1 g: 4.08 %, whatever it is made up in."""
    stock = made_strength(powder=weighed(1.0, scale="0.1g"), volume=exact(100.0))
    assert stock.u_rel == pytest.approx(0.0408, abs=5e-5)


def test_a_jar_of_another_strength_changes_the_figure_and_not_how_sure_it_is() -> None:
    plain = made_strength(powder=weighed(10.0), volume=marked(1000.0))
    strong = made_strength(
        powder=weighed(10.0), volume=marked(1000.0), powder_strength_percent=200.0
    )
    assert strong.value == 2.0
    assert strong.u_rel == pytest.approx(plain.u_rel)


@pytest.mark.by_hand
def test_made_up_on_a_scale() -> None:
    """504.106 g less 5 g are 499.106 g of water, over 0.998207 g/ml: 500.00 ml.

    In 500 ml the scale's 1 g, tared, is 0.41 ml: 0.082 %. The room of 5 g, up to
    5 ml, is 5/√3 = 2.89 ml: 0.577 %. The powder's own 0.0041 g is 0.082 %.
    """
    filled_g = filled_mass_g(volume_ml=500.0, powder_g=5.0)
    powder = weighed(5.0)
    filled = weighed(filled_g, scale="1g", role="finished stock")
    volume = weighed_volume(filled=filled, powder=powder, key="T7K")
    stock = made_strength(powder=powder, volume=volume)
    assert volume.value == pytest.approx(500.0)
    assert stock.value == pytest.approx(1.0)
    lines = {line.source: line.u_rel for line in budget(stock)}
    assert lines["room T7K"] == pytest.approx(0.00577, abs=5e-6)
    assert lines["tool 1 finished stock reading"] == pytest.approx(0.00082, abs=5e-6)
    assert lines["tool 1 powder reading"] == pytest.approx(0.00082, abs=1e-5)


def test_a_stock_made_up_on_a_scale_weighs_more_than_its_powder() -> None:
    with pytest.raises(OutOfRangeError, match="tared with the empty vessel"):
        weighed_volume(filled=exact(5.0), powder=exact(5.0), key="T7K")


def test_what_somebody_else_wrote_is_a_guess_of_a_tenth() -> None:
    label = labelled_strength(strength_percent=0.5, key="T7K")
    assert label.u == 0.05
    assert label.terms[0].name == "strength as labelled: a guess"


@pytest.mark.by_hand
def test_filled_hot_the_figure_is_higher_and_as_sure() -> None:
    """0.99821/0.9718 = 1.0272 (densities of water at 20 and 80 °C)."""
    hot = cooled(known(1.0, 0.01), filled_at_c=80.0)
    assert hot.value == pytest.approx(1.0272, abs=5e-5)
    assert hot.u_rel == pytest.approx(0.01)


@pytest.mark.by_hand
def test_a_dilution_adds_its_own_readings() -> None:
    """50 ml of a 100 ml cylinder (±1 ml) to 500 ml (±5 ml), of 2 % ± 1 %.

    (1/√3)/50 = 1.155 %, (5/√3)/500 = 0.577 %; √(1² + 1.155² + 0.577²) = 1.633 %.
    """
    thin = diluted_strength(
        stock_percent=known(2.0, 0.01),
        stock_ml=marked(50.0, ware="cylinder 100ml B"),
        filled=volume_read(
            measuring_tool("cylinder 500ml B", name="Vessel"),
            500.0,
            role="weaker stock",
            key="tool 3",
        ),
    )
    assert thin.value == pytest.approx(0.2)
    assert 100.0 * thin.u_rel == pytest.approx(1.633, abs=5e-4)


@pytest.mark.by_hand
def test_powder_brings_the_scale_in_by_its_share() -> None:
    """1 % ± 1 % with 2.5 g ± 0.1 g in 500 ml: √(0.01² + 0.02²) = 0.02236 of 1.5."""
    strong = strengthened_strength(
        have_percent=known(1.0, 0.01),
        volume=exact(500.0),
        dye=known(2.5, 0.04, "scale"),
    )
    assert strong.value == 1.5
    assert strong.u == pytest.approx(sqrt(5e-4))


def test_errors_of_two_stocks_are_not_taken_for_one() -> None:
    one = of_stock(known(1.0, 0.03), key="bottle T7K")
    two = of_stock(known(1.0, 0.04), key="bottle K7R")
    both = joined_strength(
        first_percent=one,
        first_ml=exact(100.0),
        second_percent=two,
        second_ml=exact(100.0),
    )
    assert both.u_rel == pytest.approx(0.025)  # half of √(0.03² + 0.04²)


@given(STRENGTHS, SPREADS, VOLUMES, VOLUMES, SPREADS)
def test_two_halves_of_one_bottle_are_as_sure_as_it_was(
    percent: float, spread: float, first: float, second: float, level: float
) -> None:
    bottle = known(percent, spread)
    both = joined_strength(
        first_percent=bottle,
        first_ml=known(first, level, "first level"),
        second_percent=bottle,
        second_ml=known(second, level, "second level"),
    )
    assert both.value == pytest.approx(percent)
    assert both.u == pytest.approx(bottle.u, rel=1e-9)
    assert [term.source for term in both.terms] == ["one"]


@given(STRENGTHS, STRENGTHS, SPREADS, SPREADS, VOLUMES, VOLUMES)
def test_strangers_poured_together_are_never_less_sure_than_the_worse(
    a: float, b: float, spread_a: float, spread_b: float, first: float, second: float
) -> None:
    both = joined_strength(
        first_percent=known(a, spread_a, "a"),
        first_ml=exact(first),
        second_percent=known(b, spread_b, "b"),
        second_ml=exact(second),
    )
    assert both.u_rel <= max(spread_a, spread_b) * (1 + 1e-9)


@given(STRENGTHS, SPREADS, st.lists(st.floats(0.05, 0.95), min_size=1, max_size=6))
def test_each_step_of_a_row_is_less_sure(
    percent: float, spread: float, shares: list[float]
) -> None:
    row = [known(percent, spread)]
    for number, share in enumerate(shares):
        row.append(
            diluted_strength(
                stock_percent=row[-1],
                stock_ml=known(100.0 * share, 0.01, f"pour {number}"),
                filled=exact(100.0),
            )
        )
    assert all(a.u_rel < b.u_rel for a, b in pairwise(row))
