"""The fast kernel against the plain one, and its slopes against small steps."""

import numpy as np
import pytest

from shadewright.core.recipes.search.evaluating import (
    jacobian_of,
    slope_by_ks,
    value_of,
)
from shadewright.core.recipes.search.plain import plain_value
from tests.core.recipes.search.problems import sought


@pytest.mark.parametrize("seed", range(3))
def test_the_fast_kernel_is_the_plain_one(seed: int) -> None:
    search = sought(12, seed=seed, in_reach=seed != 2)
    draws = np.random.default_rng(seed)
    sets = np.array([draws.choice(12, 4, replace=False) for _ in range(40)]).T
    amounts = draws.uniform(0, 1.5, sets.shape) * (draws.random(sets.shape) < 0.8)
    fast = value_of(search.aim, search.dyes.of(sets).added(amounts)[0])
    for column, value in enumerate(fast):
        unit = search.dyes.unit[sets[:, column]]
        plain = plain_value(search.aim, unit, amounts[:, column])
        assert value == pytest.approx(plain, rel=1e-9, abs=1e-12)


def test_its_slopes_are_those_of_small_steps() -> None:
    search = sought(9, seed=1)
    sets = np.array([[0, 1, 2], [3, 4, 5], [6, 7, 8]])
    amounts = np.full((3, 3), 0.4)
    mixed = search.dyes.of(sets)
    found, jacobian = jacobian_of(search.aim, mixed, amounts)
    for slot in range(3):
        step = np.zeros((3, 3))
        step[slot] = 1e-6
        more = value_of(search.aim, mixed.added(amounts + step)[0])
        less = value_of(search.aim, mixed.added(amounts - step)[0])
        slope = 2 * np.einsum("km,km->m", found.rows, jacobian[:, slot])
        np.testing.assert_allclose(slope, (more - less) / 2e-6, rtol=1e-5, atol=1e-6)


def test_what_any_dye_would_do_is_one_product() -> None:
    search = sought(9, seed=4)
    sets, amounts = np.array([[0], [3]]), np.array([[0.3], [0.5]])
    mixed = search.dyes.of(sets)
    found, jacobian = jacobian_of(search.aim, mixed, amounts)
    by_dye = search.dyes.unit @ slope_by_ks(search.aim, mixed.added(amounts)[0])
    plain = np.einsum("km,kim->im", found.rows, jacobian)
    np.testing.assert_allclose(by_dye[[0, 3]], plain, rtol=1e-9)
