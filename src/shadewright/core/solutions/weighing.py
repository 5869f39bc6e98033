"""What a scale with a coarse step can weigh."""

from dataclasses import dataclass

from shadewright.core.quantities import (
    amount_text,
    is_more,
    require_mass,
    require_volume,
    rounded_to_step,
)
from shadewright.core.quantities.writing import NO_BREAK, spread_text
from shadewright.core.uncertainty import Value, half_width
from shadewright.errors import OutOfRangeError

COARSE_PERCENT = 2.0
"""From here on a weighing is called coarse. [%] (our choice)"""


@dataclass(frozen=True, kw_only=True)
class OnScale:
    """What the scale shows, and the volume that keeps the strength with it."""

    powder_g: float
    make_up_to_ml: float
    warning: str


def powder_on_scale(*, powder_g: float, step_g: float, volume_ml: float) -> OnScale:
    """Return what a scale shows for a powder, and a warning if it is coarse.

    Parameters
    ----------
    powder_g : float
        Powder wanted; above zero. [g]
    step_g : float
        Step of the scale; above zero. [g]
    volume_ml : float
        Volume of the stock, for the advice. [mL]

    Returns
    -------
    OnScale
        The nearest step, and a sentence where it is off by 2 % or more. [g, mL]

    Raises
    ------
    OutOfRangeError
        If the powder is less than one step of the scale.

    Notes
    -----
    Two percent is our choice.

    Examples
    --------
    >>> powder_on_scale(powder_g=5.37, step_g=0.1, volume_ml=537.0).powder_g
    5.4
    """
    mass = require_mass(powder_g, name="Powder", argument="powder_g")
    step = require_mass(step_g, name="Step of the scale", argument="step_g")
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    shown = rounded_to_step(mass, step=step)
    if is_more(step, than=mass):
        raise OutOfRangeError(
            name="Powder",
            given=amount_text(mass, "g"),
            allowed=f"at least one step of the scale, {amount_text(step, 'g')}",
            advice=(
                f"Make at least {amount_text(volume * step / mass, 'ml')}, or dilute "
                "a stronger stock."
            ),
            argument="balance",
        )
    fitted = volume * shown / mass
    is_coarse = 100.0 * abs(shown / mass - 1.0) >= COARSE_PERCENT
    warning = (
        f"The scale shows {amount_text(shown, 'g')} for {amount_text(mass, 'g')}: "
        f"made up to {amount_text(fitted, 'ml')} the strength stays as wanted."
    )
    return OnScale(
        powder_g=shown, make_up_to_ml=fitted, warning=warning if is_coarse else ""
    )


def larger_batch_advice(*, powder: Value, volume_ml: float) -> str:
    """Return what twice as much stock would do for the weighing, if that is coarse.

    Parameters
    ----------
    powder : Value
        Powder as the scale reads it, with the terms of the scale. [g]
    volume_ml : float
        Volume of the stock that it is for; above zero. [mL]

    Returns
    -------
    str
        A sentence; empty where the weighing alone is good to 2 %. [-]

    Raises
    ------
    OutOfRangeError
        If the volume is not above zero.

    Notes
    -----
    What a scale is off by does not grow with the load, so twice the powder is half
    as unsure. Two percent is our choice.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> larger_batch_advice(powder=exact(5.0), volume_ml=500.0)
    ''
    """
    volume = require_volume(volume_ml, name="Volume", argument="volume_ml")
    alone = 100.0 * half_width(powder) / powder.value
    if alone < COARSE_PERCENT:
        return ""
    now, then = (
        f"±{NO_BREAK}{spread_text(part)}{NO_BREAK}%" for part in (alone, alone / 2.0)
    )
    return (
        f"This weighing alone: {now}. Make {amount_text(2.0 * volume, 'ml')} instead: "
        f"{then}, with the same scale."
    )
