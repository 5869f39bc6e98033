"""The last lot beside the usual ones, and how probable its shift is by each cause."""

from dataclasses import dataclass
from math import fsum, hypot
from typing import Final

from shadewright.core.quality.causes.features import Scale
from shadewright.core.quality.causes.history import Factor, PastLot
from shadewright.core.quality.causes.learning import Effect, Learned
from shadewright.core.quality.causes.matrices import (
    UNIT,
    Matrix,
    Three,
    combined,
    normal_density,
    outer,
    three,
)
from shadewright.core.quality.causes.usual import Usual

ANY_WAY_SD: Final = 1.5
"""A cause moves each number of Lab by about this. [1]"""

LONGEST: Final = 5.0
"""A longer shift counts as so long, in its direction: beyond, only that tells. [1]"""

PALER_BY, PALER_SD, ASIDE_SD = 2.2, 1.2, 0.6
"""A number that dyes paler: by how much, how much that varies, how far aside. [1]"""

EFFECT_SPREAD: Final = 0.3
"""Spread of an effect from one time to the next, as a share of it. [-]"""


@dataclass(frozen=True, kw_only=True)
class Case:
    """The last lot against the usual: its shift, that by noise alone, what is known."""

    last: PastLot
    lots: tuple[PastLot, ...]
    usual: Usual
    scales: dict[Factor, Scale]
    learned: Learned
    shift: Three
    covariance: Matrix

    def kept(self, factor: Factor) -> list[str | float]:
        """Return what was written down of a factor while in control, oldest first."""
        every = (getattr(lot, factor) for lot in self.usual.kept(self.lots))
        return [each for each in every if each is not None]

    def any_way(self) -> float:
        """Return the density of the shift by what may move a colour any way."""
        return self._density((0.0, 0.0, 0.0), combined((ANY_WAY_SD**2, UNIT)))

    def paler(self, way: float, *, astray: float) -> float:
        """Return the density of a shift to paler, or to deeper where the way is back.

        Parameters
        ----------
        way : float
            Above zero to paler, below to deeper. [-]
        astray : float
            Share of such causes that move the colour any way all the same. [-]

        Returns
        -------
        float
            The density. [1]
        """
        paler = self.learned.paler
        by = PALER_BY if way > 0.0 else -PALER_BY
        along = combined((PALER_SD**2 - ASIDE_SD**2, outer(paler)), (ASIDE_SD**2, UNIT))
        straight = self._density(three([by * part for part in paler]), along)
        return (1.0 - astray) * straight + astray * self.any_way()

    def as_before(self, effect: Effect) -> float:
        """Return the density of the shift by what does now what it did before."""
        size = fsum(part * part for part in effect.shift)
        spread = effect.variance + EFFECT_SPREAD**2 * size
        return self._density(effect.shift, combined((spread, UNIT)))

    def _density(self, mean: Three, spread: Matrix) -> float:
        """Return the density of the shift about a mean, with noise on top."""
        pairs = zip(_no_longer(self.shift), _no_longer(mean), strict=True)
        rest = three([x - y for x, y in pairs])
        return normal_density(rest, combined((1.0, self.covariance), (1.0, spread)))


def _no_longer(shift: Three) -> Three:
    length = hypot(*shift)
    if length <= LONGEST:
        return shift
    return three([part * LONGEST / length for part in shift])
