"""Targets: what is known of them, and what they ask."""

import numpy as np
import pytest

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.model.kubelka_munk import reflectance_of_ks
from shadewright.core.mixing.swatches import seen_under_lights
from shadewright.core.recipes.targets import (
    aim_of,
    smooth_ks,
    steady_lab,
    target_of_labs,
    target_of_spectrum,
)
from shadewright.errors import MissingError, OutOfRangeError

GREY = tuple([0.2] * 31)


def test_a_grey_keeps_its_colour_under_the_bulb() -> None:
    """A flat spectrum is the steadiest there is: by hand, a = b = 0 in any light."""
    target = target_of_spectrum(GREY)
    (_day, day), (_bulb, bulb) = target.labs
    np.testing.assert_allclose(bulb, day, atol=1e-9)
    np.testing.assert_allclose(steady_lab(day), bulb, atol=1e-9)


def test_daylight_comes_first() -> None:
    labs = {Light.A: Lab(50, 1, 2), Light.D65: Lab(49, 0, 0)}
    target = target_of_labs(labs)
    assert [light for light, _lab in target.labs] == [Light.D65, Light.A]
    assert target.lab == Lab(49, 0, 0)
    assert not target.is_known_under_one


def test_one_light_counts_fully_and_others_half() -> None:
    ground = np.full(31, 0.06)
    known = aim_of(target_of_spectrum(GREY), ground=ground, surface=0.005)
    assert known.shares.ravel().tolist() == [1.0, 0.5]
    alone = target_of_labs({Light.D65: Lab(50, 0, 0)})
    assert aim_of(alone, ground=ground, surface=0.0).shares.ravel().tolist() == [1, 0.1]


@pytest.mark.parametrize(
    "lab", [(50, 30, 20), (60, -30, 10), (30, 10, -40), (92, 0, 5)]
)
def test_a_smooth_spectrum_comes_near_its_colour(lab: tuple[float, ...]) -> None:
    seen = seen_under_lights(Light.D65)
    ks = smooth_ks(np.array([lab]), seen, surface=0.0)
    found = lab_under(reflectance_of_ks(ks)[None], light=Light.D65)[0]
    assert np.abs(found - lab).max() < 1.0


def test_what_is_no_target_is_refused() -> None:
    with pytest.raises(MissingError, match="under D65"):
        target_of_labs({Light.A: Lab(50, 0, 0)})
    with pytest.raises(OutOfRangeError, match="31 reflectances"):
        target_of_spectrum((0.5, 0.5))
