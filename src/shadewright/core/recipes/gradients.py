"""A row of skeins whose steps look equal, not one whose grams are.

From pale to deep, the first tenth of a gram changes a skein more than the last gram.
Steps that look equal are laid along the colours that the palette foretells: each is as
far from the next as that from the one after, in CIEDE2000. A row runs from bare yarn
to one mix, or from one mix to another by shares of both, as if two stocks were poured
together.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.asking import require_known
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Doses, Mix
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.core.recipes.colouring import labs_of
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.wishes import HIGHEST_DEPTH_PERCENT, LEAST_DEPTH_PERCENT
from shadewright.errors import OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

MOST_STEPS = 60
_POINTS, _HALVINGS, _LEAST_SHARE = 1500, 26, 1e-4


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

    require_between(palest_share, least=0.0, most=0.99, unit="", name="Palest share")
    require_above_zero(
        _depth(doses),
        most=HIGHEST_DEPTH_PERCENT,
        unit="%",
        name="Depth of the deepest",
        argument="doses",
    )
    shares = np.geomspace(max(palest_share, _LEAST_SHARE), 1.0, _POINTS)
    shares = shares if palest_share else np.concatenate([[0.0], shares])
    return _laid(palette, base, (), doses, shares, count)


def gradient_between(
    palette: Palette, *, base: str, first: Doses, last: Doses, count: int
) -> tuple[Shade, ...]:
    """Return mixes that lead from one to another in steps that look equal.

    c(t) = (1 − t) c_first + t c_last,  0 ≤ t ≤ 1                    (9)

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    first : tuple of (str, float)
        One end. [%]
    last : tuple of (str, float)
        The other end; no dye at all is bare yarn at either end. [%]
    count : int
        How many, both ends among them; 2 to 60. [-]

    Returns
    -------
    tuple of Shade
        Each a share of both ends, from the first to the last. [%]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a number is out of range, or both ends are the same mix.

    Notes
    -----
    The steps are those of equation 7. The way is a straight line in doses and not in
    colour, so that two stocks made once, one of each end, give every skein between
    them; where the two ends face each other across grey it leads by way of it.
    """
    import numpy as np

    for doses, argument in ((first, "first"), (last, "last")):
        require_between(
            _depth(doses),
            least=0.0,
            most=HIGHEST_DEPTH_PERCENT,
            unit="%",
            name=f"Depth of the {argument} mix",
            argument=argument,
        )
    if _are_same(dict(first), dict(last)):
        raise OutOfRangeError(
            name="The last mix",
            given="the same again",
            allowed="another than the first",
            argument="last",
        )
    near = np.geomspace(_LEAST_SHARE, 0.5, _POINTS // 2)
    shares = np.concatenate([[0.0], near, 1.0 - near[-2::-1], [1.0]])
    return _laid(palette, base, first, last, shares, count)


def _depth(doses: Doses) -> float:
    return sum(depth for _dye, depth in doses)


def _are_same(first: dict[str, float], last: dict[str, float]) -> bool:
    """Whether two mixes differ by less than anybody could weigh."""
    return all(
        abs(first.get(dye, 0.0) - last.get(dye, 0.0)) < LEAST_DEPTH_PERCENT
        for dye in {*first, *last}
    )


def _laid(
    palette: Palette,
    base: str,
    first: Doses,
    last: Doses,
    shares: "Floats",
    count: int,
) -> tuple[Shade, ...]:
    """Return mixes at equal steps along shares of two ends (equations 7 and 9)."""
    import numpy as np

    require_known([Mix(base=base, doses=(*first, *last))], palette)
    require_between(count, least=2, most=MOST_STEPS, unit="", name="Count")
    dyes = tuple(dict.fromkeys(dye for dye, _depth in (*first, *last)))
    ends = np.array([
        [dict(end).get(dye, 0.0) for dye in dyes] for end in (first, last)
    ])
    curves = curves_of(palette, base, dyes)

    def mixed(shares: "Floats") -> "Floats":
        found: Floats = np.stack([1.0 - shares, shares], axis=1) @ ends
        return found

    places = _even_places(labs_of(curves, mixed(shares)), count)
    depths = mixed(np.interp(places, np.arange(len(shares)), shares))
    return tuple(
        Shade(
            doses=tuple(
                (dye, depth) for dye, depth in zip(dyes, row, strict=True) if depth
            ),
            lab=Lab(*lab),
        )
        for row, lab in zip(
            depths.tolist(), labs_of(curves, depths).tolist(), strict=True
        )
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
