"""How sure a strength is after stock, water or powder came in.

Each liquid brings its errors by its share. What both bring from the same source is
one error still: two halves of one bottle, poured together, are as sure as it was.
"""

from shadewright.core.uncertainty import (
    Value,
    product,
    quotient,
    scaled,
    total,
    without_dust,
)


def joined_strength(
    *,
    first_percent: Value,
    first_ml: Value,
    second_percent: Value,
    second_ml: Value,
) -> Value:
    """Return the strength of two liquids together; water has a strength of 0.

    c = (c1 V1 + c2 V2)/(V1 + V2)                                (20)

    Parameters
    ----------
    first_percent : Value
        Strength of the first, c1. [%]
    first_ml : Value
        Volume of the first, V1. [mL]
    second_percent : Value
        Strength of the second, c2. [%]
    second_ml : Value
        Volume of the second, V2. [mL]

    Returns
    -------
    Value
        Strength together; an error that both share stays one. [%]

    Raises
    ------
    OutOfRangeError
        If there is nothing to pour.

    Notes
    -----
    Where both are as strong, it does not matter how much of each there is.
    Volumes are taken to add up.

    Examples
    --------
    >>> from shadewright.core.uncertainty import Term, exact
    >>> scale = Term(name="scale", source="scale", u=0.1)
    >>> stock = Value(value=1.0, terms=(scale,))
    >>> both = joined_strength(
    ...     first_percent=stock,
    ...     first_ml=exact(100),
    ...     second_percent=exact(0),
    ...     second_ml=exact(100),
    ... )
    >>> both.value, both.u_rel
    (0.5, 0.1)
    """
    dye = total(product(first_percent, first_ml), product(second_percent, second_ml))
    return without_dust(quotient(dye, total(first_ml, second_ml)))


def diluted_strength(*, stock_percent: Value, stock_ml: Value, filled: Value) -> Value:
    """Return the strength of a stock that was thinned and made up to a mark.

    c' = c V1/V2                                                 (21)

    Parameters
    ----------
    stock_percent : Value
        Strength of the stock, c. [%]
    stock_ml : Value
        Stock that was taken, V1. [mL]
    filled : Value
        Volume that it was made up to, V2. [mL]

    Returns
    -------
    Value
        Strength, c'. A row of dilutions is made by going on from the last. [%]

    Raises
    ------
    OutOfRangeError
        If it was made up to nothing.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> half = diluted_strength(
    ...     stock_percent=exact(2), stock_ml=exact(50), filled=exact(100)
    ... )
    >>> half.value
    1.0
    """
    return without_dust(quotient(product(stock_percent, stock_ml), filled))


def strengthened_strength(*, have_percent: Value, volume: Value, dye: Value) -> Value:
    """Return the strength of a stock that powder was added to.

    c' = c + 100 m/V                                             (22)

    Parameters
    ----------
    have_percent : Value
        Strength before, c. [%]
    volume : Value
        Volume in the bottle, V. [mL]
    dye : Value
        Dye of standard strength that was added, m. [g]

    Returns
    -------
    Value
        Strength, c'. [%]

    Raises
    ------
    OutOfRangeError
        If the bottle is empty.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> more = strengthened_strength(
    ...     have_percent=exact(1), volume=exact(500), dye=exact(2.5)
    ... )
    >>> more.value
    1.5
    """
    return without_dust(total(have_percent, scaled(quotient(dye, volume), by=100.0)))
