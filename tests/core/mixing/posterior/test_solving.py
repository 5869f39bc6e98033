"""The inverse of an arrow with mixes against the plain inverse of the whole."""

import numpy as np
import pytest

from shadewright.core.mixing.model.parameters import Structure
from shadewright.core.mixing.model.shapes import usual_prior
from shadewright.core.mixing.posterior.solving import Arrow, inverse, step

STRUCTURE = Structure(dyes=3, bases=1, sessions=0, prior=usual_prior(dyes=3))


def arrow(mixes: int) -> tuple[Arrow, np.ndarray]:
    """Return an arrow and the same matrix whole."""
    draws = np.random.default_rng(mixes)
    shared, own, dyes = STRUCTURE.shared, STRUCTURE.per_dye, STRUCTURE.dyes
    whole = np.eye(STRUCTURE.total)
    for dye in range(dyes):
        rows = np.zeros((5, STRUCTURE.total))
        rows[:, :shared] = draws.normal(size=(5, shared))
        rows[:, STRUCTURE.of_dye(dye)] = draws.normal(size=(5, own))
        whole += rows.T @ rows
    each = [STRUCTURE.of_dye(dye) for dye in range(dyes)]
    mixed = draws.normal(size=(mixes, STRUCTURE.total))
    made = Arrow(
        shared=whole[:shared, :shared].copy(),
        between=np.stack([whole[at, :shared] for at in each]),
        own=np.stack([whole[at, at] for at in each]),
        mixed=mixed,
    )
    return made, whole + mixed.T @ mixed


@pytest.mark.parametrize("mixes", [0, 4, 300])
def test_inverse_is_that_of_the_whole(mixes: int) -> None:
    made, whole = arrow(mixes)
    found = inverse(made, STRUCTURE)
    gradient = np.random.default_rng(7).normal(size=len(whole))
    by = step(made, STRUCTURE, gradient)
    np.testing.assert_allclose(whole @ by, gradient, atol=1e-8)
    np.testing.assert_allclose(found.covariance @ whole, np.eye(len(whole)), atol=1e-8)
    assert found.log_determinant == pytest.approx(np.linalg.slogdet(whole)[1])
