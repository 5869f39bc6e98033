"""Stronger: a part bottle brought up with powder or with a stronger stock."""

from shadewright.core.quantities import (
    MOST_STRENGTH_PERCENT,
    amount_text,
    require_between,
    require_powder_strength,
    require_strength,
    require_volume,
)
from shadewright.errors import OutOfRangeError


def powder_to_strengthen_g(
    *,
    volume_ml: float,
    have_percent: float,
    want_percent: float,
    powder_strength_percent: float = 100.0,
) -> float:
    """Return the powder that makes a part bottle stronger.

    dm = V (c − c0)/s                                            (8)

    Parameters
    ----------
    volume_ml : float
        What is in the bottle, V; above zero. [mL]
    have_percent : float
        Strength now, c0, in g per 100 ml; above 0 to 50. [%]
    want_percent : float
        Strength wanted, c; from c0 to 50. [%]
    powder_strength_percent : float
        Strength of the powder against the dye's standard, s; above 0 to 400. [%]

    Returns
    -------
    float
        Powder to add, dm; zero or more. [g]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the bottle is stronger already.

    Notes
    -----
    The room that the powder takes is left out.

    Examples
    --------
    >>> grams = powder_to_strengthen_g(
    ...     volume_ml=400.0, have_percent=0.5, want_percent=1.0
    ... )
    >>> grams
    2.0
    """
    have = require_strength(have_percent, name="Strength now", argument="have_percent")
    want = _stronger(want_percent, than=have)
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    powder_strength = require_powder_strength(powder_strength_percent)
    return volume * (want - have) / powder_strength


def stock_to_strengthen_ml(
    *,
    volume_ml: float,
    have_percent: float,
    want_percent: float,
    stronger_percent: float,
) -> float:
    """Return the stronger stock that makes a part bottle stronger.

    V_s = V (c − c0)/(c_s − c)                                   (9)

    Parameters
    ----------
    volume_ml : float
        What is in the bottle, V; above zero. [mL]
    have_percent : float
        Strength now, c0, in g per 100 ml; above 0 to 50. [%]
    want_percent : float
        Strength wanted, c; at least c0 and below c_s. [%]
    stronger_percent : float
        Strength of the stronger stock, c_s; above 0 to 50. [%]

    Returns
    -------
    float
        Stronger stock to add, V_s; zero or more. [mL]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the stronger stock is not
        stronger than what is wanted.

    Notes
    -----
    Alligation alternate with the first volume given.

    Examples
    --------
    >>> millilitres = stock_to_strengthen_ml(
    ...     volume_ml=400.0, have_percent=0.5, want_percent=1.0, stronger_percent=2.0
    ... )
    >>> millilitres
    200.0
    """
    have = require_strength(have_percent, name="Strength now", argument="have_percent")
    want = _stronger(want_percent, than=have)
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    stronger = require_strength(
        stronger_percent, name="Stronger stock", argument="stronger_percent"
    )
    if stronger <= want:
        raise OutOfRangeError(
            name="Stronger stock",
            given=amount_text(stronger, "%"),
            allowed=f"stronger than the {amount_text(want, '%')} that is wanted",
            argument="stronger_percent",
        )
    return volume * (want - have) / (stronger - want)


def _stronger(want_percent: float, *, than: float) -> float:
    """Return the strength wanted if it is not weaker than the bottle."""
    return require_between(
        want_percent,
        least=than,
        most=MOST_STRENGTH_PERCENT,
        unit="%",
        name="Strength wanted",
        argument="want_percent",
        advice="To make a stock weaker, dilute it.",
    )
