"""The curves of dyes against the palette that they come from."""

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.model.kubelka_munk import reflectance_of_ks, with_surface
from shadewright.core.recipes.amounts import amounts_of
from shadewright.core.recipes.colouring import labs_of, reflectances_of
from shadewright.core.recipes.curves import curves_of
from tests.core.mixing.worlds import LAWS
from tests.core.recipes.palettes import named, palette


@pytest.mark.parametrize("law", LAWS)
def test_a_mix_reflects_what_the_palette_foretells(law: str) -> None:
    known = palette(law)
    draws = np.random.default_rng(1)
    depths = np.exp(draws.uniform(np.log(0.006), np.log(6.0), (30, 7)))
    depths *= draws.random((30, 7)) < 0.5
    curves = curves_of(known, "wool", known.names.dyes)
    mixes = [Mix(base="wool", doses=named(row)) for row in depths]
    told = told_mixes(mixes, palette=known).reflectance
    np.testing.assert_allclose(reflectances_of(curves, depths), told, atol=2e-6)


def test_slopes_are_those_of_small_steps() -> None:
    known = palette()
    curves = curves_of(known, "wool", known.names.dyes)
    sets = np.arange(7)[:, None] * np.ones((1, 5), dtype=int)
    depths = np.exp(np.random.default_rng(2).uniform(-5, 1.5, sets.shape))
    mixed = curves.of(sets)
    more, less = (mixed.alone(depths * part)[0] for part in (1 + 1e-6, 1 - 1e-6))
    change = (more - less) / (2e-6 * depths[:, None])
    np.testing.assert_allclose(mixed.alone(depths)[1], change, rtol=1e-5)


def test_no_dye_adds_nothing() -> None:
    known = palette()
    curves = curves_of(known, "wool", known.names.dyes)
    added, slopes = curves.of(np.array([[7]])).added(np.array([[0.4]]))
    assert not added.any()
    assert not slopes.any()


def test_amounts_lead_back_to_depths() -> None:
    known = palette("power")
    curves = curves_of(known, "wool", known.names.dyes)
    amounts = amounts_of(curves, anchor_percent=0.5, even_at_percent=2.0)
    depths = np.linspace(0.01, 5.0, 7)
    there = amounts.of_depths(depths)
    back = amounts.to_depths(np.arange(7)[:, None], there[:, None])
    np.testing.assert_allclose(back[:, 0], depths, rtol=1e-3)
    np.testing.assert_allclose(amounts.of_depths(np.full(7, 2.0)), 2.0, rtol=1e-6)


def test_in_proportion_a_mix_is_nearly_what_the_palette_foretells() -> None:
    known = palette()
    curves = curves_of(known, "wool", known.names.dyes)
    amounts = amounts_of(curves, anchor_percent=0.5, even_at_percent=2.0)
    depths = np.exp(np.random.default_rng(3).uniform(-3.5, 1.0, (20, 7)))
    ks = np.array([amounts.of_depths(row) for row in depths]) @ amounts.unit
    plain = with_surface(reflectance_of_ks(ks + curves.ground), surface=curves.surface)
    apart = ciede2000_arrays(lab_under(plain, light=Light.D65), labs_of(curves, depths))
    assert apart.max() < 0.5
