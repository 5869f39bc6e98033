"""Spreads by drawing lots, where a straight line no longer does.

To first order an error of 30 % in a small dose, divided by yarn that is itself
unsure, is a straight line; in truth it is not, and nothing measured can be less
than nothing. So every error is drawn, each source once, the values reckoned with
what was drawn, and the middle 95 % of the answers taken.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import prod
from typing import Protocol

from shadewright.core.quantities import require_between
from shadewright.core.uncertainty.coverage import USUAL
from shadewright.core.uncertainty.shapes import HALF_WIDTHS, Shape
from shadewright.core.uncertainty.values import Term, Value
from shadewright.errors import OutOfRangeError

DRAWS = 10_000
"""Draws that find the ends of a 95 % interval to about 2 % of its width. [-]"""

WIDE = 0.1
"""Relative standard uncertainty of a factor from which lots are drawn. [-]"""


class RandomSource(Protocol):
    """What draws: a seeded generator of the caller's."""

    def random(self) -> float:
        """Return a number from 0 to 1."""

    def gauss(self, mu: float, sigma: float) -> float:
        """Return a normal number."""


@dataclass(frozen=True, kw_only=True)
class Interval:
    """From where to where the truth lies, so often as ``coverage`` says."""

    low: float
    high: float
    coverage: float


def is_wide(*factors: Value) -> bool:
    """Return whether a factor is so unsure that first order will not do.

    Parameters
    ----------
    *factors : Value
        What is multiplied or divided by. [any]

    Returns
    -------
    bool
        Whether one has a relative standard uncertainty above a tenth. [-]

    Notes
    -----
    At a tenth the next order shifts a quotient by a hundredth: our choice.

    Examples
    --------
    >>> is_wide(Value(value=0.5, terms=(Term(name="pour", source="pour", u=0.1),)))
    True
    """
    return any(factor.u_rel > WIDE for factor in factors)


def sampled_interval(
    *,
    over: Sequence[Value],
    under: Sequence[Value] = (),
    generator: RandomSource,
    coverage: float = USUAL,
    draws: int = DRAWS,
) -> Interval:
    """Return the interval of a product, or of a quotient of products, by drawing.

    y = Π over / Π under, each error drawn once a turn              (8)

    Parameters
    ----------
    over : sequence of Value
        Factors; none of them can be below nought. [any]
    under : sequence of Value
        Divisors; draws in which one is not above nought are drawn anew. [any]
    generator : RandomSource
        Where the draws come from; the same seed gives the same interval. [-]
    coverage : float
        How often the interval holds the truth, as a share; 0.5 to 0.999. [-]
    draws : int
        How many turns; 100 to a million. [-]

    Returns
    -------
    Interval
        The ends that leave equal tails. [over / under]

    Raises
    ------
    OutOfRangeError
        If coverage or draws are out of range, or a divisor is never above nought.

    References
    ----------
    .. [jcgm101] 7.2 to 7.7

    Examples
    --------
    >>> from random import Random
    >>> dose = Value(value=1.0, terms=(Term(name="pour", source="pour", u=0.01),))
    >>> found = sampled_interval(over=[dose], generator=Random(1))
    >>> round(found.low, 2), round(found.high, 2)
    (0.98, 1.02)
    """
    require_between(
        coverage, least=0.5, most=0.999, unit="", name="Coverage", argument="coverage"
    )
    require_between(
        draws, least=100, most=1_000_000, unit="", name="Draws", argument="draws"
    )
    _require_divisible(under)
    found = sorted(_turn(over, under, generator) for _ in range(draws))
    tail = (1.0 - coverage) / 2.0
    return Interval(
        low=found[round(tail * (draws - 1))],
        high=found[round((1.0 - tail) * (draws - 1))],
        coverage=coverage,
    )


def _require_divisible(under: Sequence[Value]) -> None:
    for each in under:
        if each.value <= 0.0:
            raise OutOfRangeError(
                name="What is divided by", given=str(each.value), allowed="above 0"
            )


def _turn(
    over: Sequence[Value], under: Sequence[Value], generator: RandomSource
) -> float:
    while True:
        drawn: dict[str, float] = {}
        divisor = prod(_drawn(each, drawn, generator) for each in under)
        if divisor > 0.0:
            break
    return prod(_drawn(each, drawn, generator) for each in over) / divisor


def _drawn(value: Value, drawn: dict[str, float], generator: RandomSource) -> float:
    """Return a value with its errors as drawn this turn; never below nought."""
    found = value.value
    for term in value.terms:
        if term.source not in drawn:
            drawn[term.source] = _error(term, generator)
        found += term.u * drawn[term.source]
    return max(found, 0.0)


def _error(term: Term, generator: RandomSource) -> float:
    """Return an error of standard uncertainty 1, of the term's shape."""
    if term.shape is Shape.NORMAL:
        return generator.gauss(0.0, 1.0)
    first = 2.0 * generator.random() - 1.0
    if term.shape is Shape.RECTANGULAR:
        return first * HALF_WIDTHS[term.shape]
    second = 2.0 * generator.random() - 1.0
    return (first + second) / 2.0 * HALF_WIDTHS[term.shape]
