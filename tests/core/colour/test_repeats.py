"""The mean of several readings, and the spread of one."""

from itertools import starmap
from math import dist, sqrt

import numpy as np
import pytest

from shadewright.core.colour import (
    Lab,
    averaged,
    lab_of_xyz,
    odd_reading,
    weight_table,
    xyz_of_lab,
)
from shadewright.errors import MissingError


@pytest.mark.by_hand
def test_three_readings_by_hand() -> None:
    # Mean 50, 10, 20; squares 1 + 4 + (1 + 4) = 10, by 2: 5.
    readings = [Lab(51.0, 10.0, 20.0), Lab(50.0, 12.0, 20.0), Lab(49.0, 8.0, 20.0)]
    found = averaged(readings)
    assert found.mean == Lab(50.0, 10.0, 20.0)
    assert found.sd == pytest.approx(sqrt(5.0))
    assert found.count == 3


def test_one_reading_tells_of_no_spread() -> None:
    found = averaged([Lab(50.0, 1.0, 2.0)])
    assert (found.mean, found.sd) == (Lab(50.0, 1.0, 2.0), None)


def test_no_reading_is_none() -> None:
    with pytest.raises(MissingError):
        averaged([])


def test_on_average_it_finds_the_spread_that_was_put_in() -> None:
    noise = np.random.default_rng(6).normal(0.0, 0.3, size=(4000, 3, 3))
    found = [averaged(list(starmap(Lab, three))) for three in noise.tolist()]
    squares = np.mean([each.sd**2 for each in found if each.sd is not None])
    assert sqrt(squares) == pytest.approx(0.3 * sqrt(3.0), rel=0.03)


@pytest.mark.parametrize("lab", [(30.0, 5.0, -20.0), (50.0, 40.0, 20.0), (85.0, 0, 60)])
def test_readings_near_each_other_have_the_same_mean_in_xyz(
    lab: tuple[float, float, float],
) -> None:
    white = weight_table().white
    moved = np.array(lab) + np.array([[0.6, 0.6, 0.6], [-0.6, -0.6, -0.6]])
    readings = list(starmap(Lab, moved.tolist()))
    lights = np.mean([xyz_of_lab(each, white=white) for each in readings], axis=0)
    in_light = lab_of_xyz(lights.tolist(), white=white)
    assert dist(averaged(readings).mean, in_light) < 0.03


@pytest.mark.by_hand
def test_the_odd_reading_by_hand() -> None:
    # The mean of the others is 50, 0, 1; they scatter by 1; 12 away is over 4 x 1.
    others = [Lab(50.0, 0.0, 0.0), Lab(50.0, 0.0, 1.0), Lab(50.0, 0.0, 2.0)]
    odd = odd_reading([others[0], Lab(62.0, 0.0, 1.0), *others[1:]])
    assert odd is not None
    assert odd.place == 2
    assert odd.distance == pytest.approx(12.0)


@pytest.mark.parametrize("far", [1.9, 3.9])
def test_what_lies_within_the_scatter_is_not_odd(far: float) -> None:
    readings = [Lab(50.0, 0.0, float(b)) for b in range(3)]
    assert odd_reading([*readings, Lab(50.0 + far, 0.0, 1.0)]) is None


def test_of_two_readings_nobody_can_tell_which_is_odd() -> None:
    assert odd_reading([Lab(50.0, 0.0, 0.0), Lab(80.0, 0.0, 0.0)]) is None
