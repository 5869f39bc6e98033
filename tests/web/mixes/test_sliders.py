"""A slider and its depth."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.web.mixes.sliders import (
    LEAST_PERCENT,
    MOST_PERCENT,
    STEPS,
    depth_at,
    place_of,
)


@given(place=st.integers(0, STEPS))
def test_a_place_comes_back(place: int) -> None:
    """But for where three figures cannot tell two places apart."""
    assert abs(place_of(depth_at(place)) - place) <= 1


def test_each_place_is_the_same_factor_more_dye() -> None:
    """(10 / 0.004)^(1/299) = 1.0265."""
    depths = [depth_at(place) for place in range(1, STEPS + 1)]
    assert depths[0] == LEAST_PERCENT
    assert depths[-1] == MOST_PERCENT
    assert depths == sorted(depths)
    assert max(more / less for less, more in pairwise(depths)) < 1.04


@pytest.mark.parametrize(
    ("depth", "place"), [(0.0, 0), (0.001, 0), (0.004, 1), (10.0, 300), (20.0, 300)]
)
def test_ends(depth: float, place: int) -> None:
    assert place_of(depth) == place
