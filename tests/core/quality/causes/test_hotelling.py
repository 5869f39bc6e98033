"""T² and its chance: against tables of F, and another library's F."""

from importlib import import_module
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quality.causes.hotelling import chance_of, t_squared
from tests.published_cases import PublishedCase, published

F_LAW: Any = import_module("scipy.stats").f


@pytest.mark.parametrize("case", published("quality", asks="critical"))
def test_the_chance_at_a_critical_value(case: PublishedCase) -> None:
    """Half a digit more is rarer than the table says, half a digit less is not."""
    freedom, chance = case.inputs["freedom"], case.inputs["chance"]
    value, half = float(case.printed), case.half_a_digit
    assert chance_of(3 * (value + half), freedom=freedom) < chance
    assert chance_of(3 * (value - half), freedom=freedom) > chance


@given(st.floats(0.0, 200.0), st.floats(0.5, 80.0))
def test_the_chance_is_that_of_another_library(t_2: float, freedom: float) -> None:
    expected = float(F_LAW.sf(t_2 / 3.0, 3, freedom))
    assert chance_of(t_2, freedom=freedom) == pytest.approx(expected, rel=1e-8)


@pytest.mark.by_hand
def test_a_distance_in_a_noise_that_hangs_together() -> None:
    # S = [[2, 1, 0], [1, 2, 0], [0, 0, 1]]; inverse of its corner [[2, -1], [-1, 2]]/3;
    # d = (1, 1, 2): (2 - 1 - 1 + 2)/3 + 4 = 4.6667
    noise = ((2.0, 1.0, 0.0), (1.0, 2.0, 0.0), (0.0, 0.0, 1.0))
    assert t_squared((1.0, 1.0, 2.0), noise) == pytest.approx(14 / 3)
