"""Hotelling’s T²: how far a lot lies outside the noise, in L, a and b at once."""

from math import exp, lgamma, log, log1p
from typing import Final

from shadewright.core.quality.causes.matrices import (
    Matrix,
    Three,
    squared_distance,
)

_TINY: Final = 1e-300
_SETTLED: Final = 1e-12
_MOST_TERMS: Final = 500


def t_squared(shift: Three, covariance: Matrix) -> float:
    """Return how far a lot lies from the others, counted in their noise.

    T² = dᵀ S⁻¹ d                                                  (5)

    Parameters
    ----------
    shift : tuple of float
        From the mean of the lots in control to this lot, d, in L, a, b. [1]
    covariance : Matrix
        Of that shift while nothing is wrong, S: noise of the lot and of the mean. [1]

    Returns
    -------
    float
        T². [1]

    References
    ----------
    .. [hotelling1931] the generalisation of Student's ratio

    Examples
    --------
    >>> t_squared((3.0, 0.0, 4.0), ((1, 0, 0), (0, 1, 0), (0, 0, 4)))
    13.0
    """
    return squared_distance(shift, covariance)


def chance_of(t_2: float, *, freedom: float) -> float:
    """Return how often noise alone gives so great a T².

    p = P(F > T² / 3),  F with 3 and m degrees of freedom          (6)

    Parameters
    ----------
    t_2 : float
        T² of three numbers. [1]
    freedom : float
        Degrees of freedom in the noise, m; above zero. [-]

    Returns
    -------
    float
        The chance, p. [-]

    Notes
    -----
    T² / 3 follows F exactly where the noise is alike along L, a and b and only its
    size was estimated. The covariance is shrunk most of the way towards that.

    References
    ----------
    .. [anderson2003] 5.2, the distribution of T²

    Examples
    --------
    >>> round(chance_of(3 * 4.1468, freedom=15), 4)
    0.0251
    """
    return _beta_share(freedom / 2.0, 1.5, x=freedom / (freedom + t_2) if t_2 else 1.0)


def _beta_share(a: float, b: float, *, x: float) -> float:
    """Return the regularised incomplete beta function I_x(a, b)."""
    if x >= 1.0:
        return 1.0
    front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log1p(-x))
    if x < (a + 1.0) / (a + b + 2.0):
        return front * _fraction(a, b, x=x) / a
    return 1.0 - front * _fraction(b, a, x=1.0 - x) / b


def _fraction(a: float, b: float, *, x: float) -> float:
    """Return the continued fraction of I_x, term by term from its head."""
    over, under = 1.0, 1.0 / _not_nought(1.0 - (a + b) * x / (a + 1.0))
    found = under
    for m in range(1, _MOST_TERMS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for term in (even, odd):
            under = 1.0 / _not_nought(1.0 + term * under)
            over = _not_nought(1.0 + term / over)
            found *= over * under
        if abs(over * under - 1.0) < _SETTLED:
            break
    return found


def _not_nought(value: float) -> float:
    return value if abs(value) > _TINY else _TINY
