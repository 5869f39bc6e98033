"""From the search in proportion to the palette's own curves.

The search knows each dye by one shape. Its best sets go down once more, now with the
curves, so that a recipe's colour is what the palette foretells for its doses. Where
only daylight is known, a last descent leaves steadiness aside and meets the colour.
"""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from shadewright.core.recipes.curves import Curves
from shadewright.core.recipes.search.descending import Patience, descended
from shadewright.core.recipes.search.evaluating import slope_by_ks
from shadewright.core.recipes.search.parts import Recipes
from shadewright.core.recipes.search.problem import Aim
from shadewright.core.recipes.search.stepping import Box, kept_within
from shadewright.core.recipes.targets import in_daylight

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

_WIDENED, _TRIED, _DROP = 10, 30, 0.1
_FINE = Patience(steps=25, gain=1e-8, enough=1e-12)


@dataclass(frozen=True, kw_only=True, eq=False)
class Bench:
    """What is polished with: curves, aim, and the limits in true depths.

    ``each`` (n + 1,) is the most of each dye, ``wanted`` the places of those that must
    be there, with at least ``least``; ``in_daylight`` says to end in daylight alone.
    """

    curves: Curves
    aim: Aim
    each: "Floats"
    total: float
    least: float
    wanted: tuple[int, ...]
    ends_in_daylight: bool


def polished(bench: Bench, sets: "Whole", depths: "Floats") -> Recipes:
    """Return recipes brought to their bottom by the palette's curves.

    Parameters
    ----------
    bench : Bench
        Curves, aim and limits. [%]
    sets : ndarray, shape (4, sets)
        Places of dyes; n for none. [-]
    depths : ndarray, shape (4, sets)
        Depths to begin with. [%]

    Returns
    -------
    Recipes
        The nearest first. A dose too small to be measured is left out, and the others
        make up for it. [%]
    """
    import numpy as np

    is_wanted = np.isin(sets, bench.wanted)
    box = Box(
        least=np.where(is_wanted, bench.least, 0.0),
        most=np.maximum(bench.each[sets], np.where(is_wanted, bench.least, 0.0)),
        total=bench.total,
    )
    found, values = _down(bench, sets, kept_within(depths, box), box)
    is_speck = (found < bench.least) & ~is_wanted
    again = np.flatnonzero(((found > 0.0) & is_speck).any(0))
    if len(again):
        speck = is_speck[:, again]
        some = replace(box.some(again), most=np.where(speck, 0.0, box.most[:, again]))
        less = np.where(speck, 0.0, found[:, again])
        found[:, again], values[again] = _down(bench, sets[:, again], less, some)
    order = np.argsort(values, kind="stable")
    return Recipes(sets=sets[:, order], amounts=found[:, order], values=values[order])


def one_dye_more(bench: Bench, found: Recipes, *, most_dyes: int) -> Recipes:
    """Return the recipes, and the best of them with one more dye where that helps.

    The search judged by amounts in proportion, and by slopes. By the true curves a dye
    that it left out may help after all. Those are tried of which v of the search's
    equation 6 promises most, and not from nothing: past a small hill there may be a
    valley.

    Parameters
    ----------
    bench : Bench
        Curves, aim and limits. [%]
    found : Recipes
        Polished recipes, the nearest first. [%]
    most_dyes : int
        Dyes in a recipe. [-]

    Returns
    -------
    Recipes
        The nearest first. [%]
    """
    import numpy as np

    few = np.flatnonzero((found.amounts > 0.0).sum(0) < most_dyes)[:_WIDENED]
    if not len(few):
        return found
    none = bench.curves.count
    used = np.where(found.amounts[:, few] > 0.0, found.sets[:, few], none)
    aim = in_daylight(bench.aim) if bench.ends_in_daylight else bench.aim
    added = bench.curves.of(used).added(found.amounts[:, few])[0]
    slopes = bench.curves.first_drop() @ slope_by_ks(aim, added)
    for row in used:
        slopes[row[row < none], np.flatnonzero(row < none)] = np.inf
    dye, column = np.nonzero(np.isfinite(slopes))
    best = np.argsort(slopes[dye, column], kind="stable")[:_TRIED]
    dye, column = dye[best], column[best]
    sets, depths = used[:, column], found.amounts[:, few[column]]
    free = np.argmax(sets == none, axis=0)
    sets[free, np.arange(len(dye))] = dye
    depths[free, np.arange(len(dye))] = _DROP * depths.sum(0)
    more = polished(bench, sets, depths)
    return _merged(found, more)


def _merged(found: Recipes, more: Recipes) -> Recipes:
    import numpy as np

    values = np.concatenate([found.values, more.values])
    order = np.argsort(values, kind="stable")
    return Recipes(
        sets=np.concatenate([found.sets, more.sets], 1)[:, order],
        amounts=np.concatenate([found.amounts, more.amounts], 1)[:, order],
        values=values[order],
    )


def _down(
    bench: Bench, sets: "Whole", start: "Floats", box: Box
) -> "tuple[Floats, Floats]":
    mixed = bench.curves.of(sets)
    depths, values = descended(bench.aim, mixed, start, box, _FINE)
    if bench.ends_in_daylight:
        day = in_daylight(bench.aim)
        depths, values = descended(day, mixed, depths, box, _FINE)
    return depths, values
