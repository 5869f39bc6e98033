"""One dye on a yarn, from pale to deep: its colours, and how sure each of them is."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import starmap

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.asking import Told, told_mixes
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.spreads import NINE_IN_TEN, drawn_colours
from shadewright.core.mixing.swatches import Mix

PALEST_PERCENT, DEEPEST_PERCENT = 0.03, 4.0
"""From where to where a strip goes. [%]"""
USUAL_PERCENT = (0.1, 2.0)
"""The depths that most recipes keep to (common practice). [%]"""
MOST_SURE, MOST_FAIR = 2.0, 4.0
"""Up to which CIEDE2000 a dye is sure, and up to which fair (our choice). [1]"""
_POINTS = 17


class Sureness(StrEnum):
    """How well a dye is known, in a word."""

    SURE = "sure"
    FAIR = "fair"
    WIDE = "wide"


@dataclass(frozen=True, kw_only=True)
class Strip:
    """One dye on a yarn: colours (D65/10°) at depths, the palest first.

    ``within_90`` is CIEDE2000 that nine in ten swatches dyed at each depth should stay
    under; ``usual_90`` the same over all depths from 0.1 to 2 % together.
    """

    dye: str
    depths_percent: tuple[float, ...]
    labs: tuple[Lab, ...]
    within_90: tuple[float, ...]
    usual_90: float

    @property
    def sureness(self) -> Sureness:
        """How well it is known, in a word, by the tenth that is written."""
        written = round(self.usual_90, 1)
        if written <= MOST_SURE:
            return Sureness.SURE
        return Sureness.FAIR if written <= MOST_FAIR else Sureness.WIDE


def strips(palette: Palette, *, base: str) -> tuple[Strip, ...]:
    """Return every dye of a palette alone on a yarn.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn. [-]

    Returns
    -------
    tuple of Strip
        In the order of the palette, each at the same depths. [%]

    Raises
    ------
    NotFoundError
        If the base is not in the palette.

    Notes
    -----
    The spread is that of another day's dyeing at exactly the depth stated: a dose that
    is off comes on top.
    """
    depths = _depths()
    mixes = [
        Mix(base=base, doses=((dye, depth),))
        for dye in palette.names.dyes
        for depth in depths
    ]
    told = told_mixes(mixes, palette=palette)
    return tuple(
        _strip(dye, depths, told, place * len(depths))
        for place, dye in enumerate(palette.names.dyes)
    )


def _depths() -> tuple[float, ...]:
    ratio = DEEPEST_PERCENT / PALEST_PERCENT
    return tuple(
        PALEST_PERCENT * ratio ** (place / (_POINTS - 1)) for place in range(_POINTS)
    )


def _strip(dye: str, depths: Sequence[float], told: Told, first: int) -> Strip:
    import numpy as np

    run = slice(first, first + len(depths))
    least, most = USUAL_PERCENT
    usual = [first + at for at, depth in enumerate(depths) if least <= depth <= most]
    drawn = drawn_colours(told.lab[usual], told.covariance[usual])
    away = ciede2000_arrays(told.lab[usual][:, None], drawn)
    return Strip(
        dye=dye,
        depths_percent=tuple(depths),
        labs=tuple(starmap(Lab, told.lab[run].tolist())),
        within_90=tuple(told.de_90[run].tolist()),
        usual_90=float(np.percentile(away, NINE_IN_TEN)),
    )
