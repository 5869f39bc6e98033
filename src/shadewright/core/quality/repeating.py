"""How well a studio repeats itself: what two lots of one recipe differ by."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum, pi, sqrt
from statistics import median
from typing import Final

from shadewright.core.colour import Lab
from shadewright.core.quality.causes.noise import CLIP
from shadewright.errors import MissingError

ENOUGH_STEPS: Final = 6
"""Steps from lot to lot that tell it to a fifth, u / mean = 1 / (2 √m). [1]"""
_MEAN_OF_THREE: Final = sqrt(8.0 / pi)
"""Mean length of three normal numbers of spread 1. [1]"""


@dataclass(frozen=True, kw_only=True)
class Repeatability:
    """How far lots of one recipe lie from each other when nothing is wrong.

    ``sd`` is the spread of each number of Lab, ``apart`` the mean CIELAB distance of
    one lot to the next and ``u`` its standard uncertainty; ``lots`` and ``recipes``
    count what it rests on.
    """

    sd: float
    apart: float
    u: float
    lots: int
    recipes: int

    @property
    def is_enough(self) -> bool:
        """Whether it rests on enough lots to be counted in what is foretold."""
        return self.lots - self.recipes >= ENOUGH_STEPS


def repeatability(recipes: Sequence[Sequence[Lab]]) -> Repeatability:
    """Return a studio’s own repeatability, from all its recipes together.

    s² = Σ |d|² / 6m,  d = step from a lot to the next, m of them      (5)
    mean distance = √2 s √(8/π),  u = that / (2 √m)                    (6)

    Parameters
    ----------
    recipes : sequence of sequence of Lab
        The lots of each recipe on a base, oldest first. [1]

    Returns
    -------
    Repeatability
        Spread, mean distance from lot to lot, and what they rest on. [1]

    Raises
    ------
    MissingError
        If no recipe was dyed and read twice.

    Notes
    -----
    A step longer than twice the median counts as that long, as one lot that went
    wrong says nothing of how well the others repeat. Steps share a lot with their
    neighbours, so the freedom is 2/3 a step in each of three numbers. All recipes are
    taken to repeat alike. Our own choice, after equation 2 of ``causes``.

    Examples
    --------
    >>> found = repeatability([[Lab(50, 0, 0), Lab(50.6, 0, 0), Lab(50, 0, 0)]])
    >>> round(found.sd, 3), found.lots
    (0.245, 3)
    """
    rows = [row for row in recipes if len(row) > 1]
    squares = [
        sum((x - y) ** 2 for x, y in zip(one, two, strict=True))
        for row in rows
        for one, two in pairwise(row)
    ]
    if not squares:
        raise MissingError(
            name="A recipe that was dyed and read twice", argument="recipes"
        )
    longest = CLIP**2 * median(squares)
    count = len(squares)
    sd = sqrt(fsum(min(square, longest) for square in squares) / (6.0 * count))
    apart = sqrt(2.0) * sd * _MEAN_OF_THREE
    return Repeatability(
        sd=sd,
        apart=apart,
        u=apart / (2.0 * sqrt(count)),
        lots=sum(map(len, rows)),
        recipes=len(rows),
    )
