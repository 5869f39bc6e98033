"""From parameters to what is seen; every slope against small steps."""

import numpy as np
import pytest

from shadewright.core.mixing.model.entries import Dyed, entries
from shadewright.core.mixing.model.forward import reflectances, slopes, surface_of
from shadewright.core.mixing.model.parameters import Sizes, Structure
from shadewright.core.mixing.model.seeing import SPECTRUM, Seen, as_seen
from shadewright.core.mixing.model.shapes import usual_prior
from shadewright.core.mixing.posterior.weighing import spread_out
from shadewright.core.mixing.swatches import Evidence, seen_of

STRUCTURE = Structure(dyes=3, bases=2, sessions=2, prior=usual_prior(dyes=3))
DYED = Dyed(
    depths=np.array([[0, 0, 0], [0.5, 0, 0], [0, 2.0, 0.1], [0.2, 0.3, 0.4]]),
    bases=np.array([0, 1, 0, 1]),
    sessions=np.array([0, -1, 1, 0]),
)
PARAMETERS = np.random.default_rng(2).normal(0, 0.3, STRUCTURE.total)


@pytest.mark.parametrize("seen", [SPECTRUM, seen_of(Evidence.THREE_LIGHTS)])
def test_slopes_by_every_parameter(seen: Seen) -> None:
    rows = entries(DYED, structure=STRUCTURE, sizes=Sizes())
    found = slopes(PARAMETERS, rows, STRUCTURE, seen)
    whole = spread_out(rows, found.shared, found.own, STRUCTURE)
    for place in range(STRUCTURE.total):
        step = np.zeros(STRUCTURE.total)
        step[place] = 1e-5
        rise = [
            as_seen(reflectances(PARAMETERS + sign * step, rows, STRUCTURE), seen)
            for sign in (1, -1)
        ]
        np.testing.assert_allclose(
            whole[:, :, place], (rise[0] - rise[1]) / 2e-5, rtol=1e-4, atol=1e-5
        )


def test_slopes_by_the_dose_are_those_of_the_logarithm_at_one_depth() -> None:
    rows = entries(DYED, structure=STRUCTURE, sizes=Sizes())
    found = slopes(PARAMETERS, rows, STRUCTURE, SPECTRUM)
    first = found.dose[0]  # 0.5 % of the first dye, alone
    gain = STRUCTURE.groups[1]
    own = found.own[0][:, gain.start] / Sizes().gain
    np.testing.assert_allclose(first, own, rtol=1e-12)


def test_no_dye_gives_the_bare_yarn_and_more_dye_is_darker() -> None:
    depths = np.array([[0.0], [0.1], [1.0], [10.0]])
    one = Structure(dyes=1, bases=1, sessions=0, prior=usual_prior(dyes=1))
    dyed = Dyed(depths=depths, bases=np.zeros(4, int), sessions=np.full(4, -1))
    rows = entries(dyed, structure=one, sizes=Sizes())
    made = reflectances(np.zeros(one.total), rows, one)
    assert np.all(np.diff(made, axis=0) < 0)
    assert np.all(made > surface_of(np.zeros(one.total)))
