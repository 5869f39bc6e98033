"""Kubelka and Munk's function, and the light that never enters the yarn.

Of a layer so thick that nothing shines through, the share R of the light that comes
back depends only on how much is absorbed (K) for what is scattered (S). A dye on
wool absorbs; the fibre scatters. So K/S of dyed yarn is that of the bare yarn plus
what each dye adds, and dyes add up in K/S as they do not in R.

A little light turns back at the fibre's surface and meets no dye. However deep the
bath, yarn is never blacker than that.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


def ks_of_reflectance(reflectance: "Floats") -> "Floats":
    """Return K/S of what reflects so much.

    K/S = (1 − R)² / 2R                                             (1)

    Parameters
    ----------
    reflectance : ndarray, shape (..., n)
        Reflectance without the surface, R; above 0 to 1. [1]

    Returns
    -------
    ndarray, shape (..., n)
        K/S. [1]

    References
    ----------
    .. [kubelkamunk1931] the remission function of an opaque layer

    Examples
    --------
    >>> import numpy as np
    >>> float(ks_of_reflectance(np.array(0.2)).round(6))
    1.6
    """
    return (1.0 - reflectance) ** 2 / (2.0 * reflectance)


def reflectance_of_ks(ks: "Floats") -> "Floats":
    """Return the reflectance of an opaque layer.

    R = 1 + K/S − √((K/S)² + 2 K/S)                                 (2)

    Parameters
    ----------
    ks : ndarray, shape (..., n)
        K/S; zero or more. [1]

    Returns
    -------
    ndarray, shape (..., n)
        Reflectance, R. [1]

    Notes
    -----
    Reckoned as 1 / (1 + K/S + √(…)), which is the same and loses no digits where
    K/S is large.

    References
    ----------
    .. [kubelkamunk1931] the same, solved for R

    Examples
    --------
    >>> import numpy as np
    >>> float(reflectance_of_ks(np.array(10.0)).round(6))
    0.045549
    """
    import numpy as np

    found: Floats = 1.0 / (1.0 + ks + np.sqrt(ks * ks + 2.0 * ks))
    return found


def slope_of_reflectance(ks: "Floats") -> "Floats":
    """Return how fast reflectance falls as K/S grows.

    dR/d(K/S) = 1 − (K/S + 1) / √((K/S)² + 2 K/S)                   (3)

    Parameters
    ----------
    ks : ndarray, shape (..., n)
        K/S; above zero. [1]

    Returns
    -------
    ndarray, shape (..., n)
        The slope, below zero. [1]

    Notes
    -----
    The derivative of equation 2.

    Examples
    --------
    >>> import numpy as np
    >>> float(slope_of_reflectance(np.array(1.6)).round(6))
    -0.083333
    """
    import numpy as np

    root = np.sqrt(ks * ks + 2.0 * ks)
    found: Floats = -reflectance_of_ks(ks) / root
    return found


def with_surface(reflectance: "Floats", *, surface: float) -> "Floats":
    """Return what a meter sees: the layer and the light off its surface.

    R' = s + (1 − s) R                                              (4)

    Parameters
    ----------
    reflectance : ndarray, shape (..., n)
        Reflectance of the layer, R. [1]
    surface : float
        Share of the light that turns back at the surface, s; 0 to 0.2. [1]

    Returns
    -------
    ndarray, shape (..., n)
        Reflectance as measured, R'. [1]

    Notes
    -----
    The form used for textiles, from memory after Pineo; Saunderson's
    [saunderson1942]_, with no light caught inside.

    Examples
    --------
    >>> import numpy as np
    >>> float(with_surface(np.array(0.5), surface=0.01))
    0.505
    """
    return surface + (1.0 - surface) * reflectance
