"""The shape of an error: what is known of it before anybody measures it.

A maker who promises ±1 ml says where the truth lies and nothing about where in
between: that is a rectangle. Two roundings of one scale, empty and full, add up
to a triangle. What many small things bring about, or what was found by reading
several times, is normal.
"""

from enum import StrEnum
from math import sqrt

from shadewright.core.quantities import require_between

_WIDEST = 1e12


class Shape(StrEnum):
    """How an error is spread about nought."""

    NORMAL = "normal"
    RECTANGULAR = "rectangular"
    TRIANGULAR = "triangular"


HALF_WIDTHS = {Shape.RECTANGULAR: sqrt(3.0), Shape.TRIANGULAR: sqrt(6.0)}
"""Half-width of a bounded shape, in its own standard uncertainties. [-]"""


def standard_uncertainty(*, half_width: float, shape: Shape) -> float:
    """Return the standard uncertainty of an error that has bounds.

    u = a / √3 (rectangular), u = a / √6 (triangular)              (1)

    Parameters
    ----------
    half_width : float
        How far the error can go either way, a; zero or more. [any]
    shape : Shape
        Rectangular or triangular; of a normal error the half-width is u. [-]

    Returns
    -------
    float
        Standard uncertainty, u. [as half_width]

    Raises
    ------
    OutOfRangeError
        If the half-width is negative or not a number.

    References
    ----------
    .. [jcgm100] 4.3.7 and 4.3.9

    Examples
    --------
    >>> round(standard_uncertainty(half_width=1.0, shape=Shape.RECTANGULAR), 4)
    0.5774
    """
    require_between(
        half_width,
        least=0.0,
        most=_WIDEST,
        unit="",
        name="Half-width",
        argument="half_width",
    )
    return half_width / HALF_WIDTHS.get(shape, 1.0)
