"""Stains on white cloth: the greys of the scale have their grades."""

from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import Lab
from shadewright.core.quality import STAINING_GREYS, staining
from tests.published_cases import PublishedCase, published

WHITE = Lab(94.0, 0.0, 2.0)


@pytest.mark.parametrize("case", published("quality", asks="staining"))
def test_the_greys_have_their_grades(case: PublishedCase) -> None:
    distance, step = case.inputs["distance"], case.inputs["step"]
    found = staining(WHITE, Lab(94.0 - distance, 0.0, 2.0))
    assert found.step == step
    assert case.agrees(found.rating)


def test_the_table_is_that_of_the_cases() -> None:
    cases = [each.values[0] for each in published("quality", asks="staining")]
    printed = [(case.inputs["step"], case.inputs["distance"]) for case in cases]
    assert [(step, grey) for step, grey, _off in STAINING_GREYS[1:]] == printed


@pytest.mark.by_hand
def test_a_stain_with_colour_counts_less_than_a_grey_one() -> None:
    # ΔL −6, Δa 8, so ΔE 10 and ΔE_GS = 10 − 0.4 × 8 = 6.8: 6.1 − 1.45 ln 6.8 = 3.32
    found = staining(WHITE, Lab(88.0, 8.0, 2.0))
    assert found.distance == pytest.approx(6.8)
    assert found.rating == pytest.approx(6.1 - 1.45 * log(6.8))
    assert found.step == "3-4"


def test_no_stain_is_a_five() -> None:
    assert (staining(WHITE, WHITE).rating, staining(WHITE, WHITE).step) == (5.0, "5")


@given(st.floats(0.0, 60.0), st.floats(0.0, 60.0))
def test_more_stain_is_no_better(one: float, two: float) -> None:
    less, more = sorted((one, two))
    ratings = [staining(WHITE, Lab(94.0 - x, 0.0, 2.0)).rating for x in (less, more)]
    assert 1.0 <= ratings[1] <= ratings[0] + 0.04
