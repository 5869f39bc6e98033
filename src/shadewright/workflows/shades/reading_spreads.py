"""How far off a reading usually is, in the same measure as what is foretold."""

from functools import lru_cache

from shadewright.core.colour import Lab
from shadewright.core.mixing.spreads import spread_of
from shadewright.core.mixing.swatches import LEAST_LAB_SD
from shadewright.workflows.shades.kinds import SPREADS, ReadBy


def usually_off(
    lab: Lab, read_by: ReadBy, *, sd: float | None, repeat: int
) -> float | None:
    """Return CIEDE2000 that a reading is off on average; None where nobody knows.

    ``sd`` is a single reading’s standard deviation as a CIELAB distance, the same in
    all directions; a distance in CIELAB is a smaller one in CIEDE2000, and the more so
    the more vivid a colour is. No number of readings takes Lab below what a fit grants.
    """
    one = sd if sd is not None else SPREADS.get(read_by)
    if one is None:
        return None
    least = 0.0 if read_by is ReadBy.SPECTRUM else LEAST_LAB_SD
    return _expected(*lab, max(one / repeat**0.5, least))


@lru_cache(maxsize=4096)
def _expected(light: float, a: float, b: float, sd: float) -> float:
    import numpy as np

    lab = np.array([[light, a, b]])
    covariance = np.eye(3)[None] * sd**2 / 3.0
    return float(spread_of(lab, covariance).expected[0])
