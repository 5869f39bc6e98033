"""Strength: grams of dye in 100 ml of finished stock."""

from shadewright.core.quantities import (
    require_mass,
    require_powder_strength,
    require_strength,
    require_volume,
)


def powder_mass_g(
    *,
    volume_ml: float,
    strength_percent: float,
    powder_strength_percent: float = 100.0,
) -> float:
    """Return the powder to weigh for a stock.

    m = c V / s                                                  (1)

    Parameters
    ----------
    volume_ml : float
        Volume of the finished stock, V; above zero. [mL]
    strength_percent : float
        Strength wanted, c, in g per 100 ml; above 0 to 50. [%]
    powder_strength_percent : float
        Strength of the powder against the dye's standard, s; above 0 to 400. [%]

    Returns
    -------
    float
        Powder to weigh, m. [g]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the powder would be above a tonne.

    Notes
    -----
    Definition of mass/volume percent: made up *to* the volume, not added to
    it. Sellers thin powders with salt or dextrin to a set strength, so a jar
    has a factor of its own (common practice).

    Examples
    --------
    >>> powder_mass_g(volume_ml=500.0, strength_percent=1.0)
    5.0
    >>> powder_mass_g(
    ...     volume_ml=500.0, strength_percent=2.0, powder_strength_percent=80.0
    ... )
    12.5
    """
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    strength = require_strength(strength_percent)
    return require_mass(
        strength * volume / require_powder_strength(powder_strength_percent),
        name="Powder for it",
        argument="volume_ml",
    )


def true_strength_percent(
    *,
    powder_g: float,
    volume_ml: float,
    powder_strength_percent: float = 100.0,
) -> float:
    """Return the strength of a stock from what was really weighed and filled.

    c = m s / V                                                  (2)

    Parameters
    ----------
    powder_g : float
        Powder weighed, m; above zero. [g]
    volume_ml : float
        Volume of the finished, cold stock, V; above zero. [mL]
    powder_strength_percent : float
        Strength of the powder against the dye's standard, s; above 0 to 400. [%]

    Returns
    -------
    float
        Strength, c, in g per 100 ml. [%]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, or the stock would be above 50 %.

    Notes
    -----
    Definition of mass/volume percent.

    Examples
    --------
    >>> true_strength_percent(powder_g=5.2, volume_ml=500.0)
    1.04
    """
    mass = require_mass(powder_g, name="Powder", argument="powder_g")
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    powder_strength = require_powder_strength(powder_strength_percent)
    return require_strength(
        mass * powder_strength / volume, name="True strength", argument="powder_g"
    )
