"""The interval that holds the truth: closed forms, and how often it really does."""

from math import nan, sqrt
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.uncertainty import (
    Shape,
    Term,
    Value,
    coverage_factor,
    exact,
    half_width,
    scaled,
)
from shadewright.errors import OutOfRangeError
from tests.core.uncertainty.terms import shaped, truths

N, R, T = Shape.NORMAL, Shape.RECTANGULAR, Shape.TRIANGULAR
SHARES = st.floats(min_value=0.5, max_value=0.999)
SIZES = st.floats(min_value=0.01, max_value=10.0)


@pytest.mark.by_hand
@given(SIZES, SHARES)
def test_one_error_has_the_interval_of_its_shape(a: float, p: float) -> None:
    # rectangle: P(|Y| ≤ y) = y/a
    assert half_width(shaped((a, R)), coverage=p) == pytest.approx(p * a, rel=2e-4)
    # triangle: 1 − P = (1 − y/a)²
    triangle = a * (1 - sqrt(1 - p))
    assert half_width(shaped((a, T)), coverage=p) == pytest.approx(triangle, rel=2e-4)
    normal = NormalDist(sigma=a).inv_cdf((1 + p) / 2)
    assert half_width(shaped((a, N)), coverage=p) == pytest.approx(normal, rel=2e-4)


@pytest.mark.by_hand
@given(SIZES)
def test_two_equal_rectangles_are_a_triangle(a: float) -> None:
    two = half_width(shaped((a, R), (a, R)))
    assert two == pytest.approx(half_width(shaped((2 * a, T))), rel=1e-4)


@pytest.mark.by_hand
@pytest.mark.parametrize(("a", "b"), [(1.0, 0.25), (1.0, 0.1), (3.0, 2.5)])
def test_two_rectangles_are_a_trapezium(a: float, b: float) -> None:
    # beyond a − b a side falls straight to a + b: 1 − P = (a + b − y)²/(4 a b),
    # so for 5 % y = a + b − √(0.05 · 4 a b), where that lies beyond a − b
    y = a + b - sqrt(0.2 * a * b)
    assert y > a - b
    assert half_width(shaped((a, R), (b, R))) == pytest.approx(y, rel=1e-4)


@pytest.mark.by_hand
def test_twice_u_is_wider_than_a_rectangle() -> None:
    pour = shaped((1.0, R))
    assert 2 * pour.u > 1.0
    assert half_width(pour) == pytest.approx(0.95, rel=1e-4)
    assert coverage_factor(pour) == pytest.approx(0.95 * sqrt(3), rel=1e-4)


MIXES = {
    "one rectangle": [(1.0, R)],
    "two rectangles": [(1.0, R), (0.4, R)],
    "triangle": [(1.0, T)],
    "normal": [(1.0, N)],
    "rectangle and triangle": [(1.0, R), (0.3, T)],
    "rectangle and normal": [(1.0, R), (0.2, N)],
    "a stock and its dose": [(1.0, R), (0.5, R), (0.5, T), (0.04, T), (0.1, N)],
}


@pytest.mark.parametrize("mix", MIXES)
@pytest.mark.parametrize("coverage", [0.5, 0.9, 0.95])
def test_the_interval_holds_the_truth_as_often_as_it_says(
    mix: str, coverage: float
) -> None:
    given_value = shaped(*MIXES[mix])
    reach, draws = half_width(given_value, coverage=coverage), 20_000
    drawn = truths(given_value, draws=draws, seed=11)
    inside = sum(abs(truth - given_value.value) <= reach for truth in drawn)
    # A count of n draws is unsure by √(p (1 − p)/n): 0.35 % of n at one half.
    slack = 3.5 * sqrt(coverage * (1 - coverage) / draws)
    assert inside / draws == pytest.approx(coverage, abs=slack)


@given(
    st.lists(st.tuples(SIZES, st.sampled_from(Shape)), min_size=1, max_size=5),
    SHARES,
)
def test_more_often_is_wider_and_never_past_the_bounds(
    parts: list[tuple[float, Shape]], p: float
) -> None:
    given_value = shaped(*parts)
    wide, narrow = half_width(given_value, coverage=0.999), half_width(given_value)
    assert 0.0 < half_width(given_value, coverage=p) <= wide * 1.001
    assert narrow < wide
    if not any(shape is N for _, shape in parts):
        assert wide <= sum(a for a, _ in parts)


@given(
    st.lists(st.tuples(SIZES, st.sampled_from(Shape)), min_size=1, max_size=4),
    st.floats(min_value=1e-6, max_value=1e6),
)
def test_it_does_not_hang_on_the_unit_or_the_sign(
    parts: list[tuple[float, Shape]], by: float
) -> None:
    given_value = shaped(*parts)
    there = half_width(scaled(given_value, by=-by))
    assert there == pytest.approx(by * half_width(given_value), rel=1e-6)


@given(SIZES, SIZES, st.sampled_from(Shape))
def test_a_further_error_never_narrows(a: float, b: float, shape: Shape) -> None:
    alone, both = half_width(shaped((a, R))), half_width(shaped((a, R), (b, shape)))
    assert both >= alone * (1 - 1e-3)


def test_what_is_sure_has_no_interval() -> None:
    assert (half_width(exact(5.0)), coverage_factor(exact(5.0))) == (0.0, 0.0)


def test_a_term_of_nought_changes_nothing() -> None:
    nought = Term(name="mark", source="mark", u=0.0, shape=R)
    pour = shaped((1.0, R))
    both = Value(value=1.0, terms=(*pour.terms, nought))
    assert half_width(both) == pytest.approx(half_width(pour))


@pytest.mark.parametrize("coverage", [0.49, 1.0, -0.5, nan])
def test_what_is_no_coverage_is_refused(coverage: float) -> None:
    for asked in (half_width, coverage_factor):
        with pytest.raises(OutOfRangeError) as refused:
            asked(shaped((1.0, R)), coverage=coverage)
        assert refused.value.argument == "coverage"
