"""A row of depths whose steps look equal, not one whose grams are.

From pale to deep, the first tenth of a gram changes a skein more than the last gram.
Steps that look equal are laid along the colours that the palette foretells: each is as
far from the next as that from the one after, in CIEDE2000.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.asking import require_known
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Mix
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.core.recipes.colouring import labs_of
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.ranking import Doses
from shadewright.core.recipes.wishes import HIGHEST_DEPTH_PERCENT

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

MOST_STEPS = 60
_POINTS, _HALVINGS, _PALEST_SHARE = 1500, 40, 1e-4


@dataclass(frozen=True, kw_only=True)
class Shade:
    """One skein of a gradient: its doses in %, and the colour foretold."""

    doses: Doses
    lab: Lab


def gradient(
    palette: Palette,
    *,
    base: str,
    doses: Doses,
    count: int,
    palest_share: float = 0.0,
) -> tuple[Shade, ...]:
    """Return depths of a recipe in steps that look equal, the palest first.

    ΔE(1, 2) = ΔE(2, 3) = … = ΔE(n − 1, n)                           (7)

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    doses : tuple of (str, float)
        The deepest of the row. [%]
    count : int
        How many, both ends among them; 2 to 60. [-]
    palest_share : float
        The palest as a share of the deepest; 0 for bare yarn, below 1. [1]

    Returns
    -------
    tuple of Shade
        All of the same proportions of dyes. [%]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a number is out of range.

    Notes
    -----
    The size of the step is found by halving: too small a step stops short of the
    deepest, too large a step passes it.
    """
    import numpy as np

    require_known([Mix(base=base, doses=doses)], palette)
    require_between(count, least=2, most=MOST_STEPS, unit="", name="Count")
    require_between(palest_share, least=0.0, most=0.99, unit="", name="Palest share")
    require_above_zero(
        sum(depth for _dye, depth in doses),
        most=HIGHEST_DEPTH_PERCENT,
        unit="%",
        name="Depth of the deepest",
        argument="doses",
    )
    shares = np.geomspace(max(palest_share, _PALEST_SHARE), 1.0, _POINTS)
    shares = shares if palest_share else np.concatenate([[0.0], shares])
    curves = curves_of(palette, base, tuple(dye for dye, _depth in doses))
    deepest = np.array([depth for _dye, depth in doses])
    labs = labs_of(curves, shares[:, None] * deepest)
    places = _even_places(labs, count)
    chosen = np.interp(places, np.arange(len(shares)), shares)
    seen = labs_of(curves, chosen[:, None] * deepest)
    return tuple(
        Shade(
            doses=tuple((dye, float(share * depth)) for dye, depth in doses if share),
            lab=Lab(*lab.tolist()),
        )
        for share, lab in zip(chosen, seen, strict=True)
    )


def _even_places(labs: "Floats", count: int) -> "Floats":
    """Return where along a row of colours equal steps end, in places with parts."""
    import numpy as np

    low, high = 0.0, float(ciede2000_arrays(labs[:-1], labs[1:]).sum())
    for _halving in range(_HALVINGS):
        middle = 0.5 * (low + high)
        ends = _walked(labs, count, middle)[-1]
        low, high = (middle, high) if ends < len(labs) - 1 else (low, middle)
    places = _walked(labs, count, low)
    places[-1] = len(labs) - 1.0
    return np.array(places)


def _walked(labs: "Floats", count: int, step: float) -> list[float]:
    """Return the places reached by steps of one size."""
    import numpy as np

    places = [0.0]
    for _step in range(count - 1):
        here = places[-1]
        at = int(here)
        part = here - at
        lab = labs[at] + part * (labs[min(at + 1, len(labs) - 1)] - labs[at])
        away = ciede2000_arrays(lab, labs[at + 1 :])
        beyond = np.flatnonzero(away >= step)
        if not len(beyond):
            places.append(len(labs) - 1.0)
            continue
        first = int(beyond[0])
        before = float(away[first - 1]) if first else 0.0
        from_place = at + first if first else here
        width = at + 1 + first - from_place
        places.append(
            from_place + width * (step - before) / (float(away[first]) - before)
        )
    return places
