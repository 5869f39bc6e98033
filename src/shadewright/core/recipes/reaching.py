"""Which colours a palette can give on a yarn, lightness by lightness.

Three dyes in one proportion give a row of colours from pale to deep, and one of them is
as light as is asked for. Every proportion of the three paints a curved triangle in a*
and b*; the triangles of all sets of three together are the reach. A proportion that is
still too pale at the most that may be dyed gives nothing.

Each triangle is reckoned at 28 proportions, closer where little of a dye tells most,
and filled between them in straight lines. The plane is laid out in cells of one unit,
so no shape is taken for granted: a reach may bend inwards, have a hole, or be a thread
where there are two dyes only.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.mixing.palette import Palette
from shadewright.core.quantities import require_between
from shadewright.core.recipes.lightness import MOST_TOGETHER, Dyeable, dyeable
from shadewright.core.recipes.outlines import CELL, HALF_WIDTH, Outline, outlines_of
from shadewright.core.recipes.proportions import proportions
from shadewright.core.recipes.wishes import Wishes

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Bools = NDArray[np.bool_]

LIGHTNESSES = (70.0, 50.0, 30.0)
"""Light, mid and dark. [1]"""
_LEAN = 2
"""Power of the steps: small shares are laid closer, for there colours change most."""
_PLAIN = Wishes(most_dyes=MOST_TOGETHER)


@dataclass(frozen=True, kw_only=True)
class Reach:
    """What a palette can give at one lightness: outlines in a*, b*.

    A hole is an outline too; without an outline nothing is that light.
    """

    lightness: float
    outlines: tuple[Outline, ...]


def reaches(
    palette: Palette,
    *,
    base: str,
    lightnesses: Sequence[float] = LIGHTNESSES,
    wishes: Wishes = _PLAIN,
) -> tuple[Reach, ...]:
    """Return what a palette can give on a yarn.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    lightnesses : sequence of float
        L* to ask for; 5 to 95. [1]
    wishes : Wishes
        How deep, and which dyes; up to three in a mix. [%]

    Returns
    -------
    tuple of Reach
        One for each lightness, true to about one unit. [1]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a number is out of range.
    MissingError
        If no dye is left.
    """
    for lightness in lightnesses:
        require_between(
            lightness, least=5.0, most=95.0, unit="", name="L*", argument="lightnesses"
        )
    scene = dyeable(palette, base, wishes)
    return tuple(
        Reach(lightness=lightness, outlines=outlines_of(_cells(scene, lightness)))
        for lightness in lightnesses
    )


def reached_cells(
    palette: Palette, *, base: str, lightness: float, wishes: Wishes = _PLAIN
) -> "Bools":
    """Return which cells of a*, b* a palette can give at one lightness.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn; one that it holds. [-]
    lightness : float
        L*. [1]
    wishes : Wishes
        Limits. [%]

    Returns
    -------
    ndarray, shape (256, 256)
        True where a mix comes within about a unit; a* down, b* across, −128 first. [-]
    """
    return _cells(dyeable(palette, base, wishes), lightness)


def is_well_inside(
    palette: Palette, *, base: str, lab: Lab, wishes: Wishes = _PLAIN
) -> bool:
    """Return whether a palette gives a colour and all that lie beside it.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    lab : Lab
        The colour in daylight, L* from 5 to 95. [1]
    wishes : Wishes
        Limits. [%]

    Returns
    -------
    bool
        True where its cell and the eight round it are reached; a colour at the edge
        needs a search. [-]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    """
    if max(abs(lab.a), abs(lab.b)) >= HALF_WIDTH - 2 * CELL:
        return False
    cells = reached_cells(palette, base=base, lightness=lab.L, wishes=wishes)
    down, across = (int((part + HALF_WIDTH) // CELL) for part in (lab.a, lab.b))
    return bool(cells[down - 1 : down + 2, across - 1 : across + 2].all())


def _cells(scene: Dyeable, lightness: float) -> "Bools":
    import numpy as np

    cells = np.zeros((2 * HALF_WIDTH // CELL,) * 2, dtype=bool)
    if not scene.dyes:
        return cells
    grid, fill = proportions(scene.together)
    sets = np.array(list(combinations(range(scene.dyes), scene.together)))
    alone = scene.depths_alone(lightness)
    places = np.repeat(sets, len(grid), axis=0)
    depths = np.tile(grid**_LEAN, (len(sets), 1)) * alone[places]
    found = scene.at_lightness(places, depths, lightness)
    a, b, over = (
        fill @ each.reshape(len(sets), -1).T
        for each in (found.lab[:, 1], found.lab[:, 2], found.over)
    )
    is_given = over <= 0.0
    at_a, at_b = (
        np.clip((each[is_given] + HALF_WIDTH) // CELL, 0, len(cells) - 1).astype(int)
        for each in (a, b)
    )
    cells[at_a, at_b] = True
    return cells
