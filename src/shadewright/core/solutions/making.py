"""The plan for a new stock: what is weighed, wetted, filled, and what to mind."""

from dataclasses import dataclass

from shadewright.core.quantities import (
    amount_text,
    is_more,
    require_above_zero,
    require_between,
    require_mass,
)
from shadewright.core.solutions.strength import powder_mass_g
from shadewright.errors import OutOfRangeError

PASTE_ML_PER_G = 3.0  # common practice
LEAST_PASTE_ML = 5.0  # common practice
HOT_SHARE = 2.0 / 3.0  # common practice: hot water to about two thirds

_METAL_COMPLEX = (
    "This is a metal-complex dye: powder and unused stock are collected and "
    "handed in, never poured away; keep bleach off the residues."
)
_MIX_FRESH = (
    "This dye is mixed fresh: it may settle out when it cools, so make only what "
    "today needs."
)


@dataclass(frozen=True, kw_only=True)
class StockPlan:
    """A stock to be made: amounts, and warnings as whole sentences.

    ``hot_water_ml`` is what brings the paste to about two thirds of the volume.
    """

    powder_g: float
    final_volume_ml: float
    paste_water_ml: float
    hot_water_ml: float
    strength_percent: float
    powder_strength_percent: float
    warnings: tuple[str, ...]


def paste_water_ml(*, powder_g: float) -> float:
    """Return the lukewarm water that wets a powder to a paste.

    Parameters
    ----------
    powder_g : float
        Powder; above zero. [g]

    Returns
    -------
    float
        3 ml to a gram, and never less than 5 ml. [mL]

    Raises
    ------
    OutOfRangeError
        If the mass is not above zero.

    Notes
    -----
    Common practice, no source: about a tablespoon (15 ml) for 5 g is the
    usual advice, which is 3 ml to a gram; less than 5 ml wets no cup.

    Examples
    --------
    >>> paste_water_ml(powder_g=5.0)
    15.0
    """
    mass = require_mass(powder_g, name="Powder", argument="powder_g")
    return max(LEAST_PASTE_ML, PASTE_ML_PER_G * mass)


def stock_plan(
    *,
    volume_ml: float,
    strength_percent: float,
    powder_strength_percent: float = 100.0,
    solubility_g_per_l: float | None = None,
    solubility_at_c: float | None = None,
    powder_left_g: float | None = None,
    mix_fresh: bool = False,
    is_metal_complex: bool = False,
) -> StockPlan:
    """Return the plan for a new stock, or say what is possible instead.

    Parameters
    ----------
    volume_ml : float
        Volume of the finished stock; above zero. [mL]
    strength_percent : float
        Strength wanted, in g per 100 ml; above 0 to 50. [%]
    powder_strength_percent : float
        Strength of the powder against the dye's standard; above 0 to 400. [%]
    solubility_g_per_l : float or None
        How much of this powder dissolves, from the jar's data sheet. [g/L]
    solubility_at_c : float or None
        Temperature that the solubility was stated for. [°C]
    powder_left_g : float or None
        What the jar still holds. [g]
    mix_fresh : bool
        Whether the dye is known not to keep as a stock. [-]
    is_metal_complex : bool
        Whether the dye holds a metal. [-]

    Returns
    -------
    StockPlan
        Amounts and warnings. [g, mL, %]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range, the strength is above what
        dissolves, or the jar holds too little.

    Notes
    -----
    Published solubilities of one dye differ by a factor of two to four, so a
    stock above half of the stated figure is warned of. The figure is taken to
    be for the powder as sold, salt and all.

    Examples
    --------
    >>> plan = stock_plan(volume_ml=500.0, strength_percent=1.0)
    >>> plan.powder_g, plan.paste_water_ml
    (5.0, 15.0)
    """
    powder = powder_mass_g(
        volume_ml=volume_ml,
        strength_percent=strength_percent,
        powder_strength_percent=powder_strength_percent,
    )
    if powder_left_g is not None:
        _refuse_beyond_jar(powder, powder_left_g, volume_ml)
    two_thirds = HOT_SHARE * volume_ml
    paste = min(paste_water_ml(powder_g=powder), two_thirds)
    warnings = (
        _near_solubility(
            powder / volume_ml * 1000.0,
            solubility_g_per_l,
            solubility_at_c,
            strength_percent,
        ),
        _little_room(powder, paste),
        _MIX_FRESH if mix_fresh else "",
        _METAL_COMPLEX if is_metal_complex else "",
    )
    return StockPlan(
        powder_g=powder,
        final_volume_ml=volume_ml,
        paste_water_ml=paste,
        hot_water_ml=two_thirds - paste,
        strength_percent=strength_percent,
        powder_strength_percent=powder_strength_percent,
        warnings=tuple(warning for warning in warnings if warning),
    )


def _refuse_beyond_jar(powder_g: float, left_g: float, volume_ml: float) -> None:
    """Refuse a stock that wants more powder than the jar holds."""
    left = require_between(
        left_g,
        least=0.0,
        most=1e6,
        unit="g",
        name="Powder left",
        argument="powder_left_g",
    )
    if not is_more(powder_g, than=left):
        return
    largest = amount_text(volume_ml * left / powder_g, "ml")
    advice = f"It is enough for {largest} at this strength." if left else ""
    raise OutOfRangeError(
        name="Powder",
        given=f"a stock that takes {amount_text(powder_g, 'g')}",
        allowed=f"at most the {amount_text(left, 'g')} that the jar holds",
        advice=advice,
        argument="volume_ml",
    )


def _near_solubility(
    powder_g_per_l: float,
    solubility_g_per_l: float | None,
    at_c: float | None,
    strength_percent: float,
) -> str:
    """Refuse a strength above what dissolves; warn of one above half of it."""
    if solubility_g_per_l is None:
        return ""
    limit = require_above_zero(
        solubility_g_per_l,
        most=2000.0,
        unit="g/l",
        name="Solubility",
        argument="solubility_g_per_l",
    )
    share = powder_g_per_l / limit
    where = "" if at_c is None else f" at {amount_text(at_c, '°C')}"
    fact = f"{amount_text(limit, 'g/l')} dissolve{where}"
    if is_more(share, than=1.0):
        possible = amount_text(strength_percent / share, "%")
        raise OutOfRangeError(
            name="Strength",
            given=amount_text(strength_percent, "%"),
            allowed=f"at most {possible}, since {fact}",
            advice="Make a weaker stock, and more of it.",
            argument="strength_percent",
        )
    if not is_more(share, than=0.5):
        return ""
    return (
        f"This stock holds {amount_text(100.0 * share, '%')} of what dissolves "
        f"({fact}), and published figures differ widely: look for grains before "
        "every use, or make it weaker."
    )


def _little_room(powder_g: float, paste_ml: float) -> str:
    """Warn where the usual paste water is more than the vessel has room for."""
    if paste_water_ml(powder_g=powder_g) <= paste_ml:
        return ""
    return (
        "There is little room for the usual paste water in so small or so strong "
        "a stock: wet the powder in small lots and rinse with little."
    )
