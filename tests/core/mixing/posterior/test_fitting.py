"""The fit: at the least cost, and honest about what it leaves open."""

import numpy as np
import pytest

from shadewright.core.mixing.arranging import kinds_of, names_of
from shadewright.core.mixing.fitting_swatches import fit_once
from shadewright.core.mixing.posterior.calibrating import left_out
from shadewright.core.mixing.posterior.fitting import Fitted
from shadewright.core.mixing.posterior.weighing import (
    gathered,
    ready,
    weighed,
    whole_rows,
)
from shadewright.core.mixing.swatches import Evidence
from tests.core.mixing.worlds import Lab, ladder, ternaries, world

TRUTH = world(4, "flags", 0.008, dyes=4)


@pytest.fixture(scope="module")
def fitted() -> Fitted:
    bench = Lab(TRUTH, np.random.default_rng(1))
    swatches = bench.read(ladder(4), Evidence.LAB, 0.3)
    swatches += bench.read(ternaries(bench.draws, 4, 5), Evidence.LAB, 0.3)
    return fit_once(swatches)[0]


def test_nothing_pulls_any_more(fitted: Fitted) -> None:
    known = fitted.known
    _arrow, gradient = gathered(known.parameters, fitted.weighings, known.structure)
    step = known.covariance @ gradient
    assert abs(step).max() < 0.1  # in prior standard deviations


def test_swatches_narrow_what_was_open(fitted: Fitted) -> None:
    variance = np.diag(fitted.known.covariance)
    assert np.all(variance <= 1.0 + 1e-9)
    assert variance[0] < 0.9  # the surface is learned from deep swatches
    for each in fitted.weighings:
        rows = whole_rows(each, fitted.known.structure)
        before = np.einsum("smp,smp->sm", rows, rows)
        after = np.einsum("smp,pq,smq->sm", rows, fitted.known.covariance, rows)
        assert np.all(after < before)
        assert np.all(after < 1.0)  # no wider than the noise of the swatch itself


def test_left_out_is_what_a_fit_without_the_swatch_says(fitted: Fitted) -> None:
    """The closed form against really leaving a swatch out of the linear problem."""
    known = fitted.known
    told = left_out(fitted)[0]
    part = ready(fitted.evidence, known.structure, known.sizes)[0]
    at = weighed(known.parameters, part, known.structure, start_surface=0.005)
    _arrow, gradient = gathered(known.parameters, (at,), known.structure)
    for swatch in (3, 11, 18):
        rows = at.rows.swatch == swatch
        whole = whole_rows(at, known.structure)[swatch]
        without = np.linalg.inv(known.covariance) - whole.T @ whole
        pull = gradient.copy()
        pull[: known.structure.shared] -= at.shared[swatch].T @ at.residual[swatch]
        for row in np.flatnonzero(rows):
            where = known.structure.of_dye(int(at.rows.dye[row]))
            pull[where] -= at.own[row].T @ at.residual[swatch]
        moved = -np.linalg.solve(without, pull)
        off = np.linalg.inv(at.whitener[swatch]) @ (at.residual[swatch] + whole @ moved)
        np.testing.assert_allclose(told.off[swatch], off, atol=2e-2)


def test_names_and_groups_are_in_order() -> None:
    bench = Lab(TRUTH, np.random.default_rng(1))
    swatches = bench.read(ladder(4), Evidence.SPECTRUM, 0.1)
    swatches += bench.read(ladder(4, (1.0,)), Evidence.LAB, 0.3)
    names = names_of(swatches)
    assert names.dyes == ("d00", "d01", "d02", "d03")
    kinds = [group[0].reading.evidence for _kind, group in kinds_of(swatches, names)]
    assert kinds == [Evidence.LAB, Evidence.SPECTRUM]
