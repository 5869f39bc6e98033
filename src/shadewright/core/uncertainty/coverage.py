"""How far the truth may lie from a value: the interval that holds it.

Twice the standard uncertainty holds 95 % only of a normal error. Where one
rectangle outweighs the rest, as one pour from a cylinder does, twice u is wider
than the rectangle itself. So the interval is taken from the distribution of all
terms together.

That distribution is found through its Fourier series. The characteristic function
of a sum of independent errors is the product of theirs,

    φ(t) = exp(−u² t² / 2)          normal
    φ(t) = sin(a t) / (a t)         rectangular, half-width a
    φ(t) = (sin(a t/2) / (a t/2))²  triangular

and, with T beyond the farthest that the sum can go,

    P(|Y| ≤ y) = y/T + Σ_k  2 φ(kπ/T) sin(kπ y/T) / (kπ)          (6)

There is no chance in it: the same terms give the same interval.
"""

from collections.abc import Iterable, Sequence
from math import exp, fsum, hypot, pi, sin

from shadewright.core.quantities import require_between
from shadewright.core.uncertainty.shapes import HALF_WIDTHS, Shape
from shadewright.core.uncertainty.values import Term, Value

USUAL = 0.95
"""Probability that an interval is stated for where nothing else is said. [-]"""

_NORMAL_REACH = 7.0  # beyond this a normal error holds 3e-12
_MOST_WAVES = 3000
_NEGLIGIBLE = 1e-7
_HALVINGS = 30


def half_width(value: Value, *, coverage: float = USUAL) -> float:
    """Return how far either side of a value the truth lies, so often.

    Parameters
    ----------
    value : Value
        A value with its terms. [any]
    coverage : float
        How often the interval holds the truth, as a share; 0.5 to 0.999. [-]

    Returns
    -------
    float
        Half of the interval; 0 where there is no term. [as value]

    Raises
    ------
    OutOfRangeError
        If the coverage is out of range.

    Notes
    -----
    Source: characteristic functions of the three shapes, and equation 6; the
    interval is the one with equal tails (JCGM 101 [jcgm101]_, 5.3.1).

    Examples
    --------
    >>> from shadewright.core.uncertainty.values import bounded
    >>> mark = bounded(
    ...     50.0, half_width=1.0, shape=Shape.RECTANGULAR, name="mark", source="mark"
    ... )
    >>> round(half_width(mark), 3)
    0.95
    """
    require_between(
        coverage, least=0.5, most=0.999, unit="", name="Coverage", argument="coverage"
    )
    if not value.u:
        return 0.0
    reach = _reach(value.terms)
    waves = _waves(value.terms, reach)
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        low, high = (
            (middle, high) if _inside(middle, waves) < coverage else (low, middle)
        )
    return reach * (low + high) / 2.0


def coverage_factor(value: Value, *, coverage: float = USUAL) -> float:
    """Return how many standard uncertainties the interval reaches either way.

    k = a(p) / u                                                  (7)

    Parameters
    ----------
    value : Value
        A value with its terms. [any]
    coverage : float
        How often the interval holds the truth, as a share; 0.5 to 0.999. [-]

    Returns
    -------
    float
        1.645 for one rectangle, 1.960 for a normal error, at 95 %; 0 without a
        spread. [-]

    Raises
    ------
    OutOfRangeError
        If the coverage is out of range.

    References
    ----------
    .. [jcgm100] 6.2 and G.1.3

    Examples
    --------
    >>> round(
    ...     coverage_factor(
    ...         Value(value=1.0, terms=(Term(name="x", source="x", u=0.1),))
    ...     ),
    ...     2,
    ... )
    1.96
    """
    return half_width(value, coverage=coverage) / value.u if value.u else 0.0


def _reach(terms: Sequence[Term]) -> float:
    """Return T, which the sum never passes."""
    normal = hypot(*(term.u for term in terms if term.shape is Shape.NORMAL))
    bounds = fsum(
        abs(term.u) * HALF_WIDTHS[term.shape]
        for term in terms
        if term.shape is not Shape.NORMAL
    )
    return bounds + _NORMAL_REACH * normal


def _waves(terms: Sequence[Term], reach: float) -> tuple[float, ...]:
    """Return 2 φ(kπ/T) / (kπ) for k = 1, 2, … until nothing more comes."""
    found = []
    for k in range(1, _MOST_WAVES):
        t = k * pi / reach
        if _bound(terms, t) / k < _NEGLIGIBLE:
            break
        found.append(2.0 * _product(_phi(term, t) for term in terms) / (k * pi))
    return tuple(found)


def _inside(share: float, waves: Sequence[float]) -> float:
    """Return P(|Y| ≤ y) for y as a share of T (equation 6)."""
    return share + sum(
        wave * sin(k * pi * share) for k, wave in enumerate(waves, start=1)
    )


def _phi(term: Term, t: float) -> float:
    if term.shape is Shape.NORMAL:
        return exp(-((term.u * t) ** 2) / 2.0)
    at = abs(term.u) * HALF_WIDTHS[term.shape] * t
    return _ripple(at) if term.shape is Shape.RECTANGULAR else _ripple(at / 2.0) ** 2


def _ripple(at: float) -> float:
    """Return sin x / x."""
    return sin(at) / at if at else 1.0


def _bound(terms: Sequence[Term], t: float) -> float:
    """Return a bound of |φ| from here on, without the sine's own noughts."""
    return _product(_envelope(term, t) for term in terms)


def _envelope(term: Term, t: float) -> float:
    if term.shape is Shape.NORMAL:
        return _phi(term, t)
    at = abs(term.u) * HALF_WIDTHS[term.shape] * t
    if term.shape is Shape.RECTANGULAR:
        return 1.0 / max(1.0, at)
    return 4.0 / max(4.0, at * at)


def _product(factors: Iterable[float]) -> float:
    together = 1.0
    for factor in factors:
        together *= factor
    return together
