"""Filling to the mark: hot, cold, or by weight on a scale."""

from shadewright.core.quantities import (
    amount_text,
    require_between,
    require_mass,
    require_strength,
    require_volume,
    water_density_g_per_ml,
)

USED_AT_C = 20.0
"""Where measuring ware is true, and about where a stock is drawn. [°C]"""

WORTH_A_WARNING = 0.005
"""Relative error of strength from which a hot fill is warned of. [-]"""


def cooled_strength_percent(
    *, strength_percent: float, filled_at_c: float, used_at_c: float = USED_AT_C
) -> float:
    """Return the strength, once cool, of a stock that was made up hot.

    c' = c rho(t_used) / rho(t_filled)                           (3)

    Parameters
    ----------
    strength_percent : float
        Strength that it was made up to, c, in g per 100 ml; above 0 to 50. [%]
    filled_at_c : float
        Temperature of the liquid when it stood at the mark; 0 to 100. [°C]
    used_at_c : float
        Temperature at which it is drawn; 0 to 100. [°C]

    Returns
    -------
    float
        Strength when it is drawn, c'. [%]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    The stock is taken to shrink as water does; the vessel, which shrinks some
    forty times less if it is of borosilicate glass, is left out.

    References
    ----------
    .. [kell1975] equation 16 (from memory)

    Examples
    --------
    >>> strong = cooled_strength_percent(strength_percent=1.0, filled_at_c=80.0)
    >>> round(strong, 3)
    1.027
    """
    strength = require_strength(strength_percent)
    dense = water_density_g_per_ml(temperature_c=_liquid(used_at_c, "used_at_c"))
    hot = water_density_g_per_ml(temperature_c=_liquid(filled_at_c, "filled_at_c"))
    return strength * dense / hot


def hot_fill_warning(*, strength_percent: float, filled_at_c: float) -> str | None:
    """Return the warning for a stock that is made up to the mark while hot.

    Parameters
    ----------
    strength_percent : float
        Strength that it is made up to, in g per 100 ml; above 0 to 50. [%]
    filled_at_c : float
        Temperature of the liquid at the mark; 0 to 100. [°C]

    Returns
    -------
    str or None
        A whole sentence; None where the error is below half a percent. [-]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    See ``cooled_strength_percent``. Half a percent is our choice: the best
    kitchen scale does no better.

    Examples
    --------
    >>> hot_fill_warning(strength_percent=1.0, filled_at_c=20.0) is None
    True
    """
    cooled = cooled_strength_percent(
        strength_percent=strength_percent, filled_at_c=filled_at_c
    )
    error = cooled / strength_percent - 1.0
    if error < WORTH_A_WARNING:
        return None
    return (
        f"Made up to the mark at {amount_text(filled_at_c, '°C')}, the stock is "
        f"{amount_text(round(100.0 * error, 1), '%')} too strong once it is cool "
        f"({amount_text(cooled, '%')}): let it cool, then make up to the mark."
    )


def filled_mass_g(
    *, volume_ml: float, powder_g: float, filled_at_c: float = USED_AT_C
) -> float:
    """Return what the finished stock weighs, without its vessel.

    M = V rho(t) + m                                             (4)

    Parameters
    ----------
    volume_ml : float
        Volume of the finished stock, V; above zero. [mL]
    powder_g : float
        Powder in it, m; above zero. [g]
    filled_at_c : float
        Temperature of the liquid, t; 0 to 100. [°C]

    Returns
    -------
    float
        Mass of water and powder together, M. [g]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    Reckoned as if the dissolved powder took no room. It does take some, less
    than 1 ml a gram, since dye powders sink in water; so a stock filled by
    weight comes out weaker by less than its own percentage (a 1 % stock by
    less than a hundredth). The push of the air, a thousandth, is left out.

    Examples
    --------
    >>> round(filled_mass_g(volume_ml=500.0, powder_g=5.0), 1)
    504.1
    """
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    powder = require_mass(powder_g, name="Powder", argument="powder_g")
    density = water_density_g_per_ml(temperature_c=_liquid(filled_at_c, "filled_at_c"))
    return volume * density + powder


def _liquid(temperature_c: float, argument: str) -> float:
    """Return a temperature at which a stock is neither ice nor steam."""
    return require_between(
        temperature_c,
        least=0.0,
        most=100.0,
        unit="°C",
        name="Temperature",
        argument=argument,
    )
