"""A volume of stock, the dye in it, and the depth that it gives."""

from typing import Final

from shadewright.core.baths.depth import depth_percent as depth_of
from shadewright.core.quantities import (
    MOST_MASS_G,
    MOST_VOLUME_ML,
    require_between,
    require_mass,
    require_strength,
    water_density_g_per_ml,
)

DOSE_SLACK: Final = 0.01  # common practice: a hundredth is never seen
LEAST_SLACK_ML: Final = 0.1  # what a syringe can be read to


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
    require_between(
        stock_ml,
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name="Volume of stock",
        argument="stock_ml",
    )
    dye_g = stock_ml * require_strength(strength_percent) / 100
    return depth_of(dye_mass_g=dye_g, fibre_mass_g=fibre_mass_g)


def weighed_mass_g(*, volume_ml: float, strength_percent: float) -> float:
    """Return what a volume of stock weighs.

    M = V (rho + c / 100)                                      (6)

    Parameters
    ----------
    volume_ml : float
        Volume, V; zero or more. [mL]
    strength_percent : float
        Strength of the stock, c, in g per 100 ml. [%]

    Returns
    -------
    float
        Mass, M, with rho the density of water at 20 °C. [g]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.

    Examples
    --------
    >>> round(weighed_mass_g(volume_ml=60.0, strength_percent=1.0), 2)
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
    return volume_ml * _g_per_ml(strength_percent)


def weighed_volume_ml(*, mass_g: float, strength_percent: float) -> float:
    """Return the volume of stock that was weighed out.

    V = M / (rho + c / 100)                                    (24)

    Parameters
    ----------
    mass_g : float
        Mass weighed, M; zero or more. [g]
    strength_percent : float
        Strength of the stock, c, in g per 100 ml. [%]

    Returns
    -------
    float
        Volume, V, with rho the density of water at 20 °C. [mL]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.

    Examples
    --------
    >>> round(weighed_volume_ml(mass_g=60.492, strength_percent=1.0), 2)
    60.0
    """
    require_between(
        mass_g,
        least=0.0,
        most=MOST_MASS_G,
        unit="g",
        name="Stock on the scale",
        argument="mass_g",
    )
    return mass_g / _g_per_ml(strength_percent)


def dose_slack_ml(*, volume_ml: float) -> float:
    """Return by how much a measured dose may be out without being minded.

    Parameters
    ----------
    volume_ml : float
        The dose. [mL]

    Returns
    -------
    float
        A hundredth of it, at least the 0.1 ml that a syringe can be read to. [mL]

    Notes
    -----
    Common practice; no source.

    Examples
    --------
    >>> dose_slack_ml(volume_ml=50.0)
    0.5
    """
    return max(DOSE_SLACK * volume_ml, LEAST_SLACK_ML)


def _g_per_ml(strength_percent: float) -> float:
    water = water_density_g_per_ml(temperature_c=20.0)
    return water + require_strength(strength_percent) / 100
