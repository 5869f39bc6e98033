"""The residuals against the distance that they stand for."""

import numpy as np
import pytest
from numpy.typing import NDArray

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.recipes.search.residuals import residuals, residuals_and_slopes
from shadewright.core.recipes.search.terms import wanted_of

Floats = NDArray[np.float64]

DRAW = np.random.default_rng(2)
TARGETS = DRAW.uniform((0, -90, -90), (100, 90, 90), (2, 3))
COLOURS = DRAW.uniform((0, -90, -90), (100, 90, 90), (5000, 3))


def rows_of(targets: Floats, colours: Floats) -> Floats:
    lightness, a, b = (np.repeat(part[None], 2, 0) for part in colours.T)
    return residuals(wanted_of(targets), lightness, a, b)


def test_their_squares_are_the_distance() -> None:
    apart = np.sqrt((rows_of(TARGETS, COLOURS) ** 2).sum(1))
    for target, found in zip(TARGETS, apart, strict=True):
        np.testing.assert_allclose(found, ciede2000_arrays(target, COLOURS), atol=1e-9)


@pytest.mark.parametrize("turn", [0.0, 1e-6, -1e-6, 1e-3, -1e-3])
def test_opposite_hues_do_not_cancel(turn: float) -> None:
    """Near opposite hues the half turn comes from the chord."""
    angles = np.linspace(0, 2 * np.pi, 37)
    targets = np.array([[50.0, 30.0, 10.0], [50.0, 30.0, 10.0]])
    hue = np.arctan2(10.0, 30.0) + np.pi + turn
    away = np.array([20 * np.cos(hue), 20 * np.sin(hue)])
    colours = np.column_stack([50 + angles, np.tile(away, (37, 1))])
    apart = np.sqrt((rows_of(targets, colours) ** 2).sum(1))[0]
    np.testing.assert_allclose(apart, ciede2000_arrays(targets[0], colours), rtol=1e-4)


def test_a_colour_is_no_way_from_itself() -> None:
    assert abs(rows_of(TARGETS, TARGETS)[0, :, 0]).max() < 1e-9


def test_slopes_are_those_of_small_steps() -> None:
    wanted = wanted_of(TARGETS)
    parts = [np.repeat(part[None], 2, 0) for part in COLOURS.T]
    _rows, by = residuals_and_slopes(wanted, *parts)
    step = 1e-5
    for part, named in (
        (0, {0: by.lightness}),
        (1, {1: by.second_a, 2: by.third_a}),
        (2, {1: by.second_b, 2: by.third_b}),
    ):
        more, less = ([each.copy() for each in parts] for _ in range(2))
        more[part] += step
        less[part] -= step
        change = residuals(wanted, *more) - residuals(wanted, *less)
        for row, slope in named.items():
            np.testing.assert_allclose(slope, change[:, row] / (2 * step), atol=1e-6)
