import numpy as np
import pytest

from shadewright.core.colour import (
    Light,
    Observer,
    lab_of_spectra,
    lab_of_xyz,
    weight_table,
    xyz_of_spectra,
)
from shadewright.errors import OutOfRangeError
from tests.core.colour.oracles import (
    charts,
    colour,
    eye,
    folded,
    lab_of,
    light_of,
    paints,
    weights_of,
)

SPECTRA = {**charts(), "paints of Geldof et al.": paints()}


@pytest.mark.parametrize("name", SPECTRA)
@pytest.mark.parametrize("light", Light)
@pytest.mark.parametrize("observer", Observer)
def test_spectra_to_lab_as_colour_science_has_it(
    name: str, light: Light, observer: Observer
) -> None:
    theirs = lab_of(SPECTRA[name], folded(weights_of(light, observer, 10), 10))
    table = weight_table(light=light, observer=observer)
    assert np.abs(lab_of_spectra(SPECTRA[name], weights=table) - theirs).max() < 0.01


def test_a_chart_comes_to_what_colour_science_makes_of_it_itself() -> None:
    """The whole way is theirs here, from the chart's own spectrum to Lab."""
    for spectrum in colour.SDS_COLOURCHECKERS["ColorChecker N Ohta"].values():
        xyz = colour.sd_to_XYZ(
            spectrum.copy().align(colour.SpectralShape(360, 780, 10)),
            eye(Observer.TEN_DEGREES),
            light_of(Light.D65),
        )
        bands = spectrum.copy().align(colour.SpectralShape(380, 780, 10)).values
        table = weight_table(first_nm=380, last_nm=780)
        assert np.allclose(xyz_of_spectra(bands, weights=table), xyz, atol=0.01)


def test_fine_and_coarse_steps_see_a_smooth_yarn_alike() -> None:
    at = np.arange(400.0, 701.0, 5.0)
    yarn = 0.1 + 0.6 / (1.0 + np.exp(-(at - 580.0) / 25.0))
    found = [
        lab_of_spectra(yarn[:: step // 5], weights=weight_table(step_nm=step))
        for step in (5, 10, 20)
    ]
    assert np.abs(found[0] - found[1]).max() < 0.01
    assert np.abs(found[0] - found[2]).max() < 0.1


def test_which_table_is_used_matters() -> None:
    """So its name is kept with the colour."""
    cut_off = lab_of(
        SPECTRA["PMC"], weights_of(Light.D65, Observer.TEN_DEGREES, 10)[4:35]
    )
    away = np.abs(lab_of_spectra(SPECTRA["PMC"], weights=weight_table()) - cut_off)
    assert 0.01 < away.max() < 1.0


def test_one_spectrum_and_a_pile_of_them_come_to_the_same() -> None:
    pile = SPECTRA["PMC"].reshape(2, 15, 31)
    table = weight_table()
    found = lab_of_spectra(pile, weights=table)
    assert found.shape == (2, 15, 3)
    xyz = xyz_of_spectra(pile[1, 3], weights=table)
    assert np.allclose(found[1, 3], lab_of_xyz(xyz.tolist(), white=table.white))


@pytest.mark.parametrize("share", [0.0, 0.001, 0.008, 0.01])
def test_the_darkest_darks_are_those_of_one_colour(share: float) -> None:
    table = weight_table()
    dark = share * SPECTRA["PMC"][4]
    xyz = xyz_of_spectra(dark, weights=table)
    found = lab_of_spectra(dark, weights=table)
    assert found == pytest.approx(lab_of_xyz(xyz.tolist(), white=table.white))


def test_a_spectrum_of_other_bands_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        xyz_of_spectra(np.ones(30), weights=weight_table())
    assert "must be 31 bands, 400 to 700 nm; got 30 bands." in str(refused.value)


@pytest.mark.parametrize(
    ("patch", "lab"),
    [
        ("dark skin", (36.786, 13.942, 14.582)),
        ("red", (40.248, 48.558, 24.333)),
        ("blue", (32.581, 13.346, -46.645)),
        ("cyan", (53.436, -30.217, -22.085)),
        ("white 9.5 (.05 D)", (95.454, -0.492, 1.019)),
    ],
)
def test_patches_as_another_program_noted_them(
    patch: str, lab: tuple[float, ...]
) -> None:
    """From colour-science 0.4.7, D65 and 10°; nobody prints them.

    Of bands of 5 nm it takes the CIE's curves at every fifth nanometre and no weights,
    which accounts for the second decimal.
    """
    chart = colour.SDS_COLOURCHECKERS["ColorChecker N Ohta"]
    bands = chart[patch].copy().align(colour.SpectralShape(380, 780, 5)).values
    table = weight_table(first_nm=380, last_nm=780, step_nm=5)
    assert lab_of_spectra(bands, weights=table) == pytest.approx(lab, abs=0.015)
