"""Liquor: the water of a bath, and how much of it is still to be poured in.

The liquor is all the liquid of the bath. Stock, vinegar and the water in
wetted-out yarn belong to it, so the fresh water is what is left.
"""

from dataclasses import dataclass
from typing import Final

from shadewright.core.quantities import (
    MOST_VOLUME_ML,
    amount_text,
    is_more,
    number_text,
    require_above_zero,
    require_between,
    require_mass,
    require_volume,
)
from shadewright.errors import OutOfRangeError

ROOM_TO_SPARE: Final = 1.1
"""A pot or jar holds so many times its liquor (common practice: a tenth). [1]"""

MOST_RATIO: Final = 1000.0


@dataclass(frozen=True, kw_only=True)
class WaterBalance:
    """Where a bath's liquor comes from.

    ``excess_ml`` is what stock, other liquids and wet yarn bring beyond the
    liquor that was asked for; ``liquor_ratio`` is the one that then results.
    """

    liquor_ml: float
    stock_ml: float
    other_ml: float
    wet_yarn_ml: float
    fresh_water_ml: float
    excess_ml: float
    liquor_ratio: float


def liquor_ml(*, fibre_mass_g: float, liquor_ratio: float) -> float:
    """Return the volume of a bath from its liquor ratio.

    B = L W                                                    (8)

    Parameters
    ----------
    fibre_mass_g : float
        Conditioned weight of the fibre, W; above zero. [g]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn, L; above 0 to 1000. [L/kg]

    Returns
    -------
    float
        Volume of the bath, B. [mL]

    Raises
    ------
    OutOfRangeError
        If the weight or the ratio is out of range, or the bath above 1000 l.

    Notes
    -----
    Litres to the kilogram are millilitres to the gram; "1:30" and "30:1" are
    both 30. Checked with [gate2009]_, question 56.

    Examples
    --------
    >>> liquor_ml(fibre_mass_g=100.0, liquor_ratio=30.0)
    3000.0
    """
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    require_above_zero(
        liquor_ratio,
        most=MOST_RATIO,
        unit="l/kg",
        name="Liquor ratio",
        argument="liquor_ratio",
    )
    return require_volume(
        liquor_ratio * fibre_mass_g, name="Liquor", argument="liquor_ratio"
    )


def water_in_wet_yarn_ml(*, wet_mass_g: float, fibre_mass_g: float) -> float:
    """Return the water that wetted-out yarn carries into the bath.

    w = M − W                                                  (9)

    Parameters
    ----------
    wet_mass_g : float
        Weight of the wet yarn, M; at least the fibre's own. [g]
    fibre_mass_g : float
        Conditioned weight of the same yarn, W; above zero. [g]

    Returns
    -------
    float
        Water carried in, w. [mL]

    Raises
    ------
    OutOfRangeError
        If the wet yarn weighs less than the fibre.

    Notes
    -----
    A gram of water is taken as a millilitre (0.2 % off at 20 °C). Source:
    common practice.

    Examples
    --------
    >>> water_in_wet_yarn_ml(wet_mass_g=200.0, fibre_mass_g=100.0)
    100.0
    """
    require_mass(wet_mass_g, name="Wet yarn", argument="wet_mass_g")
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    if wet_mass_g < fibre_mass_g:
        raise OutOfRangeError(
            name="Wet yarn",
            given=amount_text(wet_mass_g, "g"),
            allowed=f"at least the fibre’s own {amount_text(fibre_mass_g, 'g')}",
            advice="Weigh the yarn with the water in it.",
            argument="wet_mass_g",
        )
    return wet_mass_g - fibre_mass_g


def water_balance(
    *,
    fibre_mass_g: float,
    liquor_ratio: float,
    stock_ml: float = 0.0,
    other_ml: float = 0.0,
    wet_yarn_ml: float = 0.0,
) -> WaterBalance:
    """Return the fresh water left to add once all other liquid is counted.

    F = max(0, B − S − A − w)                                 (10)

    Parameters
    ----------
    fibre_mass_g : float
        Conditioned weight of the fibre, W; above zero. [g]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn. [L/kg]
    stock_ml : float
        All stock together, S; zero or more. [mL]
    other_ml : float
        Other liquids, A (vinegar, say); zero or more. [mL]
    wet_yarn_ml : float
        Water in the yarn, w; zero or more. [mL]

    Returns
    -------
    WaterBalance
        The fresh water F and where the rest comes from. [-]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.

    Notes
    -----
    Where the other liquids alone exceed B there is no fresh water to add and
    the bath is thinner than asked: the ratio that results is given. That all
    liquid counts is common practice.

    Examples
    --------
    >>> bath = water_balance(fibre_mass_g=100.0, liquor_ratio=30.0, stock_ml=100.0)
    >>> bath.fresh_water_ml
    2900.0
    """
    wanted_ml = liquor_ml(fibre_mass_g=fibre_mass_g, liquor_ratio=liquor_ratio)
    brought_ml = sum(
        _liquid_ml(volume_ml, name=name, argument=argument)
        for volume_ml, name, argument in (
            (stock_ml, "Stock", "stock_ml"),
            (other_ml, "Other liquid", "other_ml"),
            (wet_yarn_ml, "Water in the yarn", "wet_yarn_ml"),
        )
    )
    return WaterBalance(
        liquor_ml=wanted_ml,
        stock_ml=stock_ml,
        other_ml=other_ml,
        wet_yarn_ml=wet_yarn_ml,
        fresh_water_ml=_beyond(wanted_ml, brought_ml),
        excess_ml=_beyond(brought_ml, wanted_ml),
        liquor_ratio=max(wanted_ml, brought_ml) / fibre_mass_g,
    )


def excess_caution(*, water: WaterBalance) -> str | None:
    """Return a caution where other liquids alone are more than the liquor.

    Parameters
    ----------
    water : WaterBalance
        Where the liquor comes from. [-]

    Returns
    -------
    str or None
        A sentence with the ratio that results, or None. [-]

    Examples
    --------
    >>> bath = water_balance(fibre_mass_g=100.0, liquor_ratio=30.0, stock_ml=100.0)
    >>> excess_caution(water=bath) is None
    True
    """
    if not water.excess_ml:
        return None
    brought = amount_text(water.liquor_ml + water.excess_ml, "ml")
    return (
        f"Stock, other liquids and wet yarn alone are {brought}, more than the liquor "
        f"of {amount_text(water.liquor_ml, 'ml')}: add no water. The ratio will be "
        f"{number_text(water.liquor_ratio, digits=3)}. For less liquor, take stronger "
        "stocks or squeeze the yarn."
    )


def _beyond(volume_ml: float, other_ml: float) -> float:
    """Return by how much one volume is more than another; noise is nothing."""
    return volume_ml - other_ml if is_more(volume_ml, than=other_ml) else 0.0


def _liquid_ml(volume_ml: float, *, name: str, argument: str) -> float:
    return require_between(
        volume_ml,
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name=name,
        argument=argument,
    )
