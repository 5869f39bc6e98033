"""Half-widths and what they are worth."""

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.uncertainty import Shape, standard_uncertainty
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("shape", "squares"),
    [(Shape.RECTANGULAR, 3.0), (Shape.TRIANGULAR, 6.0), (Shape.NORMAL, 1.0)],
)
def test_u_is_the_half_width_by_a_root(shape: Shape, squares: float) -> None:
    # the mean square of −a … a, spread evenly, is a²/3; of a triangle a²/6
    u = standard_uncertainty(half_width=0.6, shape=shape)
    assert u**2 * squares == pytest.approx(0.36)


@pytest.mark.by_hand
def test_a_tared_reading_is_two_roundings() -> None:
    # each rounding ±d/2, rectangular: 2 (d/2)²/3 = d²/6, a triangle of half-width d
    one = standard_uncertainty(half_width=0.05, shape=Shape.RECTANGULAR)
    both = standard_uncertainty(half_width=0.1, shape=Shape.TRIANGULAR)
    assert both**2 == pytest.approx(2 * one**2)


@given(st.floats(min_value=0.0, max_value=1e6), st.sampled_from(Shape))
def test_twice_as_wide_is_twice_as_unsure(half_width: float, shape: Shape) -> None:
    once = standard_uncertainty(half_width=half_width, shape=shape)
    twice = standard_uncertainty(half_width=2 * half_width, shape=shape)
    assert twice == pytest.approx(2 * once)


@pytest.mark.parametrize("half_width", [-0.1, nan, inf])
def test_what_is_no_half_width_is_refused(half_width: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        standard_uncertainty(half_width=half_width, shape=Shape.RECTANGULAR)
    assert refused.value.argument == "half_width"
