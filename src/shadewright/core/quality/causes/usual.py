"""The usual lot: a mean of the lots in control, in which the newest count most."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum
from typing import Final, TypeVar

from shadewright.core.colour import Lab
from shadewright.core.quality.causes.hotelling import t_squared
from shadewright.core.quality.causes.matrices import Three, three
from shadewright.core.quality.causes.noise import noise_of

T = TypeVar("T")

HALF_LIFE: Final = 5.0
"""So many lots later a lot counts half. [-]"""

OUT_OF_CONTROL: Final = 14.0
"""A lot with a greater T² is left out of the mean: 1 in 5000 by noise alone. [1]"""

FEWEST: Final = 3
"""With fewer lots nothing is told to be unusual. [-]"""

_ROUNDS: Final = 2


@dataclass(frozen=True, kw_only=True)
class Usual:
    """What each earlier lot counts in the mean; nought where it was out of control."""

    weights: tuple[float, ...]

    @property
    def scatter(self) -> float:
        """Variance of the mean, as a share of that of one lot."""
        return fsum(weight * weight for weight in self.weights)

    def kept(self, values: Sequence[T]) -> list[T]:
        """Return what belongs to the lots in control."""
        pairs = zip(values, self.weights, strict=True)
        return [value for value, weight in pairs if weight]

    def mean(self, values: Sequence[Sequence[float]]) -> Three:
        """Return the mean of three numbers a lot."""
        columns = zip(*values, strict=True)
        return three([
            fsum(w * x for w, x in zip(self.weights, column, strict=True))
            for column in columns
        ])


def usual_of(colours: Sequence[Lab]) -> Usual:
    """Return what each lot counts in the mean of the lots in control.

    w_i ∝ 2^(−(n − i) / 5),  Σ w = 1                               (7)

    Parameters
    ----------
    colours : sequence of Lab
        The earlier lots, oldest first; at least one. [1]

    Returns
    -------
    Usual
        The weights. [-]

    Notes
    -----
    A lot far outside the noise is left out, unless that leaves fewer than half. Our
    choice; jars and yarn change for good, so an old lot is worth less.

    Examples
    --------
    >>> usual_of([Lab(50, 0, 0)] * 6).weights[0] * 2 == usual_of(
    ...     [Lab(50, 0, 0)] * 6
    ... ).weights[5]
    True
    """
    count = len(colours)
    fresh = [2.0 ** (-(count - 1 - place) / HALF_LIFE) for place in range(count)]
    covariance = noise_of(colours).covariance
    usual = _scaled(fresh)
    for _ in range(_ROUNDS):
        mean = usual.mean(colours)
        kept = [
            weight if t_squared(_step(mean, colour), covariance) < OUT_OF_CONTROL else 0
            for weight, colour in zip(fresh, colours, strict=True)
        ]
        if sum(map(bool, kept)) < max(FEWEST, count / 2):
            break
        usual = _scaled(kept)
    return usual


def _scaled(weights: Sequence[float]) -> Usual:
    whole = fsum(weights)
    return Usual(weights=tuple(weight / whole for weight in weights))


def _step(start: Sequence[float], end: Sequence[float]) -> Three:
    return three([two - one for one, two in zip(start, end, strict=True)])
