"""The step from a meter's light and eye: what it is near to, and how far it is off."""

from itertools import starmap

import numpy as np
import pytest

from shadewright.core.colour import (
    Lab,
    Light,
    Observer,
    ciede2000_arrays,
    lab_10_of_2,
    lab_of_meter,
    lab_of_spectra,
    sd_of_meter,
    weight_table,
)
from shadewright.core.colour.meter_light import SPREAD
from tests.core.colour.oracles import Floats, charts, paints

TWO, TEN = Observer.TWO_DEGREES, Observer.TEN_DEGREES
OPEN = np.vstack([charts()["BabelColor Average"], charts()["PMC"], paints()])


def read_and_truth(light: Light, observer: Observer) -> tuple[list[Lab], Floats]:
    """Return what such a meter reads of the open spectra, and Lab for 10°."""
    read = lab_of_spectra(OPEN, weights=weight_table(light=light, observer=observer))
    kept = Light.D65 if light is Light.D50 else light
    truth = lab_of_spectra(OPEN, weights=weight_table(light=kept))
    return list(starmap(Lab, read.tolist())), truth


def carried(read: list[Lab], light: Light, observer: Observer) -> Floats:
    """Return each as it is kept."""
    return np.array([lab_of_meter(x, light=light, observer=observer) for x in read])


@pytest.mark.parametrize(
    ("light", "observer", "stated"),
    [
        (Light.D50, TEN, 0.35),
        (Light.D65, TWO, 0.6),
        (Light.D50, TWO, 0.9),
    ],
)
def test_it_comes_as_near_as_stated_and_nearer_than_the_same_numbers(
    light: Light, observer: Observer, stated: float
) -> None:
    read, truth = read_and_truth(light, observer)
    error = ciede2000_arrays(carried(read, light, observer), truth).mean()
    assert error == pytest.approx(stated, abs=0.04)
    assert ciede2000_arrays(np.array(read), truth).mean() > 1.3 * error


@pytest.mark.parametrize(("light", "observer"), SPREAD)
@pytest.mark.parametrize(
    ("least", "most"), [(0, 5), (5, 15), (15, 30), (30, 45), (45, 60), (60, 120)]
)
def test_the_spread_holds_the_error_at_every_chroma(
    light: Light, observer: Observer, least: float, most: float
) -> None:
    read, truth = read_and_truth(light, observer)
    off = np.linalg.norm(carried(read, light, observer) - truth, axis=1)
    told = np.array([sd_of_meter(x, light=light, observer=observer) for x in read])
    here = np.array([least <= each.chroma < most for each in read])
    assert here.sum() >= 20
    ratio = np.sqrt((off[here] ** 2).mean() / (told[here] ** 2).mean())
    assert 0.4 < ratio < 1.15


def test_from_the_two_degree_eye_it_is_the_screens_step() -> None:
    lab = Lab(50.0, 40.0, -20.0)
    step = lab_of_meter(lab, light=Light.D65, observer=TWO)
    assert step == pytest.approx(lab_10_of_2(lab), abs=1e-5)


@pytest.mark.parametrize("light", [Light.D65, Light.A, Light.FL11])
def test_where_there_is_no_step_nothing_is_changed_or_lost(light: Light) -> None:
    lab = Lab(50.0, 40.0, -20.0)
    assert lab_of_meter(lab, light=light, observer=TEN) == lab
    assert sd_of_meter(lab, light=light, observer=TEN) == 0.0


@pytest.mark.parametrize(("light", "observer"), SPREAD)
@pytest.mark.parametrize("lightness", [0.0, 35.0, 100.0])
def test_greys_stay_grey(light: Light, observer: Observer, lightness: float) -> None:
    grey = Lab(lightness, 0.0, 0.0)
    step = lab_of_meter(grey, light=light, observer=observer)
    assert step == pytest.approx(grey, abs=1e-5)
