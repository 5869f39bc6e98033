"""What is seen of a reflectance, and its slopes."""

import numpy as np
import pytest

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.colour.spectra.tristimulus import lab_of_spectra
from shadewright.core.colour.spectra.weights import weight_table
from shadewright.core.mixing.model.seeing import (
    SPECTRUM,
    Seen,
    as_seen,
    as_seen_slope,
)
from shadewright.core.mixing.swatches import Evidence, seen_of, seen_under_lights

SPECTRA = np.random.default_rng(5).uniform(0.002, 0.95, (6, 31))


def test_lab_is_that_of_the_chapter_on_colour() -> None:
    for light in (Light.D65, Light.A, Light.FL11):
        told = lab_of_spectra(SPECTRA, weights=weight_table(light=light))
        seen = as_seen(SPECTRA, seen_under_lights(light))
        np.testing.assert_allclose(seen, told, atol=1e-9)


def test_three_lights_stand_side_by_side() -> None:
    three = as_seen(SPECTRA, seen_of(Evidence.THREE_LIGHTS))
    assert three.shape == (6, 9)
    np.testing.assert_array_equal(three[:, :3], as_seen(SPECTRA, seen_of(Evidence.LAB)))


@pytest.mark.parametrize("seen", [SPECTRUM, seen_of(Evidence.THREE_LIGHTS)])
def test_slopes_are_those_of_small_steps(seen: Seen) -> None:
    slopes = as_seen_slope(SPECTRA, seen)
    for band in (0, 12, 30):
        step = np.zeros(31)
        step[band] = 1e-6
        rise = as_seen(SPECTRA + step, seen) - as_seen(SPECTRA - step, seen)
        np.testing.assert_allclose(slopes[..., band], rise / 2e-6, rtol=1e-4, atol=1e-5)
