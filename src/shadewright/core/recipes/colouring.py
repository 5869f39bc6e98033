"""The colour of mixes by the curves of their dyes, and how it follows each dose."""

from typing import TYPE_CHECKING

from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.model.kubelka_munk import (
    reflectance_of_ks,
    slope_of_reflectance,
    with_surface,
)
from shadewright.core.mixing.model.seeing import as_seen_slope
from shadewright.core.mixing.swatches import seen_under_lights
from shadewright.core.recipes.curves import Curves
from shadewright.core.recipes.targets import DAY

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]


def labs_of(curves: Curves, depths: "Floats") -> "Floats":
    """Return the colour in daylight of many mixes of the same dyes.

    Parameters
    ----------
    curves : Curves
        The dyes on a base, all of them. [1]
    depths : ndarray, shape (m, n)
        Depth of each dye in each mix. [%]

    Returns
    -------
    ndarray, shape (m, 3)
        L*, a*, b* (D65/10°). [1]
    """
    return lab_under(reflectances_of(curves, depths), light=DAY)


def reflectances_of(curves: Curves, depths: "Floats") -> "Floats":
    """Return the spectra of many mixes of the same dyes.

    Parameters
    ----------
    curves : Curves
        The dyes on a base, all of them. [1]
    depths : ndarray, shape (m, n)
        Depth of each dye in each mix. [%]

    Returns
    -------
    ndarray, shape (m, 31)
        Reflectance as measured. [1]
    """
    import numpy as np

    sets = np.repeat(np.arange(curves.count)[:, None], len(depths), axis=1)
    added, _slopes = curves.of(sets).added(depths.T)
    inside = reflectance_of_ks(added.T + curves.ground)
    return with_surface(inside, surface=curves.surface)


def slopes_by_log_dose(curves: Curves, sets: "Whole", depths: "Floats") -> "Floats":
    """Return how the colour of mixes follows the logarithm of each dose.

    g_i = dLab / d ln c_i                                            (4)

    Parameters
    ----------
    curves : Curves
        Dyes on a base. [1]
    sets : ndarray, shape (dyes, m)
        Places of dyes; n for none. [-]
    depths : ndarray, shape (dyes, m)
        Their depths. [%]

    Returns
    -------
    ndarray, shape (m, dyes, 3)
        g in daylight. [1]
    """
    import numpy as np

    each, slopes = curves.of(sets).alone(depths)
    ks = (each.sum(0) + curves.ground[:, None]).T
    outside = with_surface(reflectance_of_ks(ks), surface=curves.surface)
    by_ks = as_seen_slope(outside, seen_under_lights(DAY))
    by_ks *= ((1.0 - curves.surface) * slope_of_reflectance(ks))[:, None]
    found: Floats = np.einsum("mib,kbm->mki", by_ks, slopes * depths[:, None])
    return found
