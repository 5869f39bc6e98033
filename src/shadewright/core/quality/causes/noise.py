"""What lots of one recipe differ by when nothing is wrong: the noise band."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise, starmap
from math import hypot, sqrt
from statistics import median
from typing import Final

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.quality.causes.matrices import (
    UNIT,
    Matrix,
    Three,
    combined,
    outer,
    three,
    trace,
)

CLIP: Final = 2.0
"""A step longer than so many times the median step counts as that long. [1]"""

USUAL_VARIANCE: Final = 0.09
"""Variance of one number of Lab between lots, before any is known: 0.3². [1]"""

USUAL_WORTH: Final = 2.0
"""How many steps that first guess is worth. [-]"""

_MEAN_OF_THREE: Final = 0.9213
"""Mean length of three normal numbers over their root mean square, √(8/3π). [1]"""


@dataclass(frozen=True, kw_only=True)
class Noise:
    """Covariance of a lot’s colour when nothing is wrong, and the freedom in it."""

    covariance: Matrix
    freedom: float

    @property
    def variance(self) -> float:
        """Mean variance of one number of Lab."""
        return trace(self.covariance) / 3.0


def noise_of(colours: Sequence[Lab]) -> Noise:
    """Return the noise between lots, from the steps between one and the next.

    S = Σ h / m,  h = d dᵀ / 2,  d = step from a lot to the next       (2)
    λ = min(Σ ‖h − S‖² / m², ‖S − s² I‖²) / ‖S − s² I‖²,  s² = tr S / 3    (3)
    S* = (m (1 − λ) S + m λ s² I + 2 · 0.3² I) / (m + 2)               (4)

    Parameters
    ----------
    colours : sequence of Lab
        Lots that nothing was wrong with, oldest first; m + 1 of them. [1]

    Returns
    -------
    Noise
        S*, in which a first guess of 0.3² counts as two steps; its freedom. [1]

    Notes
    -----
    Steps from lot to lot see little of a slow drift and of a new jar that stays, and
    a step of more than twice the median is clipped to that. λ draws the covariance to
    the same in all directions, as far as few steps leave it in doubt. The freedom is
    2/3 a step, since neighbours share a lot, and up to three times that where λ is 1.

    References
    ----------
    .. [holmes1993] the covariance from successive differences
    .. [ledoit2004] equations 13 to 15, here about a mean of nought

    Examples
    --------
    >>> noise_of([Lab(50, 0, 0), Lab(50.4, 0, 0), Lab(50, 0.4, 0)]).variance < 0.1
    True
    """
    steps = _steps(colours)
    count = len(steps)
    if not count:
        return Noise(
            covariance=combined((USUAL_VARIANCE, UNIT)), freedom=3.0 * USUAL_WORTH
        )
    longest = CLIP * median(starmap(hypot, steps))
    halves = [combined((0.5, outer(_clipped(step, longest)))) for step in steps]
    found = combined(*((1.0 / count, half) for half in halves))
    level = trace(found) / 3.0
    shrink = _shrinkage(found, halves, level)
    guess = USUAL_WORTH * USUAL_VARIANCE + count * shrink * level
    covariance = combined(
        (count * (1.0 - shrink) / (count + USUAL_WORTH), found),
        (guess / (count + USUAL_WORTH), UNIT),
    )
    freedom = (2.0 * count / 3.0 + USUAL_WORTH) * (1.0 + 2.0 * shrink)
    return Noise(covariance=covariance, freedom=freedom)


def expected_distance(mean: Lab, covariance: Matrix) -> float:
    """Return the mean CIEDE2000 that a covariance gives about a colour.

    Parameters
    ----------
    mean : Lab
        The colour. [1]
    covariance : Matrix
        Of lots about it. [1]

    Returns
    -------
    float
        CIEDE2000. [1]

    Notes
    -----
    Its square is near enough quadratic there, so it adds up over any three steps whose
    squares make up the covariance: the columns of its root.

    Examples
    --------
    >>> round(expected_distance(Lab(50, 0, 0), combined((0.04, UNIT))), 2)
    0.38
    """
    squares = 0.0
    for column in _root_columns(covariance):
        moved = Lab(*(x + y for x, y in zip(mean, column, strict=True)))
        squares += ciede2000(mean, moved) ** 2
    return _MEAN_OF_THREE * sqrt(squares)


def _root_columns(covariance: Matrix) -> tuple[Three, Three, Three]:
    (a, _, _), (b, d, _), (c, e, f) = covariance
    first = sqrt(a)
    two, three_ = b / first, c / first
    second = sqrt(d - two * two)
    third = (e - two * three_) / second
    last = sqrt(max(f - three_ * three_ - third * third, 0.0))
    return (first, two, three_), (0.0, second, third), (0.0, 0.0, last)


def _steps(colours: Sequence[Lab]) -> list[Three]:
    pairs = pairwise(colours)
    return [three([y - x for x, y in zip(one, two, strict=True)]) for one, two in pairs]


def _clipped(step: Three, longest: float) -> Three:
    length = hypot(*step)
    if length <= longest:
        return step
    return three([part * longest / length for part in step])


def _shrinkage(found: Matrix, halves: Sequence[Matrix], level: float) -> float:
    """Return λ of equation 3."""
    apart = _squares(combined((1.0, found), (-level, UNIT)))
    if not apart:
        return 1.0
    scatter = sum(_squares(combined((1.0, half), (-1.0, found))) for half in halves)
    return min(scatter / len(halves) ** 2, apart) / apart


def _squares(matrix: Matrix) -> float:
    return sum(part * part for row in matrix for part in row)
