"""Powder for a strength, and strength from a powder."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import powder_mass_g, true_strength_percent
from shadewright.errors import OutOfRangeError

VOLUMES = st.floats(min_value=1.0, max_value=20_000.0)
STRENGTHS = st.floats(min_value=0.01, max_value=40.0)
POWDERS = st.floats(min_value=5.0, max_value=400.0)


@pytest.mark.by_hand
def test_powder_and_strength_by_pencil() -> None:
    # 1 % is 1 g in 100 ml, so 5 g in 500 ml and 10 g in a litre.
    assert powder_mass_g(volume_ml=500.0, strength_percent=1.0) == 5.0
    assert true_strength_percent(powder_g=10.0, volume_ml=1000.0) == 1.0
    # 2 % of 500 ml is 10 g of dye; a powder of 80 % holds that in 10/0.8 = 12.5 g.
    weak = powder_mass_g(
        volume_ml=500.0, strength_percent=2.0, powder_strength_percent=80.0
    )
    assert weak == 12.5


@given(VOLUMES, STRENGTHS, POWDERS)
def test_what_was_planned_is_what_it_is(
    volume: float, strength: float, powder_strength: float
) -> None:
    grams = powder_mass_g(
        volume_ml=volume,
        strength_percent=strength,
        powder_strength_percent=powder_strength,
    )
    found = true_strength_percent(
        powder_g=grams, volume_ml=volume, powder_strength_percent=powder_strength
    )
    assert found == pytest.approx(strength, rel=1e-12)


@given(VOLUMES, STRENGTHS, st.floats(min_value=0.1, max_value=10.0))
def test_twice_the_stock_takes_twice_the_powder(
    volume: float, strength: float, times: float
) -> None:
    one = powder_mass_g(volume_ml=volume, strength_percent=strength)
    many = powder_mass_g(volume_ml=volume * times, strength_percent=strength)
    assert many == pytest.approx(one * times, rel=1e-12)


@pytest.mark.parametrize("bad", [0.0, -1.0, float("nan"), float("inf"), 1e12])
@pytest.mark.parametrize(
    "argument", ["volume_ml", "strength_percent", "powder_strength_percent"]
)
def test_what_cannot_be_is_refused(argument: str, bad: float) -> None:
    given_numbers = {"volume_ml": 500.0, "strength_percent": 1.0, argument: bad}
    with pytest.raises(OutOfRangeError) as refused:
        powder_mass_g(**given_numbers)
    assert refused.value.argument == argument


def test_the_edges_of_the_ranges() -> None:
    assert powder_mass_g(volume_ml=100.0, strength_percent=50.0) == 50.0
    with pytest.raises(OutOfRangeError, match="at most 50"):
        powder_mass_g(volume_ml=100.0, strength_percent=50.1)
    with pytest.raises(OutOfRangeError, match="at most 400"):
        powder_mass_g(
            volume_ml=100.0, strength_percent=1.0, powder_strength_percent=401.0
        )
    with pytest.raises(OutOfRangeError, match="True strength must be"):
        true_strength_percent(powder_g=51.0, volume_ml=100.0)
