"""Mixes made stronger or weaker until they are as light as asked.

In one proportion of dyes yarn grows darker with depth, so one depth is as light as is
asked for. It is sought by Newton's steps on the logarithms of both, for thousands of
mixes at once; what each dye adds is read off a table of its curve.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.mixing.asking import lab_under, require_known
from shadewright.core.mixing.model.kubelka_munk import (
    reflectance_of_ks,
    slope_of_reflectance,
    with_surface,
)
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import Mix, seen_under_lights
from shadewright.core.recipes.curves import (
    LEAST_PERCENT,
    MOST_PERCENT,
    Curves,
    curves_of,
)
from shadewright.core.recipes.targets import DAY
from shadewright.core.recipes.wishes import Wishes, most_of_each, require_wishes

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

MOST_TOGETHER = 3
"""Dyes in a mix; a fourth moves the outline by little. [-]"""
_NODES = 120
_ROUNDS, _NEWTON = 2, 3
_NEAR = 0.5
_TOO_PALE = 0.3


@dataclass(frozen=True, kw_only=True, eq=False)
class Found:
    """Mixes as light as was asked: ``lab`` (m, 3).

    ``over`` (m,) is the logarithm of what they hold over what they may; above zero
    they are not to be had.
    """

    lab: "Floats"
    over: "Floats"


@dataclass(frozen=True, kw_only=True, eq=False)
class Dyeable:
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
        """Return how much of each dye alone is as light as asked, or all that may be.

        Parameters
        ----------
        lightness : float
            L*. [1]

        Returns
        -------
        ndarray, shape (n,)
            Depths. [%]
        """
        import numpy as np

        places = np.arange(self.dyes)[:, None]
        half = np.minimum(self.each, 0.5)[:, None]
        factor, _added = self._factors(places, half, lightness)
        return np.minimum(half[:, 0] * factor, np.minimum(self.each, self.total))

    def at_lightness(
        self, places: "Whole", depths: "Floats", lightness: float
    ) -> Found:
        """Return mixes made stronger or weaker until they are as light as asked.

        Parameters
        ----------
        places : ndarray, shape (m, dyes)
            Places of dyes. [-]
        depths : ndarray, shape (m, dyes)
            Their depths; only their proportion counts. [%]
        lightness : float
            L*. [1]

        Returns
        -------
        Found
            Colours, and whether they are to be had. [1]
        """
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
        return Found(lab=lab, over=np.where(is_off, np.maximum(over, _TOO_PALE), over))

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


def dyeable(palette: Palette, base: str, wishes: Wishes) -> Dyeable:
    """Return the dyes that may be used, each with the most that may be dyed of it.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]
    wishes : Wishes
        Limits. [%]

    Returns
    -------
    Dyeable
        Dyes of which nothing may be dyed are left out. [-]

    Raises
    ------
    NotFoundError
        If the base or a dye is not in the palette.
    OutOfRangeError
        If a wish is out of range.
    MissingError
        If no dye is left.
    """
    import numpy as np

    require_known([Mix(base=base, doses=())], palette)
    require_wishes(wishes, palette)
    free = tuple(d for d in palette.names.dyes if d not in wishes.unwanted)
    most = dict(zip(free, most_of_each(wishes, palette, free), strict=True))
    dyes = tuple(dye for dye in free if most[dye] > 0.0)
    curves = curves_of(palette, base, dyes)
    nodes = np.geomspace(LEAST_PERCENT, MOST_PERCENT, _NODES)
    return Dyeable(
        curves=curves,
        logs=curves.logs(nodes),
        each=np.array([most[dye] for dye in dyes]),
        total=wishes.most_depth_percent,
        together=min(wishes.most_dyes, MOST_TOGETHER, len(dyes)),
    )
