import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import blended_reflectance
from shadewright.errors import OutOfRangeError

PAIR = np.array([[0.6], [0.1]])


@pytest.mark.by_hand
@pytest.mark.parametrize(("m", "expected"), [(0.15, 0.196311), (0.11, 0.204958)])
def test_half_and_half_by_hand(m: float, expected: float) -> None:
    """M = 0.15: f(0.6) = 0.4/0.0985 = 4.060914, f(0.1) = 0.9/0.0235 = 38.297872.

    Mean 21.179393; R = (1 − 0.0085 · 21.179393) / (1 + 0.15 · 21.179393) = 0.196311.
    M = 0.11: f = 5.340454 and 45.226131, mean 25.283292, R = 0.204958.
    """
    found = blended_reflectance(PAIR, shares=[0.5, 0.5], m=m)
    assert float(found[0]) == pytest.approx(expected, abs=5e-7)


@given(st.floats(0.01, 1.0), st.floats(0.05, 0.5))
def test_a_fibre_blended_with_itself_stays_as_it_is(r: float, m: float) -> None:
    same = blended_reflectance(np.array([[r], [r]]), shares=[3, 1], m=m)
    assert float(same[0]) == pytest.approx(r)


@given(st.floats(0.0, 1.0))
def test_a_blend_is_darker_than_the_mean_and_within_its_parts(x: float) -> None:
    blend = float(blended_reflectance(PAIR, shares=[x, 1.0 - x])[0])
    assert 0.1 - 1e-12 <= blend <= 0.6 * x + 0.1 * (1 - x) + 1e-12


def test_only_the_ratio_of_weights_counts() -> None:
    grams = blended_reflectance(PAIR, shares=[30.0, 70.0])
    assert np.allclose(grams, blended_reflectance(PAIR, shares=[0.3, 0.7]))


@pytest.mark.parametrize(
    ("shares", "m", "says"),
    [
        ([0.5], 0.15, "one for each fibre"),
        ([0.5, -0.5], 0.15, "none below 0"),
        ([0.0, 0.0], 0.15, "not all 0"),
        ([0.5, 0.5], 1.0, "M must be above 0 and below 1; got 1."),
        ([0.5, 0.5], 0.0, "M must be above 0 and below 1; got 0."),
    ],
)
def test_a_blend_that_is_none(shares: list[float], m: float, says: str) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        blended_reflectance(PAIR, shares=shares, m=m)
    assert says in str(refused.value)
