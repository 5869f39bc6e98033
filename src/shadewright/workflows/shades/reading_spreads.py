"""How far off a reading usually is, in the same measure as what is foretold."""

from functools import lru_cache

from shadewright.core.colour import Lab
from shadewright.core.mixing.spreads import spread_of
from shadewright.workflows.shades.kinds import SPREADS, ReadBy


def usually_off(
    lab: Lab, read_by: ReadBy, *, sd: float | None, repeat: int
) -> float | None:
    """Return CIEDE2000 that a reading is off on average; None where nobody knows.

    ``sd`` is a single reading’s standard deviation as a CIELAB distance, the same in
    all directions; a distance in CIELAB is a smaller one in CIEDE2000, and the more so
    the more vivid a colour is.
    """
    one = sd if sd is not None else SPREADS.get(read_by)
    return None if one is None else _expected(*lab, one / repeat**0.5)


@lru_cache(maxsize=4096)
def _expected(light: float, a: float, b: float, sd: float) -> float:
    import numpy as np

    lab = np.array([[light, a, b]])
    covariance = np.eye(3)[None] * sd**2 / 3.0
    return float(spread_of(lab, covariance).expected[0])
