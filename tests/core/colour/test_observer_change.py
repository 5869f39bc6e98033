"""The step from one eye to the other: its matrix, and how near it comes."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.colour import (
    Lab,
    Observer,
    ciede2000_arrays,
    lab_2_of_10,
    lab_10_of_2,
    lab_of_spectra,
    weight_table,
)
from shadewright.core.colour.observer_change import TO_2, TO_10, WHITE_2, WHITE_10
from tests.core.colour.oracles import Floats, charts, paints

NARROW = weight_table(observer=Observer.TWO_DEGREES)
WIDE = weight_table()


def smoothest() -> Floats:
    """Return Burns's linear method: from XYZ to the smoothest spectrum, (3, 31).

    The least sum of squared steps with three sums kept, by Lagrange's multipliers.
    """
    bands = len(NARROW.rows)
    steps = np.diff(np.eye(bands), axis=0)
    system = np.block([
        [steps.T @ steps, NARROW.rows],
        [NARROW.rows.T, np.zeros((3, 3))],
    ])
    wanted = np.vstack([np.zeros((bands, 3)), np.eye(3)])
    solved: Floats = np.linalg.solve(system, wanted)[:bands].T
    return solved


@pytest.mark.pinned
def test_the_matrix_is_that_of_the_smoothest_spectrum() -> None:
    matrix = (smoothest() @ WIDE.rows).T
    assert np.abs(matrix - TO_10).max() < 1e-8
    assert np.abs(np.array(TO_2) @ np.array(TO_10) - np.eye(3)).max() < 1e-7


@pytest.mark.pinned
def test_the_whites_are_those_of_the_weights() -> None:
    assert pytest.approx(NARROW.white, abs=1e-7) == WHITE_2
    assert pytest.approx(WIDE.white, abs=1e-7) == WHITE_10


@pytest.mark.parametrize("spectra", [*charts().values(), paints()])
def test_it_comes_nearer_than_the_same_numbers_would(spectra: Floats) -> None:
    narrow = lab_of_spectra(spectra, weights=NARROW)
    truth = lab_of_spectra(spectra, weights=WIDE)
    carried = np.array([lab_10_of_2(Lab(*lab)) for lab in narrow.tolist()])
    error = ciede2000_arrays(carried, truth).mean()
    assert error < 0.8
    assert ciede2000_arrays(narrow, truth).mean() > 1.8 * error


@given(st.floats(1, 100), st.floats(-60, 60), st.floats(-60, 60))
def test_there_and_back_is_no_change(light: float, a: float, b: float) -> None:
    there = lab_10_of_2(Lab(light, a, b))
    assert lab_2_of_10(there) == pytest.approx(Lab(light, a, b), abs=1e-3)


@pytest.mark.parametrize("light", [0.0, 35.0, 100.0])
def test_greys_stay_grey(light: float) -> None:
    assert lab_10_of_2(Lab(light, 0, 0)) == pytest.approx(Lab(light, 0, 0), abs=1e-5)
