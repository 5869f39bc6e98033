"""The grey scale for staining: how much dye a white cloth took up (ISO 105-A03, A04).

A snippet is washed, or rubbed, with white cloths beside it. What bleeds onto them is
rated against pairs of white and grey, 5 for none to 1 for much. The change of the
snippet itself is rated on the other scale, ``grey_scale`` in the chapter on colour.
"""

from dataclasses import dataclass
from math import dist, log, sqrt
from typing import Final

from shadewright.core.colour import Lab

STAINING_GREYS: Final = (
    ("5", 0.0, 0.2),
    ("4-5", 2.2, 0.3),
    ("4", 4.3, 0.3),
    ("3-4", 6.0, 0.4),
    ("3", 8.5, 0.5),
    ("2-3", 12.0, 0.7),
    ("2", 16.9, 1.0),
    ("1-2", 24.0, 1.5),
    ("1", 34.1, 2.0),
)
"""Grade, CIELAB distance of its grey from white, how far that may be off. [1]"""


@dataclass(frozen=True, kw_only=True)
class Staining:
    """A stain as a grade: ``rating`` with its fraction, ``step`` as it is written."""

    distance: float
    rating: float
    step: str


def staining(cloth: Lab, stained: Lab) -> Staining:
    """Return the grade of a stain on a white cloth.

    ΔE_GS = ΔE − 0.4 √(ΔE² − ΔL²)                                  (1)
    SSR = 6.1 − 1.45 ln ΔE_GS;  if above 4, 5 − 0.23 ΔE_GS         (2)

    Parameters
    ----------
    cloth : Lab
        The cloth before, or a piece of it that was not in the test. [1]
    stained : Lab
        The cloth after. [1]

    Returns
    -------
    Staining
        Distance ΔE_GS, rating SSR from 5 to 1, and the nearest half step. [1]

    Notes
    -----
    Equations 1 and 2 and the greys of the scale stand here from memory; that the
    equations give each grey its grade speaks for both. ΔE is that of CIELAB.

    References
    ----------
    .. [isoa04] 6, calculation of the staining scale rating
    .. [isoa03] 2.4, distances of the greys

    Examples
    --------
    >>> found = staining(Lab(94, 0, 2), Lab(85.5, 0, 2))
    >>> round(found.rating, 2), found.step
    (3.0, '3')
    """
    whole = dist(cloth, stained)
    coloured = sqrt(max(whole**2 - (stained.L - cloth.L) ** 2, 0.0))
    distance = whole - 0.4 * coloured
    rating = _rating(distance)
    return Staining(distance=distance, rating=rating, step=_step(rating))


def _rating(distance: float) -> float:
    """Return SSR of equation 2, never below 1."""
    low = 6.1 - 1.45 * log(distance) if distance else 5.0
    return 5.0 - 0.23 * distance if low > 4.0 else max(low, 1.0)


def _step(rating: float) -> str:
    """Return the nearest half step as it is written: 3-4 for 3.5."""
    halves = round(2.0 * rating)
    whole = halves // 2
    return f"{whole}-{whole + 1}" if halves % 2 else f"{whole}"
