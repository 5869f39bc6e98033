"""Rows of strengths."""

from itertools import pairwise
from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import (
    geometric_series_percent,
    ratio_ml_per_g,
    serial_series_percent,
    strength_of_ratio_percent,
)
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
def test_six_steps_of_equal_factor() -> None:
    # the factor is (0.05/2)^(1/5) = 0.025^0.2 = 0.47818
    row = geometric_series_percent(first_percent=2.0, last_percent=0.05, steps=6)
    shown = [round(strength, 4) for strength in row]
    assert shown == [2.0, 0.9564, 0.4573, 0.2187, 0.1046, 0.05]
    assert (row[0], row[-1]) == (2.0, 0.05)


@pytest.mark.by_hand
def test_dilution_upon_dilution() -> None:
    # halving 2 %: 2, 1, 1/2, 1/4, 1/8, 1/16, 1/32
    assert serial_series_percent(
        strength_percent=2.0, stock_parts=1.0, water_parts=1.0, times=6
    ) == (2.0, 1.0, 0.5, 0.25, 0.125, 0.0625, 0.03125)
    # 10 + 90 is one in ten
    assert serial_series_percent(
        strength_percent=1.0, stock_parts=10.0, water_parts=90.0, times=3
    ) == pytest.approx((1.0, 0.1, 0.01, 0.001))


def test_two_steps_are_both_ends() -> None:
    row = geometric_series_percent(first_percent=2.0, last_percent=0.05, steps=2)
    assert row == (2.0, 0.05)


def test_a_dilution_once_and_a_hundred_times() -> None:
    for times in (1, 100):
        row = serial_series_percent(
            strength_percent=2.0, stock_parts=1.0, water_parts=1.0, times=times
        )
        assert len(row) == times + 1


@given(
    st.floats(min_value=0.01, max_value=50.0),
    st.floats(min_value=0.01, max_value=50.0),
    st.integers(min_value=3, max_value=40),
)
def test_every_step_has_the_same_factor(first: float, last: float, steps: int) -> None:
    row = geometric_series_percent(first_percent=first, last_percent=last, steps=steps)
    assert len(row) == steps
    factors = [after / before for before, after in pairwise(row)]
    assert factors == pytest.approx([factors[0]] * len(factors), rel=1e-9)
    back = geometric_series_percent(first_percent=last, last_percent=first, steps=steps)
    assert list(reversed(back)) == pytest.approx(list(row), rel=1e-9)


@given(st.floats(min_value=0.01, max_value=50.0))
def test_a_strength_and_its_ratio_are_one(strength: float) -> None:
    ratio = ratio_ml_per_g(strength_percent=strength)
    assert strength_of_ratio_percent(ml_per_g=ratio) == pytest.approx(strength)


@pytest.mark.parametrize("steps", [1, 0, -3, 101])
def test_too_few_or_too_many_steps_are_refused(steps: int) -> None:
    with pytest.raises(OutOfRangeError, match="Steps"):
        geometric_series_percent(first_percent=2.0, last_percent=0.05, steps=steps)


@pytest.mark.parametrize(
    ("parts", "times"),
    [
        ((0.0, 1.0), 2),
        ((1.0, 0.0), 2),
        ((1.0, -1.0), 2),
        ((1.0, 1.0), 0),
        ((1.0, 1.0), 101),
    ],
)
def test_a_dilution_that_cannot_be_is_refused(
    parts: tuple[float, float], times: int
) -> None:
    with pytest.raises(OutOfRangeError):
        serial_series_percent(
            strength_percent=1.0,
            stock_parts=parts[0],
            water_parts=parts[1],
            times=times,
        )


@pytest.mark.parametrize("ratio", [0.0, -400.0, 1.9, nan])
def test_a_ratio_that_cannot_be_is_refused(ratio: float) -> None:
    with pytest.raises(OutOfRangeError, match="Ratio"):
        strength_of_ratio_percent(ml_per_g=ratio)
