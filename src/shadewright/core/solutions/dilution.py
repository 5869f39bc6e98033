"""Weaker stocks from stronger ones."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.quantities import (
    require_above_zero,
    require_strength,
    require_volume,
)
from shadewright.core.solutions.alligation import Portion, first_share, mixture


@dataclass(frozen=True, kw_only=True)
class Dilution:
    """How to thin a stock: so much stock, made up with about so much water."""

    stock_ml: float
    water_ml: float


@dataclass(frozen=True, kw_only=True)
class Blend:
    """How to mix two stocks: so much of the first and of the second."""

    first_ml: float
    second_ml: float


def dilution(*, have_percent: float, want_percent: float, volume_ml: float) -> Dilution:
    """Return the stock and the water for a weaker stock.

    V1 = V2 c2 / c1                                             (12)

    Parameters
    ----------
    have_percent : float
        Strength of the stock at hand, c1; above 0 to 50. [%]
    want_percent : float
        Strength wanted, c2; above 0 and at most c1. [%]
    volume_ml : float
        Volume wanted, V2; above zero. [mL]

    Returns
    -------
    Dilution
        Stock to take, V1, and water, V2 − V1. [mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or more strength is wanted than
        the stock has.

    Notes
    -----
    Exact when made up *to* V2; the water is then what is needed, save for the
    little that volumes may shrink on mixing.

    References
    ----------
    .. [openstax2019] chapter 3, dilution of solutions (from memory)

    Examples
    --------
    >>> dilution(have_percent=2.0, want_percent=0.5, volume_ml=250.0)
    Dilution(stock_ml=62.5, water_ml=187.5)
    """
    have = require_strength(have_percent, name="Stock", argument="have_percent")
    want = require_above_zero(
        want_percent,
        most=have,
        unit="%",
        name="Strength wanted",
        argument="want_percent",
        advice="Water cannot make a stock stronger: add powder or a stronger stock.",
    )
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    stock = volume * (want / have)
    return Dilution(stock_ml=stock, water_ml=volume - stock)


def blend(
    *,
    first_percent: float,
    second_percent: float,
    want_percent: float,
    volume_ml: float,
) -> Blend:
    """Return how much of two stocks gives a third.

    V1 = V (c − c2)/(c1 − c2),   V2 = V − V1                    (13)

    Parameters
    ----------
    first_percent : float
        Strength of the first stock, c1; above 0 to 50. [%]
    second_percent : float
        Strength of the second stock, c2; above 0 to 50. [%]
    want_percent : float
        Strength wanted, c; from the one to the other. [%]
    volume_ml : float
        Volume wanted, V; above zero. [mL]

    Returns
    -------
    Blend
        Volumes of the first and the second stock. [mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the strength wanted does not
        lie between the two.

    Notes
    -----
    Volumes are taken to add up.

    References
    ----------
    .. [ansel2012] chapter on dilution and alligation (from memory)

    Examples
    --------
    >>> blend(first_percent=1.0, second_percent=0.5, want_percent=0.75, volume_ml=250.0)
    Blend(first_ml=125.0, second_ml=125.0)
    """
    share = first_share(
        first_percent=require_strength(first_percent, argument="first_percent"),
        second_percent=require_strength(second_percent, argument="second_percent"),
        want_percent=want_percent,
    )
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    return Blend(first_ml=volume * share, second_ml=volume * (1.0 - share))


def merged(portions: Sequence[Portion]) -> Portion:
    """Return the stock that results when part bottles are poured together.

    Parameters
    ----------
    portions : sequence of Portion
        Part bottles of one dye; at least one, each above 0 to 50 %. [mL, %]

    Returns
    -------
    Portion
        The stock together. [mL, %]

    Raises
    ------
    MissingError
        If there is no bottle.
    OutOfRangeError
        If a volume or a strength lies outside its range.

    Notes
    -----
    Alligation medial, for stocks. It does not matter which are poured first.

    Examples
    --------
    >>> merged([Portion(volume_ml=100.0, strength_percent=1.0)])
    Portion(volume_ml=100.0, strength_percent=1.0)
    """
    for portion in portions:
        require_strength(portion.strength_percent, argument="portions")
    return mixture(portions)
