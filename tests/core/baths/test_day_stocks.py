"""The stock to make for a day."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.day_stocks import LAST_DROPS_ML, stock_to_make
from shadewright.core.baths.in_turn import DoseInTurn
from shadewright.errors import MissingError


def pot(dye_g: float, liquor_ml: float = 9000.0) -> DoseInTurn:
    return DoseInTurn(dye_g=dye_g, liquor_ml=liquor_ml)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("doses", "spare_g", "strength", "volume_ml"),
    [
        # 3.6 g and a tenth are 396 ml of 1 %, 406 with the last drops.
        ([pot(1.8), pot(1.8)], 0.36, 1.0, 500.0),
        # 0.02 g is 2 ml of 1 % and 4 ml of 0.5 %: 0.1 % gives 20 ml.
        ([pot(0.02)], 0.0, 0.1, 100.0),
        # 30 g in 9 l: 3 l of 1 % are more than a quarter; 2 % gives 1.5 l.
        ([pot(30.0)], 0.0, 2.0, 2000.0),
        # 9.5 g are 950 ml and the last drops 960.
        ([pot(9.5, 40_000.0)], 0.0, 1.0, 1000.0),
    ],
)
def test_strength_and_volume(
    doses: list[DoseInTurn], spare_g: float, strength: float, volume_ml: float
) -> None:
    made = stock_to_make(doses=doses, spare_g=spare_g)
    assert (made.strength_percent, made.volume_ml) == (strength, volume_ml)


def test_what_hardly_dissolves_is_made_weak() -> None:
    made = stock_to_make(doses=[pot(30.0)], strengths_percent=(0.5,))
    assert (made.strength_percent, made.volume_ml) == (0.5, 7000.0)


@given(
    grams=st.lists(st.floats(0.001, 50.0), min_size=1, max_size=6),
    spare=st.floats(0.0, 5.0),
)
def test_it_holds_all_the_doses_and_the_last_drops(
    grams: list[float], spare: float
) -> None:
    made = stock_to_make(doses=[pot(g) for g in grams], spare_g=spare)
    drawn_ml = made.volume_ml - LAST_DROPS_ML
    held_g = drawn_ml * made.strength_percent / 100.0
    assert held_g >= (sum(grams) + spare) * (1 - 1e-8)


def test_without_a_dose_there_is_nothing_to_make() -> None:
    with pytest.raises(MissingError):
        stock_to_make(doses=[])
