"""Which dyes, and how much of each, give this colour on this yarn.

All sets of dyes are searched in proportion, the best go down again by the palette's
own curves, and what is left is ranked by what will really come out of the pot. A
target out of reach is no fault: the answer is the nearest there is, with how far off it
is and in which direction.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.differences.words import difference_words
from shadewright.core.mixing.asking import require_known
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Mix
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.core.recipes.amounts import Amounts, amounts_of
from shadewright.core.recipes.curves import Curves, curves_of
from shadewright.core.recipes.polishing import Bench, one_dye_more, polished
from shadewright.core.recipes.ranking import Recipe, ranked
from shadewright.core.recipes.search.descending import Sought
from shadewright.core.recipes.search.parts import Recipes
from shadewright.core.recipes.search.problem import Dyes
from shadewright.core.recipes.search.sets import ranks_of
from shadewright.core.recipes.search.widening import best_of, widening
from shadewright.core.recipes.sifting import distinct, with_nearest, without_specks
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
_FROM_SEARCH, _RANKED = 60, 40
_SEARCHED, _POLISHED = 0.6, 0.8
"""About how far a search is when all sets are looked at, and polished. [1]"""
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


@dataclass(frozen=True, kw_only=True)
class Step:
    """How far a search is, as a share; at its end with what was found."""

    share: float
    found: Matches | None = None


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
    steps = matching(
        palette, base=base, target=target, wishes=wishes, top=top, tolerance=tolerance
    )
    return next(step.found for step in steps if step.found is not None)


def matching(
    palette: Palette,
    *,
    base: str,
    target: Target,
    wishes: Wishes = _PLAIN,
    top: int = 10,
    tolerance: float = USUAL_TOLERANCE,
) -> Iterator[Step]:
    """Search step by step for the recipes that give a colour.

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

    Yields
    ------
    Step
        How far it is; the last one holds what :func:`matches` returns. Who asks no
        further stops the search. [1]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a number is out of range.
    MissingError
        If no dye is left to search with.
    """
    _require_asked(palette, base, wishes, top, tolerance)
    dyes = tuple(d for d in palette.names.dyes if d not in wishes.unwanted)
    curves = curves_of(palette, base, dyes)
    bench = bench_of(palette, curves, dyes, target, wishes)
    ranks = ranks_of(len(dyes), most_dyes=wishes.most_dyes, wanted=bench.wanted)
    amounts = amounts_of(
        curves, anchor_percent=ANCHOR_PERCENT, even_at_percent=bench.total / 3.0
    )
    sought = _sought_on(bench, amounts)
    for far in widening(sought, ranks, top=_FROM_SEARCH):
        yield Step(share=_SEARCHED * far.share)
    near = _near(bench, amounts, best_of(sought, far, top=_FROM_SEARCH))
    near = one_dye_more(bench, near, most_dyes=wishes.most_dyes)
    yield Step(share=_POLISHED)
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
    answer = Matches(
        recipes=with_nearest(without_specks(found), doses[0], top),
        searched=sum(rank.count for rank in ranks),
        is_within_tolerance=nearest.de <= tolerance,
        nearest_de=nearest.de,
        nearest_words=difference_words(target.lab, nearest.lab),
    )
    yield Step(share=1.0, found=answer)


def _require_asked(
    palette: Palette, base: str, wishes: Wishes, top: int, tolerance: float
) -> None:
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


def _sought_on(bench: Bench, amounts: Amounts) -> Sought:
    """Return the same in proportion, as the search takes it."""
    import numpy as np

    return Sought(
        dyes=Dyes(unit=amounts.unit),
        aim=bench.aim,
        each=np.append(amounts.of_depths(bench.each[:-1]), 0.0),
        total=bench.total,
    )


def _near(bench: Bench, amounts: Amounts, found: Recipes) -> Recipes:
    """Return the recipes of the search, polished by the palette's own curves."""
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
