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

from shadewright.core.mixing.asking import lab_under, require_known
from shadewright.core.mixing.model.kubelka_munk import (
    reflectance_of_ks,
    slope_of_reflectance,
    with_surface,
)
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Mix, seen_under_lights
from shadewright.core.quantities import require_between
from shadewright.core.recipes.curves import (
    LEAST_PERCENT,
    MOST_PERCENT,
    Curves,
    curves_of,
)
from shadewright.core.recipes.outlines import CELL, HALF_WIDTH, Outline, outlines_of
from shadewright.core.recipes.proportions import proportions
from shadewright.core.recipes.targets import DAY
from shadewright.core.recipes.wishes import Wishes, most_of_each, require_wishes

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Bools = NDArray[np.bool_]
    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

LIGHTNESSES = (70.0, 50.0, 30.0)
"""Light, mid and dark. [1]"""
MOST_TOGETHER = 3
"""Dyes in a mix; a fourth moves the outline by little. [-]"""
_LEAN = 2
"""Power of the steps: small shares are laid closer, for there colours change most."""
_NODES = 120
_ROUNDS, _NEWTON = 2, 3
_NEAR = 0.5
_TOO_PALE = 0.3
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
    scene = _scene(palette, base, wishes)
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
    return _cells(_scene(palette, base, wishes), lightness)


def _cells(scene: "_Scene", lightness: float) -> "Bools":
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


@dataclass(frozen=True, kw_only=True, eq=False)
class _Found:
    """Mixes as light as was asked: ``lab`` (m, 3).

    ``over`` (m,) is the logarithm of what they hold over what they may; above zero
    they are not to be had.
    """

    lab: "Floats"
    over: "Floats"


@dataclass(frozen=True, kw_only=True, eq=False)
class _Scene:
    """Dyes on a base: ``logs`` (n, nodes, 31) of unit K/S over even steps of ln c."""

    curves: Curves
    logs: "Floats"
    each: "Floats"
    total: float
    together: int

    @property
    def dyes(self) -> int:
        """How many dyes there are to mix."""
        return len(self.logs)

    def depths_alone(self, lightness: float) -> "Floats":
        """Return how much of each dye alone is that light, or all that may be."""
        import numpy as np

        places = np.arange(self.dyes)[:, None]
        half = np.minimum(self.each, 0.5)[:, None]
        factor, _added = self._factors(places, half, lightness)
        return np.minimum(half[:, 0] * factor, np.minimum(self.each, self.total))

    def at_lightness(
        self, places: "Whole", depths: "Floats", lightness: float
    ) -> _Found:
        """Return mixes made stronger or weaker until they are as light as asked."""
        import numpy as np

        factor, added = self._factors(places, depths, lightness)
        inside = reflectance_of_ks(self.curves.ground + factor[:, None] * added)
        outside = with_surface(inside, surface=self.curves.surface)
        lab = lab_under(outside, light=DAY)
        may = self.total / depths.sum(1)
        with np.errstate(divide="ignore"):
            may = np.minimum(may, (self.each[places] / depths).min(1))
        is_off = np.abs(lab[:, 0] - lightness) > _NEAR
        over = np.log(factor / may)
        return _Found(lab=lab, over=np.where(is_off, np.maximum(over, _TOO_PALE), over))

    def _factors(
        self, places: "Whole", depths: "Floats", lightness: float
    ) -> "tuple[Floats, Floats]":
        """Return by what factor each mix is as light as asked, and its K/S by one.

        Newton on ln Y against the logarithm of the factor, K/S in proportion; then
        K/S anew from the curves.
        """
        import numpy as np

        weights = seen_under_lights(DAY).weights
        assert weights is not None  # ruff: ignore[assert] - only a spectrum has none
        bright, surface = weights[0][:, 1], self.curves.surface
        wanted = ((lightness + 16.0) / 116.0) ** 3
        factor = np.ones(len(depths))
        most = MOST_PERCENT / depths.max(1)
        added = self._added(places, depths)
        for _round in range(_ROUNDS):
            for _step in range(_NEWTON):
                ks = self.curves.ground + factor[:, None] * added
                y = with_surface(reflectance_of_ks(ks), surface=surface) @ bright
                steep = (slope_of_reflectance(ks) * (ks - self.curves.ground)) @ bright
                step = np.log(wanted / y) * y / (steep * (1.0 - surface))
                factor = np.minimum(factor * np.exp(np.clip(step, -1.5, 1.5)), most)
            added = self._added(places, depths * factor[:, None]) / factor[:, None]
        return factor, added

    def _added(self, places: "Whole", depths: "Floats") -> "Floats":
        """Return the K/S that dyes add together, read off the table."""
        import numpy as np

        span = np.log(MOST_PERCENT / LEAST_PERCENT)
        bent = np.clip(depths, LEAST_PERCENT, MOST_PERCENT)
        at = np.log(bent / LEAST_PERCENT) / span * (_NODES - 1)
        left = np.minimum(at.astype(int), _NODES - 2)
        share = (at - left)[..., None]
        low, high = self.logs[places, left], self.logs[places, left + 1]
        unit = np.exp(low + share * (high - low))
        found: Floats = (depths[..., None] * unit).sum(1)
        return found


def _scene(palette: Palette, base: str, wishes: Wishes) -> _Scene:
    """Return the dyes that may be used, each with the most that may be dyed of it."""
    import numpy as np

    require_known([Mix(base=base, doses=())], palette)
    require_wishes(wishes, palette)
    free = tuple(d for d in palette.names.dyes if d not in wishes.unwanted)
    most = dict(zip(free, most_of_each(wishes, palette, free), strict=True))
    dyes = tuple(dye for dye in free if most[dye] > 0.0)
    curves = curves_of(palette, base, dyes)
    nodes = np.geomspace(LEAST_PERCENT, MOST_PERCENT, _NODES)
    return _Scene(
        curves=curves,
        logs=curves.logs(nodes),
        each=np.array([most[dye] for dye in dyes]),
        total=wishes.most_depth_percent,
        together=min(wishes.most_dyes, MOST_TOGETHER, len(dyes)),
    )
