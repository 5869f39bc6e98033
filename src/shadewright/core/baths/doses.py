"""Doses: a depth of shade from a stock, and whether it can be measured out.

A small volume cannot be measured well: a syringe that is 0.1 ml out is 2 % out
at 5 ml and 10 % out at 1 ml. Below 5 ml a dose therefore comes with advice to
take a weaker stock, whose dose is larger. Dry dye below fifty steps of the
scale comes with the same advice.
"""

from dataclasses import dataclass
from math import floor
from typing import Final

from shadewright.core.baths.measures import stock_volume_ml
from shadewright.core.quantities import (
    Balance,
    MeasuringTool,
    amount_text,
    is_more,
)

LEAST_DOSE_ML: Final = 5.0  # common practice
LEAST_SCALE_STEPS: Final = 50  # common practice: 5 g on a scale of 0.1 g
STRENGTH_SERIES_PERCENT: Final = (2.0, 1.0, 0.5, 0.1, 0.05, 0.01)  # common practice


@dataclass(frozen=True, kw_only=True)
class Dose:
    """A dye, its depth in % on weight of fibre, and the stock it comes from.

    ``strength_percent`` is None where the dye is weighed out dry. ``u_strength_rel``
    is the relative standard uncertainty of the strength; 0 unless given.
    """

    dye: str
    depth_percent: float
    strength_percent: float | None = None
    u_strength_rel: float = 0.0


def measurable_strength_percent(*, dye_mass_g: float) -> float | None:
    """Return the strongest usual stock whose dose is large enough to measure.

    Parameters
    ----------
    dye_mass_g : float
        Dye wanted; above zero. [g]

    Returns
    -------
    float or None
        Strength out of 2, 1, 0.5, 0.1, 0.05, 0.01 % that makes the dose 5 ml
        or more; None where even the weakest does not. [%]

    Examples
    --------
    >>> measurable_strength_percent(dye_mass_g=0.01)
    0.1
    """
    return next(
        (
            strength
            for strength in STRENGTH_SERIES_PERCENT
            if _is_measurable(
                stock_volume_ml(dye_mass_g=dye_mass_g, strength_percent=strength)
            )
        ),
        None,
    )


def dose_advice(
    *, dye_mass_g: float, stock_ml: float, tool: MeasuringTool | None = None
) -> str | None:
    """Return what to mind when a dose of stock is measured, or None.

    Parameters
    ----------
    dye_mass_g : float
        Dye in the dose; above zero. [g]
    stock_ml : float
        Volume of the dose. [mL]
    tool : MeasuringTool or None
        What it is measured in. [-]

    Returns
    -------
    str or None
        A sentence: too little to measure, or more than the tool holds. [-]

    Notes
    -----
    Source: common practice.

    Examples
    --------
    >>> dose_advice(dye_mass_g=0.6, stock_ml=60.0) is None
    True
    """
    if not _is_measurable(stock_ml):
        return _too_little(amount_text(stock_ml, "ml"), dye_mass_g, done="measure")
    if tool is None or not is_more(stock_ml, than=tool.size_ml):
        return None
    times = _times(stock_ml, tool.size_ml)
    return f"Fill the {amount_text(tool.size_ml, 'ml')} {tool.kind} {times} times."


def dry_dose_advice(*, dye_mass_g: float, balance: Balance | None = None) -> str | None:
    """Return what to mind when a dose is weighed as dry powder, or None.

    Parameters
    ----------
    dye_mass_g : float
        Dye in the dose; above zero. [g]
    balance : Balance or None
        What it is weighed on. [-]

    Returns
    -------
    str or None
        A sentence when it is less than fifty steps of the scale. [-]

    Notes
    -----
    Fifty steps keep the rounding of the scale within 1 %. Source: common
    practice.

    Examples
    --------
    >>> dry_dose_advice(dye_mass_g=6.0, balance=Balance(step_g=0.1, error_g=None))
    """
    if balance is None or not is_more(
        LEAST_SCALE_STEPS * balance.step_g, than=dye_mass_g
    ):
        return None
    return _too_little(amount_text(dye_mass_g, "g"), dye_mass_g, done="weigh")


def _is_measurable(stock_ml: float) -> bool:
    return not is_more(LEAST_DOSE_ML, than=stock_ml)


def _times(stock_ml: float, size_ml: float) -> int:
    """Return how often a tool is filled; a whole number stays one."""
    whole = floor(stock_ml / size_ml)
    return whole + 1 if is_more(stock_ml, than=whole * size_ml) else whole


def _too_little(amount: str, dye_g: float, *, done: str) -> str:
    """Say that a dose is too small, and what stock would carry it."""
    strength = measurable_strength_percent(dye_mass_g=dye_g)
    if strength is None:
        return f"{amount} is too little to {done} well: dye more yarn at once."
    volume_ml = stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength)
    return (
        f"{amount} is too little to {done} well: take "
        f"{amount_text(volume_ml, 'ml')} of a {amount_text(strength, '%')} stock."
    )
