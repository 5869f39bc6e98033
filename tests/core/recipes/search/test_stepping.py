"""A step stays within its limits, and goes where the limits let it."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.recipes.search.stepping import Box, stepped


def box(sets: int, total: float, most: float = 2.0, least: float = 0.0) -> Box:
    shape = (3, sets)
    return Box(least=np.full(shape, least), most=np.full(shape, most), total=total)


@given(st.integers(0, 10_000), st.sampled_from([0.8, 3.0]))
def test_no_limit_is_passed(seed: int, total: float) -> None:
    draws = np.random.default_rng(seed)
    at = draws.uniform(0.0, total / 3.0, (3, 8)) * (draws.random((3, 8)) < 0.7)
    jacobian = draws.normal(size=(6, 3, 8))
    rows = draws.normal(size=(6, 8))
    found = stepped(at, rows, jacobian, np.full(8, 1e-4), box(8, total))
    assert (found >= 0.0).all()
    assert (found <= 2.0).all()
    assert (found.sum(0) <= total + 1e-9).all()


def test_a_linear_problem_is_solved_in_one_step() -> None:
    """Where no limit is near, Gauss and Newton's step ends at the answer."""
    draws = np.random.default_rng(1)
    jacobian = draws.normal(size=(6, 3, 20))
    truth = draws.uniform(0.5, 1.0, (3, 20))
    at = np.full((3, 20), 0.7)
    rows = np.einsum("kim,im->km", jacobian, at - truth)
    found = stepped(at, rows, jacobian, np.zeros(20), box(20, 100.0))
    np.testing.assert_allclose(found, truth, rtol=1e-6)


def test_a_dye_at_its_limit_is_held_and_the_rest_solved() -> None:
    """By hand: two dyes that do not touch, one wants below nothing, one up by 1."""
    jacobian = np.zeros((2, 2, 1))
    jacobian[0, 0, 0] = jacobian[1, 1, 0] = 1.0
    rows = np.array([[5.0], [-1.0]])
    limits = Box(least=np.zeros((2, 1)), most=np.full((2, 1), 9.0), total=9.0)
    found = stepped(np.array([[0.5], [0.5]]), rows, jacobian, np.zeros(1), limits)
    np.testing.assert_allclose(found[:, 0], [0.0, 1.5], atol=1e-9)


def test_on_the_total_one_dye_gives_way_to_another() -> None:
    """By hand: least (x − 2)² + y² on x + y = 1 from the middle is x = 1, y = 0."""
    jacobian = np.zeros((2, 2, 1))
    jacobian[0, 0, 0] = jacobian[1, 1, 0] = 1.0
    at = np.array([[0.5], [0.5]])
    rows = np.array([[-1.5], [0.5]])
    limits = Box(least=np.zeros((2, 1)), most=np.full((2, 1), 9.0), total=1.0)
    found = stepped(at, rows, jacobian, np.zeros(1), limits)
    np.testing.assert_allclose(found[:, 0], [1.0, 0.0], atol=1e-9)
