"""Other people's programs for the same sums: colour-science and scikit-image."""

import warnings
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

from shadewright.core.colour import Light, Observer
from shadewright.core.tables.lights import FIRST_NM, LAST_NM

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # it warns of parts that it could use besides
    colour: Any = import_module("colour")
    skimage_color: Any = import_module("skimage.color")

Floats = NDArray[np.float64]
Spectral: TypeAlias = Any  # colour-science has its own kinds of tables

EYES = {
    Observer.TWO_DEGREES: "CIE 1931 2 Degree Standard Observer",
    Observer.TEN_DEGREES: "CIE 1964 10 Degree Standard Observer",
}
GELDOF = Path(__file__).parent / "spectra" / "geldof2018.tsv"


@cache
def eye(observer: Observer) -> Spectral:
    """Return an observer from 360 to 780 nm."""
    return colour.MSDS_CMFS[EYES[observer]].copy().trim(_range(1))


@cache
def light_of(light: Light) -> Spectral:
    """Return a light at each nanometre, straight between the numbers of its table."""
    if light is Light.A:
        return colour.sd_CIE_standard_illuminant_A(_range(1))
    found = colour.SDS_ILLUMINANTS[light.value].copy()
    found.align(_range(1), interpolator=colour.LinearInterpolator)
    first = colour.SDS_ILLUMINANTS[light.value].wavelengths[0]
    power = np.where(found.wavelengths < first, 0.0, found.values)
    return colour.SpectralDistribution(power, found.wavelengths)


def weights_of(light: Light, observer: Observer, step_nm: int) -> Floats:
    """Return the weights of ASTM E2022 from 360 to 780 nm."""
    make = colour.colorimetry.tristimulus_weighting_factors_ASTME2022
    table: Floats = make(eye(observer), light_of(light), _range(step_nm))
    return table


def folded(weights: Floats, step_nm: int) -> Floats:
    """Return weights with the ends added to 400 and 700 nm, as ASTM E308 does."""
    adjust = colour.colorimetry.adjust_tristimulus_weighting_factors_ASTME308
    whole, short = _range(step_nm), colour.SpectralShape(400, 700, step_nm)
    table: Floats = adjust(weights, whole, short)
    return table


def lab_of(reflectance: Floats, weights: Floats) -> Floats:
    """Return spectra in CIELAB, for given weights."""
    white = weights.sum(axis=0)
    xy = colour.XYZ_to_xy(white)
    found: Floats = colour.XYZ_to_Lab(reflectance @ weights / white[1], xy)
    return found


def charts() -> dict[str, Floats]:
    """Return the spectra of its colour charts, 400 to 700 nm in steps of 10."""
    shape = colour.SpectralShape(400, 700, 10)
    names = ("ColorChecker N Ohta", "BabelColor Average", "PMC")
    return {
        name: np.array([
            each.copy().align(shape).values
            for each in colour.SDS_COLOURCHECKERS[name].values()
        ])
        for name in names
    }


def paints() -> Floats:
    """Return the measured spectra of Geldof et al. (2018), CC0, in fractions."""
    rows = GELDOF.read_text(encoding="utf-8").splitlines()[1:]
    return (
        np.array([[float(cell) for cell in row.split("\t")[1:]] for row in rows]) / 100
    )


def _range(step_nm: int) -> Spectral:
    return colour.SpectralShape(FIRST_NM, LAST_NM, step_nm)
