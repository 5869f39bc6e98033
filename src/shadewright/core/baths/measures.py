"""A volume of stock, the dye in it, and the depth that it gives."""

from shadewright.core.baths.depth import depth_percent as depth_of
from shadewright.core.quantities import (
    MOST_VOLUME_ML,
    require_between,
    require_mass,
    require_strength,
    water_density_g_per_ml,
)


def stock_volume_ml(*, dye_mass_g: float, strength_percent: float) -> float:
    """Return the volume of stock that carries a mass of dye.

    V = 100 m / c                                              (5)

    Parameters
    ----------
    dye_mass_g : float
        Dye wanted, m; above zero. [g]
    strength_percent : float
        True strength of the stock, c, in g per 100 ml; above 0 to 50. [%]

    Returns
    -------
    float
        Volume to measure, V. [mL]

    Raises
    ------
    OutOfRangeError
        If the dye or the strength is out of range.

    Notes
    -----
    Holds for a stock that was made up *to* volume. Source: definition of
    mass/volume per cent; no published example used.

    Examples
    --------
    >>> stock_volume_ml(dye_mass_g=0.6, strength_percent=1.0)
    60.0
    """
    require_mass(dye_mass_g, name="Dye", argument="dye_mass_g")
    return 100 * dye_mass_g / require_strength(strength_percent)


def stock_mass_g(*, volume_ml: float, strength_percent: float) -> float:
    """Return what a volume of stock weighs, for dosing on a scale.

    M = V (rho + c / 100)                                      (6)

    Parameters
    ----------
    volume_ml : float
        Volume of stock, V; zero or more. [mL]
    strength_percent : float
        Strength of the stock, c, in g per 100 ml. [%]

    Returns
    -------
    float
        Mass of that volume at 20 °C, M. [g]

    Raises
    ------
    OutOfRangeError
        If the volume is negative or the strength out of range.

    Notes
    -----
    rho is the density of water at 20 °C, to which the dye's own mass is added
    as if the dye took up no room. Dye does take up room, so the result is a
    little high: by less than the dye's own mass, 1 part in 100 at 1 %.

    Examples
    --------
    >>> round(stock_mass_g(volume_ml=60.0, strength_percent=1.0), 2)
    60.49
    """
    require_between(
        volume_ml,
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name="Volume of stock",
        argument="volume_ml",
    )
    water_g_per_ml = water_density_g_per_ml(temperature_c=20.0)
    return volume_ml * (water_g_per_ml + require_strength(strength_percent) / 100)


def depth_given_percent(
    *, stock_ml: float, strength_percent: float, fibre_mass_g: float
) -> float:
    """Return the depth that a measured volume of stock really gives.

    d = V c / W                                                (7)

    Parameters
    ----------
    stock_ml : float
        Volume measured, V; zero or more. [mL]
    strength_percent : float
        True strength of the stock, c, in g per 100 ml. [%]
    fibre_mass_g : float
        Conditioned weight of the fibre, W; above zero. [g]

    Returns
    -------
    float
        Depth of shade, d, in % on weight of fibre. [%]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.

    Examples
    --------
    >>> depth_given_percent(stock_ml=62.0, strength_percent=1.0, fibre_mass_g=100.0)
    0.62
    """
    dye_g = stock_ml * require_strength(strength_percent) / 100
    return depth_of(dye_mass_g=dye_g, fibre_mass_g=fibre_mass_g)
