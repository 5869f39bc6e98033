"""Which dyes, and how much of each, give this colour on this yarn.

All sets of dyes are searched in proportion, the best go down again by the palette's
own curves, and what is left is ranked by what will really come out of the pot. A
target out of reach is no fault: the answer is the nearest there is, with how far off it
is and in which direction.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.differences.words import difference_words
from shadewright.core.mixing.asking import require_known
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Mix
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.core.recipes.amounts import amounts_of
from shadewright.core.recipes.curves import Curves, curves_of
from shadewright.core.recipes.polishing import Bench, one_dye_more, polished
from shadewright.core.recipes.ranking import (
    SAME_DE,
    SAME_EXPECTED,
    Doses,
    Recipe,
    ranked,
)
from shadewright.core.recipes.search.descending import Sought
from shadewright.core.recipes.search.problem import Dyes
from shadewright.core.recipes.search.sets import Rank, ranks_of
from shadewright.core.recipes.search.widening import Recipes, searched
from shadewright.core.recipes.targets import Target, aim_of
from shadewright.core.recipes.wishes import Wishes, most_of_each, require_wishes

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

ANCHOR_PERCENT = 0.5
"""Depth at which a dye's shape is taken for the search. [%]"""
USUAL_TOLERANCE = 1.0
MOST_RECIPES = 50
SPECK = 0.03
"""Share of a recipe that is no more than a speck. [1]"""
_FROM_SEARCH, _RANKED = 60, 40
_PLAIN = Wishes()


@dataclass(frozen=True, kw_only=True)
class Matches:
    """Recipes for a target, the best first, and how the nearest misses it.

    ``searched`` is how many sets of dyes were considered; ``nearest_de`` the least
    difference in daylight, and ``nearest_words`` how that recipe differs.
    """

    recipes: tuple[Recipe, ...]
    searched: int
    is_within_tolerance: bool
    nearest_de: float
    nearest_words: str


def matches(
    palette: Palette,
    *,
    base: str,
    target: Target,
    wishes: Wishes = _PLAIN,
    top: int = 10,
    tolerance: float = USUAL_TOLERANCE,
) -> Matches:
    """Return the recipes that give a colour on a yarn.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    target : Target
        What is wanted. [1]
    wishes : Wishes
        What the recipes may hold. [%]
    top : int
        How many at most, 1 to 50. [-]
    tolerance : float
        CIEDE2000 that still passes; above 0. [1]

    Returns
    -------
    Matches
        Distinct recipes, the best first; the one that lies nearest is always among
        them. [1]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a number is out of range.
    MissingError
        If no dye is left to search with.
    """
    require_known([Mix(base=base, doses=())], palette)
    require_wishes(wishes, palette)
    require_between(
        top,
        least=1,
        most=MOST_RECIPES,
        unit="",
        name="Recipes asked for",
        argument="top",
    )
    require_above_zero(
        tolerance, most=100.0, unit="", name="Tolerance", argument="tolerance"
    )
    dyes = tuple(d for d in palette.names.dyes if d not in wishes.unwanted)
    curves = curves_of(palette, base, dyes)
    ranks = ranks_of(
        len(dyes),
        most_dyes=wishes.most_dyes,
        wanted=tuple(dyes.index(dye) for dye in wishes.wanted),
    )
    bench = bench_of(palette, curves, dyes, target, wishes)
    near = one_dye_more(bench, _near(bench, ranks), most_dyes=wishes.most_dyes)
    doses = distinct(near, dyes)
    found = ranked(
        doses[: max(_RANKED, 2 * top)],
        palette=palette,
        base=base,
        curves=curves,
        dyes=dyes,
        target=target,
        wishes=wishes,
        tolerance=tolerance,
    )
    nearest = min(found, key=lambda each: each.de)
    return Matches(
        recipes=_with_nearest(_without_specks(found), doses[0], top),
        searched=sum(rank.count for rank in ranks),
        is_within_tolerance=nearest.de <= tolerance,
        nearest_de=nearest.de,
        nearest_words=difference_words(target.lab, nearest.lab),
    )


def bench_of(
    palette: Palette,
    curves: Curves,
    dyes: tuple[str, ...],
    target: Target,
    wishes: Wishes,
) -> Bench:
    """Return what recipes are polished with.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    curves : Curves
        Dyes on a base. [1]
    dyes : tuple of str
        Which, in the order of the curves. [-]
    target : Target
        What is wanted. [1]
    wishes : Wishes
        Limits. [%]

    Returns
    -------
    Bench
        Curves, aim and limits. [%]
    """
    import numpy as np

    return Bench(
        curves=curves,
        aim=aim_of(target, ground=curves.ground, surface=curves.surface),
        each=np.array([*most_of_each(wishes, palette, dyes), 0.0]),
        total=wishes.most_depth_percent,
        least=wishes.least_depth_percent,
        wanted=tuple(dyes.index(dye) for dye in wishes.wanted),
        ends_in_daylight=target.is_known_under_one,
    )


def _near(bench: Bench, ranks: tuple[Rank, ...]) -> Recipes:
    """Return the best recipes of the search, polished."""
    import numpy as np

    amounts = amounts_of(
        bench.curves, anchor_percent=ANCHOR_PERCENT, even_at_percent=bench.total / 3.0
    )
    sought = Sought(
        dyes=Dyes(unit=amounts.unit),
        aim=bench.aim,
        each=np.append(amounts.of_depths(bench.each[:-1]), 0.0),
        total=bench.total,
    )
    found = searched(sought, ranks, top=_FROM_SEARCH)
    depths = amounts.to_depths(found.sets, found.amounts)
    sets, depths = _with_wanted(bench, found.sets, depths)
    return polished(bench, sets, depths)


def _with_wanted(
    bench: Bench, sets: "Whole", depths: "Floats"
) -> "tuple[Whole, Floats]":
    """Return sets with the wanted dyes put in where they are missing."""
    import numpy as np

    none = bench.curves.count
    sets = np.where(depths > 0.0, sets, none)
    for dye in bench.wanted:
        for column in np.flatnonzero(~(sets == dye).any(0)):
            free = int(np.flatnonzero(sets[:, column] == none)[0])
            sets[free, column], depths[free, column] = dye, bench.least
    return sets, depths


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


def _with_nearest(
    found: tuple[Recipe, ...], nearest: Doses, top: int
) -> tuple[Recipe, ...]:
    """Return the first recipes; the nearest takes the last place if it is not there."""
    first = found[:top]
    near = next((each for each in found if each.doses == nearest), None)
    return first if near is None or near in first else (*first[:-1], near)


def _without_specks(found: tuple[Recipe, ...]) -> tuple[Recipe, ...]:
    """Return recipes without those that only add a speck to another as good."""
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
    is_near = one.de < other.de + SAME_DE
    return is_speck and is_near and one.expected_de < other.expected_de + SAME_EXPECTED
