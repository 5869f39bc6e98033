"""A value and its spread, each error kept under the name of where it comes from.

A measured value is a number and a list of terms. A term says what one error does
to this value: its standard uncertainty u, in the value's unit, with a sign (more
water in the cylinder makes the stock weaker). Its *source* says which error it is.
Two terms of one source are not two errors but one, wherever they turn up: a bottle
that was filled too full is too weak in each of the three baths that it goes into.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import fsum, inf, isfinite, sqrt

from shadewright.core.uncertainty.shapes import Shape, standard_uncertainty
from shadewright.errors import OutOfRangeError


@dataclass(frozen=True, kw_only=True)
class Term:
    """What one error does to a value: ``u`` is signed, in the value's unit."""

    name: str
    source: str
    u: float
    shape: Shape = Shape.NORMAL


@dataclass(frozen=True, kw_only=True)
class Value:
    """A number with its terms, no two of one source."""

    value: float
    terms: tuple[Term, ...] = ()

    @property
    def u(self) -> float:
        """Standard uncertainty: the root of the sum of squares (JCGM 100, eq. 10)."""
        return sqrt(fsum(term.u * term.u for term in self.terms))

    @property
    def u_rel(self) -> float:
        """Standard uncertainty as a share of the value; infinite at nought."""
        if not self.terms:
            return 0.0
        return self.u / abs(self.value) if self.value else inf


def exact(value: float) -> Value:
    """Return a value without a spread: a definition, or a number that is wished.

    Parameters
    ----------
    value : float
        The number. [any]

    Returns
    -------
    Value
        The number, with no term. [as value]

    Examples
    --------
    >>> exact(100.0).u
    0.0
    """
    return Value(value=float(value))


def bounded(
    value: float, *, half_width: float, shape: Shape, name: str, source: str
) -> Value:
    """Return a value whose one error has bounds.

    Parameters
    ----------
    value : float
        The number that was read. [any]
    half_width : float
        How far it can be off either way; zero or more. [as value]
    shape : Shape
        Rectangular, triangular, or normal with the half-width as its u. [-]
    name : str
        The error in the dyer's words. [-]
    source : str
        Which error it is. [-]

    Returns
    -------
    Value
        The number with its term; with none where the half-width is 0. [as value]

    Raises
    ------
    OutOfRangeError
        If the half-width is negative or not a number.

    Examples
    --------
    >>> read = bounded(
    ...     50.0,
    ...     half_width=1.0,
    ...     shape=Shape.RECTANGULAR,
    ...     name="mark of the cylinder",
    ...     source="cylinder",
    ... )
    >>> round(read.u, 3)
    0.577
    """
    u = standard_uncertainty(half_width=half_width, shape=shape)
    term = Term(name=name, source=source, u=u, shape=shape)
    return Value(value=float(value), terms=merged([term]))


def merged(terms: Iterable[Term]) -> tuple[Term, ...]:
    """Return terms with those of one source added up, signs and all.

    Parameters
    ----------
    terms : iterable of Term
        Terms of one value, in any number. [any]

    Returns
    -------
    tuple of Term
        One term a source, in the order of their first appearance; none of nought.

    Raises
    ------
    OutOfRangeError
        If a term is not a number.

    Notes
    -----
    JCGM 100 [jcgm100]_, 5.2.2, equation 16, with a correlation of 1: what comes
    from one source adds up before it is squared.

    Examples
    --------
    >>> one = Term(name="scale", source="scale", u=0.3)
    >>> [term.u for term in merged([one, one])]
    [0.6]
    """
    together: dict[str, Term] = {}
    for term in terms:
        _require_number(term)
        before = together.get(term.source)
        u = term.u + (before.u if before else 0.0)
        first = before or term
        together[term.source] = Term(
            name=first.name, source=term.source, u=u, shape=first.shape
        )
    return tuple(term for term in together.values() if term.u)


def _require_number(term: Term) -> None:
    if not isfinite(term.u):
        raise OutOfRangeError(
            name="A term of the spread", given=str(term.u), allowed="a number"
        )
