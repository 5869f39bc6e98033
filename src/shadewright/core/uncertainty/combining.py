"""How spreads go through a sum, a product and a quotient.

All of a dyer's arithmetic is made of these: a strength is grams over millilitres,
a dose strength times volume, a depth dose over yarn, a merged bottle a sum. To
first order an error in one factor of a product shifts the product by the same
share; an error in one part of a sum shifts the sum by the same amount.
"""

from collections.abc import Iterator
from math import prod

from shadewright.core.uncertainty.values import Term, Value, merged
from shadewright.errors import OutOfRangeError

_NEGLIGIBLE = 1e-9


def total(*parts: Value) -> Value:
    """Return the sum of values.

    y = x1 + x2 + …,  u_i(y) = u_i(x1) + u_i(x2) + …              (2)

    Parameters
    ----------
    *parts : Value
        What is added; a part that is taken off has been ``scaled`` by −1. [any]

    Returns
    -------
    Value
        The sum; an error shared by two parts is added up first. [as parts]

    References
    ----------
    .. [jcgm100] 5.1.2 equation 10, 5.2.2 equation 16

    Examples
    --------
    >>> part = Value(value=20.0, terms=(Term(name="mark", source="mark", u=0.4),))
    >>> total(part, part).u
    0.8
    """
    return Value(
        value=sum(part.value for part in parts),
        terms=merged(term for part in parts for term in part.terms),
    )


def scaled(value: Value, *, by: float) -> Value:
    """Return a value times an exact number.

    Parameters
    ----------
    value : Value
        What is multiplied. [any]
    by : float
        The number, which has no spread. [any]

    Returns
    -------
    Value
        The product, each term by the same factor. [as value times by]

    Examples
    --------
    >>> grams = Value(value=2.0, terms=(Term(name="scale", source="scale", u=0.1),))
    >>> scaled(grams, by=10.0).u
    1.0
    """
    return Value(
        value=value.value * by,
        terms=merged(_times(term, by) for term in value.terms),
    )


def product(*factors: Value) -> Value:
    """Return the product of values.

    y = x1 x2 …,  u_i(y) = Σ_k u_i(x_k) · Π_{j≠k} x_j             (3)

    Parameters
    ----------
    *factors : Value
        What is multiplied. [any]

    Returns
    -------
    Value
        The product, to first order. [product of the units]

    References
    ----------
    .. [jcgm100] 5.1.2 equation 10, 5.1.6 equation 12

    Examples
    --------
    >>> side = Value(value=2.0, terms=(Term(name="rule", source="rule", u=0.1),))
    >>> product(side, side).u
    0.4
    """
    return Value(
        value=prod(factor.value for factor in factors),
        terms=merged(_product_terms(factors)),
    )


def quotient(over: Value, under: Value) -> Value:
    """Return one value divided by another.

    y = a / b,  u_i(y) = u_i(a) / b − a u_i(b) / b²               (4)

    Parameters
    ----------
    over : Value
        What is divided, a. [any]
    under : Value
        What it is divided by, b; not nought. [any]

    Returns
    -------
    Value
        The quotient, to first order. [quotient of the units]

    Raises
    ------
    OutOfRangeError
        If the divisor is nought.

    Notes
    -----
    Good while the divisor's spread is small: at 10 % the next order shifts the
    quotient by 1 %.

    References
    ----------
    .. [jcgm100] 5.1.2 equation 10, 5.1.6 equation 12

    Examples
    --------
    >>> grams = Value(value=5.0, terms=(Term(name="scale", source="scale", u=0.05),))
    >>> quotient(grams, Value(value=500.0)).u_rel
    0.01
    """
    if not under.value:
        raise OutOfRangeError(
            name="What is divided by", given="0", allowed="other than 0"
        )
    inverse = 1.0 / under.value
    ratio = over.value * inverse
    terms = [_times(term, inverse) for term in over.terms]
    terms += [_times(term, -ratio * inverse) for term in under.terms]
    return Value(value=ratio, terms=merged(terms))


def without_dust(value: Value) -> Value:
    """Return a value without terms that are only what a computer rounds.

    Parameters
    ----------
    value : Value
        A value in which an error may have fallen out. [any]

    Returns
    -------
    Value
        The same without terms below a thousand-millionth of it. [as value]

    Examples
    --------
    >>> without_dust(
    ...     Value(value=1.0, terms=(Term(name="mark", source="mark", u=1e-17),))
    ... ).terms
    ()
    """
    least = _NEGLIGIBLE * max(abs(value.value), value.u)
    return Value(
        value=value.value,
        terms=tuple(term for term in value.terms if abs(term.u) > least),
    )


def _product_terms(factors: tuple[Value, ...]) -> Iterator[Term]:
    for place, factor in enumerate(factors):
        others = prod(each.value for each in factors[:place] + factors[place + 1 :])
        for term in factor.terms:
            yield _times(term, others)


def _times(term: Term, by: float) -> Term:
    return Term(name=term.name, source=term.source, u=term.u * by, shape=term.shape)
