"""What a scale with a coarse step can weigh."""

from dataclasses import dataclass

from shadewright.core.quantities import (
    amount_text,
    is_more,
    require_mass,
    require_volume,
    rounded_to_step,
)
from shadewright.errors import OutOfRangeError


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
    is_coarse = abs(shown / mass - 1.0) >= 0.02
    warning = (
        f"The scale shows {amount_text(shown, 'g')} for {amount_text(mass, 'g')}: "
        f"made up to {amount_text(fitted, 'ml')} the strength stays as wanted."
    )
    return OnScale(
        powder_g=shown, make_up_to_ml=fitted, warning=warning if is_coarse else ""
    )
