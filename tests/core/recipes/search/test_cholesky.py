"""Many small systems against numpy's, one by one."""

import numpy as np

from shadewright.core.recipes.search.cholesky import (
    normal_of,
    solved,
    solved_holding,
)

DRAW = np.random.default_rng(5)
JACOBIAN = DRAW.normal(size=(6, 4, 50))
RIGHT = DRAW.normal(size=(4, 50))
NORMAL = normal_of(JACOBIAN, np.zeros(50))


def whole(column: int) -> np.ndarray:
    return np.array(JACOBIAN[:, :, column].T @ JACOBIAN[:, :, column])


def test_it_solves_what_numpy_solves() -> None:
    found = solved(NORMAL, RIGHT)
    for column in range(50):
        plain = np.linalg.solve(whole(column), RIGHT[:, column])
        np.testing.assert_allclose(found[:, column], plain, rtol=1e-6)


def test_what_is_held_takes_its_own_step() -> None:
    held = DRAW.random((4, 50)) < 0.4
    step = DRAW.normal(size=(4, 50))
    found = solved_holding(NORMAL, RIGHT, held, step)
    np.testing.assert_array_equal(found[held], step[held])
    for column in range(50):
        free = ~held[:, column]
        rest = RIGHT[:, column] - whole(column) @ np.where(free, 0, step[:, column])
        plain = np.linalg.solve(whole(column)[np.ix_(free, free)], rest[free])
        np.testing.assert_allclose(found[free, column], plain, rtol=1e-6)


def test_damping_shortens_the_step() -> None:
    short = solved(normal_of(JACOBIAN, np.full(50, 10.0)), RIGHT)
    long = solved(NORMAL, RIGHT)
    assert (np.linalg.norm(short, axis=0) < np.linalg.norm(long, axis=0)).all()
