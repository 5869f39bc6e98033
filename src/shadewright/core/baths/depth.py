"""Depth of shade: how much dye a weight of fibre is given.

Depth is dye in per cent of the fibre's weight (% owf, "on weight of fibre"):
1 % is 1 g of dye to 100 g of yarn. It says how much dye, never which colour;
two dyes at 1 % do not look equally deep.
"""

from math import fsum
from typing import Final

from shadewright.core.quantities import (
    MOST_MASS_G,
    amount_text,
    is_more,
    require_above_zero,
    require_between,
    require_mass,
)
from shadewright.core.tables.units import GRAMS_PER_OUNCE, GRAMS_PER_POUND

MOST_DEPTH_PERCENT: Final = 50.0
DEEP_TOTAL_PERCENT: Final = 6.0  # common practice: navy and black take about 4


def dye_mass_g(*, fibre_mass_g: float, depth_percent: float) -> float:
    """Return the dye that gives a weight of fibre a depth of shade.

    m = W d / 100                                              (1)

    Parameters
    ----------
    fibre_mass_g : float
        Conditioned weight of the fibre, W; above zero. [g]
    depth_percent : float
        Depth of shade, d, in % on weight of fibre; above 0 to 50. [%]

    Returns
    -------
    float
        Dye of standard strength, m. [g]

    Raises
    ------
    OutOfRangeError
        If the weight or the depth is out of range.

    Notes
    -----
    Checked with [gate2009]_, question 56.

    Examples
    --------
    >>> dye_mass_g(fibre_mass_g=300.0, depth_percent=3.0)
    9.0
    """
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    require_above_zero(
        depth_percent,
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name="Depth of shade",
        argument="depth_percent",
    )
    return fibre_mass_g * depth_percent / 100


def depth_percent(*, dye_mass_g: float, fibre_mass_g: float) -> float:
    """Return the depth of shade that a mass of dye gives a weight of fibre.

    d = 100 m / W                                              (2)

    Parameters
    ----------
    dye_mass_g : float
        Dye of standard strength, m; zero or more. [g]
    fibre_mass_g : float
        Conditioned weight of the fibre, W; above zero. [g]

    Returns
    -------
    float
        Depth of shade, d, in % on weight of fibre. [%]

    Raises
    ------
    OutOfRangeError
        If the dye is negative or the weight out of range.

    Examples
    --------
    >>> depth_percent(dye_mass_g=4.0, fibre_mass_g=100.0)
    4.0
    """
    require_between(
        dye_mass_g,
        least=0.0,
        most=MOST_MASS_G,
        unit="g",
        name="Dye",
        argument="dye_mass_g",
    )
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    return 100 * dye_mass_g / fibre_mass_g


def depth_from_g_per_lb_percent(*, dye_g_per_lb: float) -> float:
    """Return the depth of a recipe written in grams of dye to a pound of fibre.

    d = 100 x / 453.59237                                      (3)

    Parameters
    ----------
    dye_g_per_lb : float
        Dye to a pound of fibre, x; zero or more. [g/lb]

    Returns
    -------
    float
        Depth of shade, d, in % on weight of fibre. [%]

    Raises
    ------
    OutOfRangeError
        If the dye is negative.

    Notes
    -----
    1 lb = 453.59237 g exactly [thompson2008]_.

    Examples
    --------
    >>> round(depth_from_g_per_lb_percent(dye_g_per_lb=30.0), 2)
    6.61
    """
    return depth_percent(dye_mass_g=dye_g_per_lb, fibre_mass_g=GRAMS_PER_POUND)


def depth_from_g_per_oz_percent(*, dye_g_per_oz: float) -> float:
    """Return the depth of a recipe written in grams of dye to an ounce of fibre.

    d = 100 x / 28.349523125                                   (4)

    Parameters
    ----------
    dye_g_per_oz : float
        Dye to an ounce of fibre, x; zero or more. [g/oz]

    Returns
    -------
    float
        Depth of shade, d, in % on weight of fibre. [%]

    Raises
    ------
    OutOfRangeError
        If the dye is negative.

    Examples
    --------
    >>> round(depth_from_g_per_oz_percent(dye_g_per_oz=1.0), 3)
    3.527
    """
    return depth_percent(dye_mass_g=dye_g_per_oz, fibre_mass_g=GRAMS_PER_OUNCE)


def total_depth_percent(*, depths_percent: tuple[float, ...]) -> float:
    """Return the depth of all dyes of a bath together.

    Parameters
    ----------
    depths_percent : tuple of float
        Depth of each dye, in % on weight of fibre. [%]

    Returns
    -------
    float
        Their sum. [%]

    Examples
    --------
    >>> total_depth_percent(depths_percent=(0.75, 0.25))
    1.0
    """
    return fsum(depths_percent)


def depth_caution(*, total_depth_percent: float) -> str | None:
    """Return a caution where a bath holds more dye than fibre commonly takes.

    Parameters
    ----------
    total_depth_percent : float
        All dyes together, in % on weight of fibre. [%]

    Returns
    -------
    str or None
        A sentence above 6 %, else None. [-]

    Notes
    -----
    Past saturation further dye stays in the bath. Where that lies differs by
    dye and fibre; navy and black are commonly dyed at about 4 %, and the 6 %
    is common practice, no measured limit.

    Examples
    --------
    >>> depth_caution(total_depth_percent=4.0) is None
    True
    """
    if not is_more(total_depth_percent, than=DEEP_TOTAL_PERCENT):
        return None
    return (
        f"All dyes together are {amount_text(total_depth_percent, '%')}, more than "
        "yarn commonly takes up: what it does not take stays in the bath and comes "
        "off in the rinse. Try a swatch first."
    )
