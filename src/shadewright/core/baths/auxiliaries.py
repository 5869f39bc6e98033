"""Auxiliaries: how much a bath is given of what is not dye.

An auxiliary is written in per cent on weight of fibre, in grams to the litre
of liquor, or simply in grams or millilitres. Per cents and grams to the litre
always count the pure chemical: 2 % of vinegar on 100 g of yarn are 2 g of
acetic acid, which is 40 ml of a 5 % vinegar.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from shadewright.core.quantities import (
    MOST_MASS_G,
    MOST_VOLUME_ML,
    amount_text,
    require_above_zero,
    require_mass,
    require_volume,
)
from shadewright.errors import UnitError

MOST_LIQUID_G_PER_100ML: Final = 185.0  # above concentrated sulphuric acid


class AmountUnit(StrEnum):
    """What the amount of an auxiliary is counted in."""

    PERCENT_OWF = "%"
    G_PER_L = "g/l"
    G = "g"
    ML = "ml"


MOST_AMOUNT: Final = {
    AmountUnit.PERCENT_OWF: 100.0,
    AmountUnit.G_PER_L: 200.0,
    AmountUnit.G: MOST_MASS_G,
    AmountUnit.ML: MOST_VOLUME_ML,
}


@dataclass(frozen=True, kw_only=True)
class Amount:
    """How much of an auxiliary: a number and what it counts."""

    value: float
    unit: AmountUnit


def auxiliary_mass_g(
    *,
    amount: Amount,
    fibre_mass_g: float | None,
    liquor_volume_ml: float,
    name: str = "auxiliary",
    argument: str = "amount",
) -> float:
    """Return an amount in grams of the pure chemical.

    m = W p / 100  (% on weight of fibre)                     (16)

    m = B q / 1000  (grams to the litre)                      (17)

    Parameters
    ----------
    amount : Amount
        How much, p in % on weight of fibre, q in g/l, or plain grams. [-]
    fibre_mass_g : float or None
        Conditioned weight of the fibre, W; above zero. None where no yarn is
        spoken of: then an amount in % is refused. [g]
    liquor_volume_ml : float
        Volume of the whole bath, B; above zero. [mL]
    name : str
        The auxiliary in the dyer's words. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        Mass of the chemical, m. [g]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.
    UnitError
        If the amount is in millilitres, or in % of no yarn.

    Notes
    -----
    Source: common practice. Amounts on weight of fibre grow with the yarn,
    those in g/l with the water.

    Examples
    --------
    >>> citric = Amount(value=2.0, unit=AmountUnit.PERCENT_OWF)
    >>> auxiliary_mass_g(amount=citric, fibre_mass_g=150.0, liquor_volume_ml=4500.0)
    3.0
    """
    require_amount(amount, name=name, argument=argument)
    match amount.unit:
        case AmountUnit.PERCENT_OWF:
            return _on_fibre_g(amount, fibre_mass_g, name=name, argument=argument)
        case AmountUnit.G_PER_L:
            require_volume(liquor_volume_ml, name="Liquor", argument="liquor_volume_ml")
            return liquor_volume_ml * amount.value / 1000
        case AmountUnit.G:
            return amount.value
        case AmountUnit.ML:
            raise UnitError(
                name=f"Amount of {name}",
                given=amount_text(amount.value, "ml"),
                allowed="%, g or g/l, since it is weighed",
                argument=argument,
            )


def liquid_volume_ml(*, pure_mass_g: float, strength_g_per_100ml: float) -> float:
    """Return the volume of a liquid that holds a mass of the pure chemical.

    V = 100 m / c                                             (18)

    Parameters
    ----------
    pure_mass_g : float
        Pure chemical wanted, m; above zero. [g]
    strength_g_per_100ml : float
        Strength of the liquid, c; above 0 to 185. [g/100 mL]

    Returns
    -------
    float
        Volume to pour, V. [mL]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.

    Notes
    -----
    A vinegar's per cent is grams in 100 ml [fda525825]_. A label in per cent
    by weight must be multiplied by the liquid's density first.

    Examples
    --------
    >>> liquid_volume_ml(pure_mass_g=2.0, strength_g_per_100ml=5.0)
    40.0
    """
    require_mass(pure_mass_g, name="Chemical", argument="pure_mass_g")
    require_above_zero(
        strength_g_per_100ml,
        most=MOST_LIQUID_G_PER_100ML,
        unit="%",
        name="Strength of the liquid",
        argument="strength_g_per_100ml",
    )
    return 100 * pure_mass_g / strength_g_per_100ml


def require_amount(
    amount: Amount, *, name: str = "auxiliary", argument: str = "amount"
) -> Amount:
    """Return an amount that is above zero and no slip of the finger.

    Parameters
    ----------
    amount : Amount
        How much, and what it counts. [-]
    name : str
        The auxiliary in the dyer's words. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    Amount
        The same. [-]

    Raises
    ------
    OutOfRangeError
        If it is not above zero, or above 100 %, 200 g/l, a tonne or 1000 l.

    Notes
    -----
    A guard, not a formula: no source.

    Examples
    --------
    >>> require_amount(Amount(value=2.0, unit=AmountUnit.PERCENT_OWF)).value
    2.0
    """
    require_above_zero(
        amount.value,
        most=MOST_AMOUNT[amount.unit],
        unit=amount.unit,
        name=f"Amount of {name}",
        argument=argument,
    )
    return amount


def _on_fibre_g(
    amount: Amount, fibre_mass_g: float | None, *, name: str, argument: str
) -> float:
    if fibre_mass_g is None:
        raise UnitError(
            name=f"Amount of {name}",
            given=amount_text(amount.value, "%"),
            allowed="g, ml or g/l, since no yarn is weighed here",
            argument=argument,
        )
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    return fibre_mass_g * amount.value / 100
