"""From a swatch to a large bath, step by step."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.stepping import MOST_STEP, reach_against, steps_up_g
from shadewright.core.uncertainty import Term, Value, half_width
from shadewright.errors import OutOfRangeError

grams = st.floats(1.0, 50_000.0)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("tried_g", "wanted_g", "steps"),
    [
        (None, 2000.0, (20.0, 100.0, 500.0)),  # common practice
        (None, 15.0, ()),
        (20.0, 100.0, ()),  # five times is one step
        (20.0, 101.0, (100.0,)),
        (97.0, 2500.0, (480.0, 2400.0)),  # 5 × 97 = 485, cut; 5 × 480 = 2400
        (500.0, 300.0, ()),
    ],
)
def test_steps(
    tried_g: float | None, wanted_g: float, steps: tuple[float, ...]
) -> None:
    assert steps_up_g(tried_g=tried_g, wanted_g=wanted_g) == steps


@given(tried=grams, wanted=grams)
def test_no_step_is_too_large_and_none_is_needless(tried: float, wanted: float) -> None:
    steps = steps_up_g(tried_g=tried, wanted_g=wanted)
    climbed = (tried, *steps, wanted) if wanted > tried else (tried,)
    for one, two in pairwise(climbed):
        assert one < two <= MOST_STEP * one * (1 + 1e-8)
    assert bool(steps) == (wanted > MOST_STEP * tried * (1 + 1e-9))


@pytest.mark.parametrize(("tried", "wanted"), [(0.0, 10.0), (20.0, 0.0)])
def test_nothing_is_no_weight(tried: float, wanted: float) -> None:
    with pytest.raises(OutOfRangeError):
        steps_up_g(tried_g=tried, wanted_g=wanted)


@pytest.mark.by_hand
def test_what_both_share_drops_out() -> None:
    # Strength 2 % in both; syringe 5 % at the swatch, 0.5 % at the pot.
    strength = Term(name="strength", source="K9WQ", u=0.012)
    at_swatch = Term(name="syringe", source="dose of swatch", u=0.03)
    at_pot = Term(name="syringe", source="dose of pot", u=0.003)
    swatch = Value(value=0.6, terms=(strength, at_swatch))
    pot = Value(value=0.6, terms=(strength, at_pot))
    # u of the quotient: root of 5 %² + 0.5 %² = 5.025 %; the strength is in neither.
    u = (0.05**2 + 0.005**2) ** 0.5
    alone = Value(value=1.0, terms=(Term(name="syringe", source="x", u=u),))
    expected = half_width(alone)
    assert reach_against(bath=pot, trial=swatch) == pytest.approx(expected, rel=0.01)
