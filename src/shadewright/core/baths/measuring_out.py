"""A dose as it is measured out at the pot, and how sure its depth then is.

Whatever it is measured with brings its error along: the syringe, or the scale
that stock or dry dye is weighed on; the scale that weighed the yarn; and the
strength of the stock, where its spread is known. What nobody names is left out.
"""

from dataclasses import dataclass

from shadewright.core.baths.depth import dye_mass_g as dye_for
from shadewright.core.baths.doses import Dose, dose_advice, dry_dose_advice
from shadewright.core.baths.measures import stock_volume_ml, weighed_mass_g
from shadewright.core.baths.sureness import (
    Drawn,
    SureDepth,
    stock_density,
    sure_depth,
)
from shadewright.core.quantities import (
    MOST_VOLUME_ML,
    Balance,
    MeasuringTool,
    require_between,
)
from shadewright.core.uncertainty import Term, Value, exact
from shadewright.core.uncertainty.sampling import RandomSource

_SCALE, _WARE = "scale", "ware"


@dataclass(frozen=True, kw_only=True)
class MeasuredWith:
    """What a bath is measured with; what is None is not known and left out.

    With ``is_by_weight`` stock is weighed on the balance, not measured in the tool.
    """

    tool: MeasuringTool | None = None
    balance: Balance | None = None
    is_by_weight: bool = False


NOTHING_NAMED = MeasuredWith()


@dataclass(frozen=True, kw_only=True)
class MeasuredDose:
    """A dose as it is measured out at the pot.

    ``stock_ml`` and ``stock_g`` are None for dry dye; ``advice`` is a sentence,
    or None where there is nothing to mind; ``sure`` is None where no error of
    the depth is known.
    """

    dye: str
    depth_percent: float
    dye_g: float
    strength_percent: float | None
    stock_ml: float | None
    stock_g: float | None
    advice: str | None
    sure: SureDepth | None = None

    @property
    def spread(self) -> Value | None:
        """The depth with its terms, in %."""
        return None if self.sure is None else self.sure.depth


def measured_dose(
    *,
    dose: Dose,
    fibre_mass_g: float,
    measured_with: MeasuredWith = NOTHING_NAMED,
    generator: RandomSource | None = None,
) -> MeasuredDose:
    """Return a dose in grams of dye and, from a stock, in ml and g of stock.

    Of stock V = 100 m / c and M = V (rho + c / 100), equations 5 and 6.

    Parameters
    ----------
    dose : Dose
        Dye, depth and stock. [-]
    fibre_mass_g : float
        Conditioned weight of the fibre; above zero. [g]
    measured_with : MeasuredWith
        What stock, dry dye and yarn are measured with. [-]
    generator : RandomSource or None
        What draws lots where the dose is very unsure; seeded by the caller. [-]

    Returns
    -------
    MeasuredDose
        What to measure out, and how sure its depth is. [-]

    Raises
    ------
    OutOfRangeError
        If depth, strength or weight is out of range.

    Notes
    -----
    M is what a dose V weighs: its water, of density rho at 20 °C, and the dye m in
    it, just as a stock is filled by weight. The dye takes up a little room, so a
    dose weighed from a stock that was filled to a mark is high, by less than the
    stock's own percentage (of a 1 % stock by less than a hundredth).

    Examples
    --------
    >>> gorse = Dose(dye="Gorse", depth_percent=0.6, strength_percent=1.0)
    >>> measured_dose(dose=gorse, fibre_mass_g=100.0).stock_ml
    60.0
    """
    dye_g = dye_for(fibre_mass_g=fibre_mass_g, depth_percent=dose.depth_percent)
    strength = dose.strength_percent
    if strength is None:
        stock_ml = stock_g = None
        advice = dry_dose_advice(dye_mass_g=dye_g, balance=measured_with.balance)
    else:
        stock_ml = _within_a_studio(
            stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength), dose.dye
        )
        stock_g = weighed_mass_g(volume_ml=stock_ml, strength_percent=strength)
        advice = dose_advice(
            dye_mass_g=dye_g,
            stock_ml=stock_ml,
            tool=None if measured_with.is_by_weight else measured_with.tool,
        )
    sure = _sure_depth(
        dose=dose,
        fibre_mass_g=fibre_mass_g,
        amounts=_Amounts(dye_g=dye_g, stock_ml=stock_ml, stock_g=stock_g),
        measured_with=measured_with,
        generator=generator,
    )
    return MeasuredDose(
        dye=dose.dye,
        depth_percent=dose.depth_percent,
        dye_g=dye_g,
        strength_percent=strength,
        stock_ml=stock_ml,
        stock_g=stock_g,
        advice=advice,
        sure=sure if sure.depth.terms else None,
    )


@dataclass(frozen=True, kw_only=True)
class _Amounts:
    dye_g: float
    stock_ml: float | None
    stock_g: float | None


def _within_a_studio(stock_ml: float, dye: str) -> float:
    """Refuse more stock for one dose than a studio holds."""
    return require_between(
        stock_ml,
        least=0.0,
        most=MOST_VOLUME_ML,
        unit="ml",
        name=f"Stock of {dye}",
        argument="doses",
        advice="Take a stronger stock.",
    )


def _sure_depth(
    *,
    dose: Dose,
    fibre_mass_g: float,
    amounts: _Amounts,
    measured_with: MeasuredWith,
    generator: RandomSource | None,
) -> SureDepth:
    yarn = _weighed(fibre_mass_g, measured_with.balance, role="yarn")
    drawn = _drawn(dose, amounts, measured_with)
    if drawn is not None:
        return sure_depth(yarn=yarn, stock=[drawn], generator=generator)
    dry = _weighed(amounts.dye_g, measured_with.balance, role=dose.dye)
    return sure_depth(yarn=yarn, dry=[dry], generator=generator)


def _drawn(dose: Dose, amounts: _Amounts, measured_with: MeasuredWith) -> Drawn | None:
    percent, tool = dose.strength_percent, measured_with.tool
    if percent is None or amounts.stock_ml is None or amounts.stock_g is None:
        return None
    strength = _strength(dose, percent)
    if measured_with.is_by_weight:
        return Drawn(
            strength=strength,
            amount=_weighed(amounts.stock_g, measured_with.balance, role=dose.dye),
            density=stock_density(strength=strength, key=_stock(dose)),
        )
    return Drawn(strength=strength, amount=_poured(amounts.stock_ml, tool, dose.dye))


def _poured(volume_ml: float, tool: MeasuringTool | None, role: str) -> Value:
    if tool is None:
        return exact(volume_ml)
    from shadewright.core.uncertainty.tools import volume_read  # only where named

    return volume_read(tool, volume_ml, role=role, key=_WARE)


def _weighed(mass_g: float, balance: Balance | None, *, role: str) -> Value:
    if balance is None:
        return exact(mass_g)
    from shadewright.core.uncertainty.tools import mass_read  # only where named

    return mass_read(balance, mass_g, role=role, key=_SCALE)


def _strength(dose: Dose, percent: float) -> Value:
    """Return the strength of a stock; one whose spread is 0 counts as exact."""
    if not dose.u_strength_rel:
        return exact(percent)
    term = Term(
        name=f"strength of the {dose.dye} stock",
        source=_stock(dose),
        u=percent * dose.u_strength_rel,
    )
    return Value(value=percent, terms=(term,))


def _stock(dose: Dose) -> str:
    return f"stock {dose.dye} {dose.strength_percent}"
