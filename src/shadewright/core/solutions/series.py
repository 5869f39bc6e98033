"""Rows of strengths: steps of equal factor, dilution upon dilution, and ratios."""

from shadewright.core.quantities import (
    amount_text,
    require_above_zero,
    require_between,
    require_strength,
    require_volume,
)
from shadewright.errors import OutOfRangeError


def geometric_series_percent(
    *, first_percent: float, last_percent: float, steps: int
) -> tuple[float, ...]:
    """Return strengths that fall, or rise, by the same factor at every step.

    c_i = c_1 (c_n/c_1)^((i − 1)/(n − 1))                       (14)

    Parameters
    ----------
    first_percent : float
        First strength, c_1; above 0 to 50. [%]
    last_percent : float
        Last strength, c_n; above 0 to 50. [%]
    steps : int
        How many strengths, n, both ends included; 2 to 100. [-]

    Returns
    -------
    tuple of float
        The strengths. [%]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    Equal factors look like equal steps on yarn; equal differences bunch at
    the dark end (common practice).

    Examples
    --------
    >>> geometric_series_percent(first_percent=2.0, last_percent=0.5, steps=3)
    (2.0, 1.0, 0.5)
    """
    first = require_strength(
        first_percent, name="First strength", argument="first_percent"
    )
    last = require_strength(last_percent, name="Last strength", argument="last_percent")
    count = int(
        require_between(
            steps, least=2, most=100, unit="", name="Steps", argument="steps"
        )
    )
    between = (
        first * (last / first) ** (step / (count - 1)) for step in range(1, count - 1)
    )
    return (first, *between, last)


def serial_series_percent(
    *,
    strength_percent: float,
    stock_parts: float,
    water_parts: float,
    times: int,
) -> tuple[float, ...]:
    """Return the strengths of a serial dilution, the first stock included.

    c_n = c_0 (a/(a + b))^n                                     (15)

    Parameters
    ----------
    strength_percent : float
        Strength of the first stock, c_0; above 0 to 50. [%]
    stock_parts : float
        Parts of stock, a, at each step; above zero. [-]
    water_parts : float
        Parts of water, b, at each step; above zero. [-]
    times : int
        How often, n; 1 to 100. [-]

    Returns
    -------
    tuple of float
        c_0 and the strength after each step. [%]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    Written ``a + b`` and never ``a : b``: "1:9" is one in ten to one reader
    and one in nine to another (common practice). Pouring half away and
    filling up with water is 1 + 1.

    Examples
    --------
    >>> serial_series_percent(
    ...     strength_percent=2.0, stock_parts=1.0, water_parts=1.0, times=3
    ... )
    (2.0, 1.0, 0.5, 0.25)
    """
    strength = require_strength(strength_percent)
    stock, water = (
        require_above_zero(parts, most=1e6, unit="", name="Parts", argument=argument)
        for parts, argument in (
            (stock_parts, "stock_parts"),
            (water_parts, "water_parts"),
        )
    )
    require_between(times, least=1, most=100, unit="", name="Times", argument="times")
    thinner = stock / (stock + water)
    return tuple(strength * thinner**step for step in range(times + 1))


def strength_of_ratio_percent(*, ml_per_g: float) -> float:
    """Return the strength of a ratio: 1:400 is one gram in 400 ml.

    c = 100/n                                                   (16)

    Parameters
    ----------
    ml_per_g : float
        Millilitres of stock to a gram of dye, n. [mL/g]

    Returns
    -------
    float
        Strength, c, in g per 100 ml. [%]

    Raises
    ------
    OutOfRangeError
        If the strength would not be above 0 to 50 %.

    Notes
    -----
    The pharmacist's "ratio strength, w/v".

    References
    ----------
    .. [ansel2012] chapter on percentage and ratio strength (from memory)

    Examples
    --------
    >>> strength_of_ratio_percent(ml_per_g=400.0)
    0.25
    """
    if not ml_per_g >= 2.0:
        raise OutOfRangeError(
            name="Ratio",
            given=amount_text(ml_per_g, "ml to a gram"),
            allowed="at least 2 ml to a gram, which is 50 %",
            argument="ml_per_g",
        )
    return 100.0 / require_volume(ml_per_g, name="Ratio", argument="ml_per_g")


def ratio_ml_per_g(*, strength_percent: float) -> float:
    """Return the ratio of a strength: 0.25 % is 1:400.

    n = 100/c                                                   (17)

    Parameters
    ----------
    strength_percent : float
        Strength, c, in g per 100 ml; above 0 to 50. [%]

    Returns
    -------
    float
        Millilitres of stock to a gram of dye, n. [mL/g]

    Raises
    ------
    OutOfRangeError
        If the strength is not above 0 to 50 %.

    Notes
    -----
    The pharmacist's "ratio strength, w/v".

    References
    ----------
    .. [ansel2012] chapter on percentage and ratio strength (from memory)

    Examples
    --------
    >>> ratio_ml_per_g(strength_percent=0.25)
    400.0
    """
    return 100.0 / require_strength(strength_percent)
