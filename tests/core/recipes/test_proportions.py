"""What is filled in between proportions is straight."""

import numpy as np
import pytest

from shadewright.core.recipes.proportions import proportions


@pytest.mark.parametrize(
    ("together", "coarse", "fine"), [(1, 1, 1), (2, 7, 49), (3, 28, 1225)]
)
def test_a_straight_function_is_filled_in_as_it_is(
    together: int, coarse: int, fine: int
) -> None:
    grid, fill = proportions(together)
    assert (len(grid), len(fill)) == (coarse, fine)
    np.testing.assert_allclose(grid.sum(1), 1.0)
    np.testing.assert_allclose(fill.sum(1), 1.0)
    assert (fill >= 0.0).all()
    assert ((fill > 0.0).sum(1) <= together).all()
    np.testing.assert_allclose((fill @ grid).sum(1), 1.0)
    steps = 48.0 * (fill @ grid)
    np.testing.assert_allclose(steps, steps.round(), atol=1e-9)
    assert len({tuple(row) for row in steps.round().tolist()}) == fine
