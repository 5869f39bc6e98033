"""Recipes for a colour, from a palette."""

import numpy as np
import pytest

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.recipes import (
    Wishes,
    matches,
    matching,
    target_of_labs,
    target_of_spectrum,
)
from shadewright.core.recipes.colouring import labs_of
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.matching import Matches
from shadewright.errors import MissingError, NotFoundError, OutOfRangeError
from tests.core.recipes.palettes import palette

MIXES = (
    (("d00", 0.3), ("d02", 0.5), ("d05", 0.1)),
    (("d01", 1.2), ("d03", 0.08)),
    (("d04", 0.06), ("d06", 0.02), ("d01", 0.03)),
)


def spectrum(doses: tuple[tuple[str, float], ...]) -> tuple[float, ...]:
    mix = Mix(base="wool", doses=doses)
    return tuple(told_mixes([mix], palette=palette()).reflectance[0].tolist())


def by_spectrum(doses: tuple[tuple[str, float], ...], top: int = 10) -> Matches:
    target = target_of_spectrum(spectrum(doses))
    return matches(palette(), base="wool", target=target, top=top)


def by_lab(lab: tuple[float, float, float], **wishes: object) -> Matches:
    return matches(
        palette(),
        base="wool",
        target=target_of_labs({Light.D65: Lab(*lab)}),
        wishes=Wishes(**wishes),  # type: ignore[arg-type]
    )


@pytest.mark.parametrize("doses", MIXES)
def test_a_recipes_own_colour_leads_back_to_it(
    doses: tuple[tuple[str, float], ...],
) -> None:
    found = by_spectrum(doses, top=20)
    nearest = min(found.recipes, key=lambda each: each.de)
    assert nearest.de < 0.01
    same = [dict(r.doses) for r in found.recipes if {*dict(r.doses)} == {*dict(doses)}]
    assert same
    assert same[0] == pytest.approx(dict(doses), rel=0.05)


@pytest.mark.parametrize("doses", MIXES)
def test_what_is_stated_is_what_the_palette_foretells(
    doses: tuple[tuple[str, float], ...],
) -> None:
    target = target_of_spectrum(spectrum(doses))
    for recipe in by_spectrum(doses).recipes:
        mix = Mix(base="wool", doses=recipe.doses)
        told = told_mixes([mix], palette=palette())
        lab = Lab(*told.lab[0].tolist())
        assert recipe.de == pytest.approx(ciede2000(target.lab, lab), abs=1e-9)
        assert recipe.expected_de >= 0.5 * float(told.expected[0])


def test_a_spectrums_recipes_stand_by_what_is_to_be_expected() -> None:
    found = by_spectrum(MIXES[0])
    expected = [each.expected_de for each in found.recipes[:-1]]
    assert expected == sorted(expected)
    sets = [frozenset(dict(each.doses)) for each in found.recipes]
    assert len(sets) == len(set(sets)) == 10
    assert found.searched == 98
    chances = [each.chance for each in found.recipes]
    assert all(0.0 <= chance <= 1.0 for chance in chances)
    assert all(each.metamerism is not None for each in found.recipes)


def test_of_one_lab_the_nearest_comes_first() -> None:
    found = by_lab((45, 10, 10))
    assert found.recipes[0].de <= min(each.de for each in found.recipes) + 1e-3
    assert found.recipes[0].metamerism is None
    assert found.is_within_tolerance


def test_no_recipe_is_another_with_dust_in_it() -> None:
    aim = told_mixes(
        [Mix(base="wool", doses=(("d01", 0.4), ("d03", 0.35)))], palette=palette()
    )
    light, a, b = aim.lab[0].tolist()
    found = by_lab((light, a + 0.05, b)).recipes
    (plain,) = [each for each in found if {*dict(each.doses)} == {"d01", "d03"}]
    assert 0.01 < plain.de < 0.1
    more = [each for each in found if {*dict(each.doses)} > {"d01", "d03"}]
    for each in more:
        dust = sum(depth for dye, depth in each.doses if dye not in {"d01", "d03"})
        assert dust > 0.03 * each.total_depth_percent


def test_fewer_dyes_and_a_lower_limit_are_never_better() -> None:
    lab = (20.0, 30.0, -50.0)
    free = by_lab(lab).nearest_de
    assert free <= by_lab(lab, most_dyes=2).nearest_de + 1e-6
    assert free <= by_lab(lab, most_depth_percent=1.0).nearest_de + 1e-6
    assert free <= by_lab(lab, unwanted=("d01", "d03")).nearest_de + 1e-6


def test_limits_are_kept() -> None:
    found = by_lab((10, 5, 5), most_depth_percent=2.0, most_by_dye={"d00": 0.1})
    for recipe in found.recipes:
        assert recipe.total_depth_percent <= 2.0 + 1e-6
        assert dict(recipe.doses).get("d00", 0.0) <= 0.1 + 1e-6
        assert all(depth >= 0.001 for _dye, depth in recipe.doses)


def test_wanted_dyes_are_in_every_recipe_and_unwanted_in_none() -> None:
    found = by_lab((50, 20, 10), wanted=("d02", "d06"), unwanted=("d00",))
    for recipe in found.recipes:
        dyes = {*dict(recipe.doses)}
        assert dyes >= {"d02", "d06"}
        assert "d00" not in dyes
        assert len(dyes) <= 4


def test_out_of_reach_says_how_far_and_which_way() -> None:
    found = by_lab((60, 90, -90))
    assert not found.is_within_tolerance
    assert found.nearest_de > 5
    assert "duller" in found.nearest_words
    assert found.recipes[0].de == pytest.approx(found.nearest_de, abs=1e-3)


def test_bare_yarn_asks_for_no_dye() -> None:
    told = told_mixes([Mix(base="wool", doses=())], palette=palette())
    found = by_lab(tuple(told.lab[0].tolist()))
    assert found.recipes[0].doses == ()
    assert found.recipes[0].de < 1e-6


def test_worse_dosing_is_worse_to_expect() -> None:
    fine = by_lab((45, 10, 10), dose_error=0.0).recipes[0]
    rough = by_lab((45, 10, 10), dose_error=0.1).recipes[0]
    assert rough.expected_de > fine.expected_de
    assert rough.chance < fine.chance


def test_the_cost_is_that_of_a_kilogram() -> None:
    """By hand: 1 % on a kilogram is 10 g."""
    prices = {f"d{place:02d}": 0.5 for place in range(7)}
    recipe = by_lab((45, 10, 10), prices=prices).recipes[0]
    assert recipe.cost_per_kg == pytest.approx(recipe.total_depth_percent * 10 * 0.5)
    assert by_lab((45, 10, 10)).recipes[0].cost_per_kg is None


def test_the_answer_is_the_same_to_the_last_bit() -> None:
    assert by_lab((45, 10, 10)) == by_lab((45, 10, 10))


@pytest.mark.parametrize(
    ("wishes", "error", "says"),
    [
        ({"wanted": ("Kelp",)}, NotFoundError, "no dye in this palette “Kelp”"),
        ({"most_dyes": 5}, OutOfRangeError, "Most dyes in a recipe"),
        ({"most_depth_percent": 0.0}, OutOfRangeError, "Most depth of all dyes"),
        ({"wanted": ("d00",), "unwanted": ("d00",)}, OutOfRangeError, "Dyes wanted"),
        ({"unwanted": tuple(f"d{n:02d}" for n in range(7))}, MissingError, "A dye"),
    ],
)
def test_wishes_that_cannot_be_are_told(
    wishes: dict[str, object], error: type[Exception], says: str
) -> None:
    with pytest.raises(error, match=says):
        by_lab((50, 0, 0), **wishes)


def test_random_mixes_are_not_nearer() -> None:
    """Of 3 000 random mixes none is nearer, in reach or out of it."""
    draws = np.random.default_rng(4)
    depths = np.exp(draws.uniform(-4, 0.4, (3000, 7)))
    depths *= draws.random(depths.shape).argsort(1).argsort(1) < 4
    known = palette()
    labs = labs_of(curves_of(known, "wool", known.names.dyes), depths)
    for wanted in ((45.0, 10.0, 10.0), (20.0, 60.0, 30.0), (70.0, -60.0, 40.0)):
        scan = float(ciede2000_arrays(np.array(wanted), labs).min())
        assert by_lab(wanted).nearest_de <= scan + 1e-3


def test_a_search_can_be_left_and_ends_as_the_whole_one() -> None:
    """Its shares rise, only the last step holds recipes, and they are the same."""
    target = target_of_spectrum(spectrum(MIXES[0]))
    steps = list(matching(palette(), base="wool", target=target))
    shares = [step.share for step in steps]
    assert shares == sorted(shares)
    assert [step.found is None for step in steps] == [True] * (len(steps) - 1) + [False]
    assert steps[-1].found == matches(palette(), base="wool", target=target)


def test_nine_pots_in_ten_lie_between_what_one_and_nine_stay_under() -> None:
    """The tenths lie around the expected difference, and the chance agrees."""
    best = by_spectrum(MIXES[0]).recipes[0]
    assert 0.0 < best.within_10 < best.expected_de < best.within_90
    target = target_of_spectrum(spectrum(MIXES[0]))
    again = matches(
        palette(), base="wool", target=target, tolerance=best.within_90 + 1e-9
    )
    same = next(each for each in again.recipes if each.doses == best.doses)
    assert same.chance == pytest.approx(0.9, abs=0.002)
