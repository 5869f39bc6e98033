"""Three by three: the same as numpy, which the core does without here."""

from itertools import product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quality.causes.matrices import (
    UNIT,
    Matrix,
    Three,
    combined,
    determinant,
    normal_density,
    outer,
    squared_distance,
    trace,
)

numbers = st.floats(-5.0, 5.0)
vectors = st.tuples(numbers, numbers, numbers)


def covariance(one: Three, two: Three) -> Matrix:
    """Return a covariance made of two vectors and a round noise."""
    return combined((1.0, outer(one)), (0.5, outer(two)), (0.3, UNIT))


@given(vectors, vectors, vectors)
def test_a_distance_is_that_of_the_inverse(one: Three, two: Three, at: Three) -> None:
    matrix = covariance(one, two)
    expected = np.array(at) @ np.linalg.inv(np.array(matrix)) @ np.array(at)
    assert squared_distance(at, matrix) == pytest.approx(expected, rel=1e-6, abs=1e-9)
    assert determinant(matrix) == pytest.approx(np.linalg.det(np.array(matrix)))
    assert trace(matrix) == pytest.approx(np.trace(np.array(matrix)))


def test_a_density_adds_up_to_one() -> None:
    """Summed over a grid of steps of 0.5."""
    matrix = covariance((0.6, 0.2, 0.0), (0.0, 0.5, 0.4))
    grid = np.arange(-4.0, 4.01, 0.5)
    whole = sum(normal_density(at, matrix) for at in product(grid, grid, grid))
    assert whole * 0.5**3 == pytest.approx(1.0, abs=1e-3)
