"""Three trials that bracket a recipe: itself, and one to either side of it.

A recipe that is found is dyed once before it is believed. Three little skeins tell more
than one, if they lie along the line on which the palette is least sure: whichever side
the truth lies on, two of the three are to either side of it.

1. V is the covariance of the colour foretold, F the local metric: |F d| is the
   CIEDE2000 of a small step d (mixing, equation 2). Seen so, the covariance is F V F'.
2. Its longest axis, of length λ^½ and direction w, is where the palette is least sure.
3. The colours wanted to either side lie at ± s w, with s = max(λ^½, 1).
4. G holds how the colour follows the logarithm of each dose (equation 4). The log doses
   x that come nearest are those of least squares,

       (A'A + I) x = A' s w,   A = F G'                             (10)

   in which doubling a dose costs about as much as one CIEDE2000 does, so that two dyes
   that do the same are not set against each other.
5. The doses are c e^x and c e^−x: never below nothing.

Where the dyes of the recipe cannot follow the axis, x is stretched until the colours
foretold lie a CIEDE2000 from the recipe's own; but no dose is more than doubled or
halved, for beyond that the slopes say nothing.
"""

from dataclasses import dataclass
from itertools import starmap
from math import exp, log
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.mixing.asking import told_mixes
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.spreads import local_metric
from shadewright.core.mixing.swatches import Doses, Mix
from shadewright.core.recipes.colouring import slopes_by_log_dose
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.ranking import arrays_of
from shadewright.errors import MissingError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

LEAST_STEP_DE = 1.0
"""Nearer than this the trials could not be told from the recipe. [1] (our choice)"""
MOST_LOG_DOSE = log(2.0)
"""No dose is more than doubled or halved. [1] (our choice)"""


@dataclass(frozen=True, kw_only=True)
class Trial:
    """A trial: its doses in %, the colour foretold, CIEDE2000 to that of the recipe."""

    doses: Doses
    lab: Lab
    de: float


def bracketing_trials(
    palette: Palette, *, base: str, doses: Doses
) -> tuple[Trial, Trial, Trial]:
    """Return the recipe between two trials along the line that is least sure.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    doses : tuple of (str, float)
        The recipe; at least one dye. [%]

    Returns
    -------
    tuple of Trial
        The one side, the recipe itself, the other side. [%]

    Raises
    ------
    MissingError
        If the recipe has no dye.
    NotFoundError
        If the base or a dye is not in the palette.

    Notes
    -----
    The spread is the palette's own: errors of dosing are left out, since each trial
    has its own. The covariance is that of a new dye day, as the trials will be dyed.
    """
    if not doses:
        raise MissingError(
            name="A dye", advice="Bare yarn has nothing to try.", argument="doses"
        )
    way = way_to_either_side(palette, base=base, doses=doses)
    sides = [_moved(doses, [side * x for x in way]) for side in (-1.0, 0.0, 1.0)]
    mixes = [Mix(base=base, doses=each) for each in sides]
    labs = list(starmap(Lab, told_mixes(mixes, palette=palette).lab.tolist()))
    one, itself, other = (
        Trial(doses=each, lab=lab, de=ciede2000(labs[1], lab))
        for each, lab in zip(sides, labs, strict=True)
    )
    return one, itself, other


def way_to_either_side(
    palette: Palette, *, base: str, doses: Doses
) -> tuple[float, ...]:
    """Return by how much the logarithm of each dose changes to the one side.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    doses : tuple of (str, float)
        The recipe. [%]

    Returns
    -------
    tuple of float
        x of equation 10, stretched or held back. [1]
    """
    told = told_mixes([Mix(base=base, doses=doses)], palette=palette)
    metric = local_metric(told.lab)[0]
    axis = _least_sure(metric @ told.covariance[0] @ metric.T)
    follows = metric @ _slopes(palette, base, doses).T
    way = _least_squares(follows, axis)
    return tuple(_held(way, moved=follows @ way).tolist())


def _least_sure(spread: "Floats") -> "Floats":
    """Return s w: the longest axis of a covariance, at least a step long."""
    import numpy as np

    sizes, turned = np.linalg.eigh(spread)
    found: Floats = turned[:, -1] * max(float(sizes[-1]) ** 0.5, LEAST_STEP_DE)
    return found


def _slopes(palette: Palette, base: str, doses: Doses) -> "Floats":
    """Return G: how the colour follows the logarithm of each dose, (dyes, 3)."""
    dyes = tuple(dye for dye, _depth in doses)
    curves = curves_of(palette, base, dyes)
    found: Floats = slopes_by_log_dose(curves, *arrays_of([doses], dyes))[0]
    return found


def _least_squares(follows: "Floats", axis: "Floats") -> "Floats":
    """Solve equation 10."""
    import numpy as np

    normal = follows.T @ follows + np.eye(follows.shape[1])
    return np.array(np.linalg.solve(normal, follows.T @ axis), dtype=float)


def _held(way: "Floats", *, moved: "Floats") -> "Floats":
    """Return a way that is long enough to be seen, and no longer than slopes hold."""
    import numpy as np

    seen = float(np.linalg.norm(moved))
    longest = float(np.abs(way).max())
    if not seen or not longest:
        return way
    stretch = max(1.0, LEAST_STEP_DE / seen)
    return np.array(way * min(stretch, MOST_LOG_DOSE / longest), dtype=float)


def _moved(doses: Doses, way: list[float]) -> Doses:
    return tuple(
        (dye, depth * exp(x)) for (dye, depth), x in zip(doses, way, strict=True)
    )
