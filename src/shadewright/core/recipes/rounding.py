"""Doses that the studio's tools can measure, and the colour that those give.

Each dose goes up or down to a step of its tool. Not each to the nearest: a dye rounded
up may make good what another lost, so all ways are tried, and the one whose colour lies
nearest is taken.
"""

from collections.abc import Mapping
from itertools import product
from math import ceil, floor

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.asking import require_known
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Doses, Mix
from shadewright.core.quantities import require_above_zero
from shadewright.core.recipes.colouring import labs_of
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.ranking import Recipe, ranked
from shadewright.core.recipes.targets import Target
from shadewright.core.recipes.wishes import Wishes

_PLAIN = Wishes()


def step_percent(*, step_ml: float, strength_percent: float, fibre_g: float) -> float:
    """Return the step of a tool as a depth of shade.

    step = strength × volume / mass of yarn                          (6)

    Parameters
    ----------
    step_ml : float
        Smallest step that is read off the tool; above zero. [ml]
    strength_percent : float
        Strength of the stock, in g per 100 ml; above zero. [%]
    fibre_g : float
        Dry yarn; above zero. [g]

    Returns
    -------
    float
        The same on weight of fibre. [%]

    Notes
    -----
    Of dye weighed out dry the strength is 100 and the step that of the scale in grams.

    Examples
    --------
    >>> step_percent(step_ml=0.5, strength_percent=1.0, fibre_g=100.0)
    0.005
    """
    return strength_percent * step_ml / fibre_g


def as_written(depth_percent: float) -> float:
    """Return a depth in three figures, as anybody would write it down.

    Parameters
    ----------
    depth_percent : float
        A depth as it was reckoned. [%]

    Returns
    -------
    float
        The same to within half of its third figure. [%]

    Notes
    -----
    Three figures are finer than any dose is measured (common practice).

    Examples
    --------
    >>> as_written(0.123456), as_written(12.3456)
    (0.123, 12.3)
    """
    return float(f"{depth_percent:.3g}")


def rounded(
    palette: Palette,
    *,
    base: str,
    doses: Doses,
    steps_percent: Mapping[str, float],
    target: Target,
    wishes: Wishes = _PLAIN,
    tolerance: float = 1.0,
) -> Recipe:
    """Return a recipe in steps of the studio's tools.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    doses : tuple of (str, float)
        The recipe. [%]
    steps_percent : mapping of str to float
        The step of each dye; a dye that is missing stays as it is. [%]
    target : Target
        What is wanted. [1]
    wishes : Wishes
        Errors of dosing and prices. [-]
    tolerance : float
        CIEDE2000 that still passes. [1]

    Returns
    -------
    Recipe
        The way of rounding whose colour lies nearest to the target. [1]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a step is not above zero.
    """
    import numpy as np

    require_known([Mix(base=base, doses=doses)], palette)
    for dye, step in steps_percent.items():
        require_above_zero(step, most=100.0, unit="%", name=f"Step of {dye}")
    dyes = tuple(dye for dye, _depth in doses)
    curves = curves_of(palette, base, dyes)
    ways = np.array(
        list(product(*(_either(depth, steps_percent.get(dye)) for dye, depth in doses)))
    )
    away = ciede2000_arrays(np.array(target.lab), labs_of(curves, ways))
    best = ways[int(np.argmin(away))].tolist()
    (found,) = ranked(
        [tuple((dye, depth) for dye, depth in zip(dyes, best, strict=True) if depth)],
        palette=palette,
        base=base,
        curves=curves,
        dyes=dyes,
        target=target,
        wishes=wishes,
        tolerance=tolerance,
    )
    return found


def _either(depth: float, step: float | None) -> tuple[float, ...]:
    """Return the steps below and above a depth."""
    if step is None:
        return (depth,)
    below, above = floor(depth / step), ceil(depth / step)
    return tuple(dict.fromkeys((below * step, above * step)))
