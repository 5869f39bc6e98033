"""From a spectrum to XYZ and Lab: a plain sum with a table of weights."""

from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import DELTA
from shadewright.core.colour.spectra.weights import WeightTable
from shadewright.errors import OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


def xyz_of_spectra(reflectance: "Floats", *, weights: WeightTable) -> "Floats":
    """Return the XYZ of spectra.

    X = Σ_i W_i R_i                                                (3)

    Parameters
    ----------
    reflectance : ndarray, shape (..., n)
        Share of the light that comes back in each band, R; 0 to 1. [1]
    weights : WeightTable
        Weights for these n bands. [1]

    Returns
    -------
    ndarray, shape (..., 3)
        X, Y, Z; Y of a perfect white is 100. [1]

    Raises
    ------
    OutOfRangeError
        If the bands are not as many as the table has.

    References
    ----------
    .. [cie15] 7.1, tristimulus values
    .. [astme308] 7, calculation

    Examples
    --------
    >>> import numpy as np
    >>> from shadewright.core.colour.spectra.weights import weight_table
    >>> grey = np.full(31, 0.2)
    >>> xyz_of_spectra(grey, weights=weight_table()).round(3).tolist()
    [18.962, 20.0, 21.461]
    """
    bands = len(weights.rows)
    if reflectance.shape[-1] != bands:
        raise OutOfRangeError(
            name="A spectrum for these weights",
            given=f"{reflectance.shape[-1]} bands",
            allowed=f"{bands} bands, {weights.first_nm} to {weights.last_nm} nm",
            argument="reflectance",
        )
    return reflectance @ weights.rows


def lab_of_spectra(reflectance: "Floats", *, weights: WeightTable) -> "Floats":
    """Return spectra in CIELAB, beside the white of the weights.

    Parameters
    ----------
    reflectance : ndarray, shape (..., n)
        Share of the light that comes back in each band; 0 to 1. [1]
    weights : WeightTable
        Weights for these n bands. [1]

    Returns
    -------
    ndarray, shape (..., 3)
        L, a, b, by the equations of ``cielab``. [1]

    References
    ----------
    .. [cie15] 8.2.1, CIE 1976 L*a*b* space

    Examples
    --------
    >>> import numpy as np
    >>> from shadewright.core.colour.spectra.weights import weight_table
    >>> lab_of_spectra(np.ones(31), weights=weight_table()).round(6).tolist()
    [100.0, 0.0, 0.0]
    """
    import numpy as np

    share = xyz_of_spectra(reflectance, weights=weights) / weights.rows.sum(axis=0)
    dark = share / (3.0 * DELTA**2) + 4.0 / 29.0
    roots = np.where(share > DELTA**3, np.cbrt(share), dark)
    f_x, f_y, f_z = np.moveaxis(roots, -1, 0)
    light = 116.0 * f_y - 16.0
    return np.stack([light, 500.0 * (f_x - f_y), 200.0 * (f_y - f_z)], axis=-1)
