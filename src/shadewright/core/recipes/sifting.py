"""Of many recipes those that are worth showing: none twice, none with a mere speck."""

from shadewright.core.mixing.swatches import Doses
from shadewright.core.recipes.ranking import SAME_EXPECTED, Recipe
from shadewright.core.recipes.search.parts import Recipes

SPECK = 0.03
"""Share of a recipe that is no more than a speck. [1]"""
UNSEEN_DE = 0.1
"""CIEDE2000 that no eye sees and no dose holds: a speck for less is dust. [1]"""


def distinct(found: Recipes, dyes: tuple[str, ...]) -> list[Doses]:
    """Return recipes by name, each set of dyes once, in the order given.

    Parameters
    ----------
    found : Recipes
        Recipes, the nearest first. [%]
    dyes : tuple of str
        Dyes in order. [-]

    Returns
    -------
    list of tuple
        Doses, the greatest first. [%]
    """
    by_dyes: dict[frozenset[str], Doses] = {}
    for places, depths in zip(found.sets.T, found.amounts.T, strict=True):
        doses = sorted(
            (
                (dyes[place], float(depth))
                for place, depth in zip(places, depths, strict=True)
                if depth > 0.0
            ),
            key=lambda dose: (-dose[1], dose[0]),
        )
        by_dyes.setdefault(frozenset(dye for dye, _depth in doses), tuple(doses))
    return list(by_dyes.values())


def with_nearest(
    found: tuple[Recipe, ...], nearest: Doses, top: int
) -> tuple[Recipe, ...]:
    """Return the first recipes; the nearest takes the last place if it is not there.

    Parameters
    ----------
    found : tuple of Recipe
        Recipes in order. [%]
    nearest : tuple
        Doses of the one that lies nearest. [%]
    top : int
        How many at most. [-]

    Returns
    -------
    tuple of Recipe
        The first of them. [%]
    """
    first = found[:top]
    near = next((each for each in found if each.doses == nearest), None)
    return first if near is None or near in first else (*first[:-1], near)


def without_specks(found: tuple[Recipe, ...]) -> tuple[Recipe, ...]:
    """Return recipes without those that only add a speck to another as good.

    Parameters
    ----------
    found : tuple of Recipe
        Recipes in order. [%]

    Returns
    -------
    tuple of Recipe
        The others, in the same order. [%]
    """
    return tuple(
        each for each in found if not any(_is_speckless(one, each) for one in found)
    )


def _is_speckless(one: Recipe, other: Recipe) -> bool:
    """Return whether one is the other without a speck of dye, and no worse."""
    kept = {dye for dye, _depth in one.doses}
    dyes = {dye for dye, _depth in other.doses}
    if not kept or not kept < dyes:
        return False
    speck = sum(depth for dye, depth in other.doses if dye not in kept)
    is_speck = speck < SPECK * other.total_depth_percent
    is_near = one.de < other.de + UNSEEN_DE
    return is_speck and is_near and one.expected_de < other.expected_de + SAME_EXPECTED
