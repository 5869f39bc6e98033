"""Evaporation, by weighing the bottle.

Water goes through the cap and out of the neck; dye does not. A bottle that was
weighed after its last draw, and is weighed again with the same cap and nothing drawn
since, has lost just the water that is missing on the scale:

    w = (G − G')/ρ,   V' = V − w,   c' = c V/V'

A level read on the bottle's own marks is good to 5 or 10 ml; a kitchen scale shows a
gram.
"""

from dataclasses import dataclass

from shadewright.core.quantities import (
    amount_text,
    require_mass,
    water_density_g_per_ml,
)
from shadewright.core.uncertainty import (
    Shape,
    Value,
    bounded,
    product,
    quotient,
    scaled,
    total,
)
from shadewright.errors import OutOfRangeError

ROOM_C = 20.0


@dataclass(frozen=True, kw_only=True)
class Evaporated:
    """What is gone, what is left, how strong that is; ``is_seen`` beyond a step."""

    lost_ml: Value
    volume_ml: Value
    strength_percent: Value
    is_seen: bool


def weight_lost_g(
    *, before_g: float, now_g: float, step_g: float, source: str
) -> Value:
    """Return what a bottle has lost between two weighings.

    Parameters
    ----------
    before_g : float
        Gross weight after the last draw, G; above zero. [g]
    now_g : float
        Gross weight now, G'; above zero. [g]
    step_g : float
        Step of the scale, d; above zero. [g]
    source : str
        Which reading it is. [-]

    Returns
    -------
    Value
        Loss, u = d/√6; nought where the bottle is heavier by no more than a
        step. [g]

    Raises
    ------
    OutOfRangeError
        If the bottle has grown heavier.

    Notes
    -----
    Two roundings of one scale make a triangle. The scale's own error is left out:
    it is nearly the same both times, at nearly the same weight.

    References
    ----------
    .. [jcgm100] 4.3.9

    Examples
    --------
    >>> loss = weight_lost_g(before_g=412, now_g=404, step_g=1, source="weighing")
    >>> loss.value, round(loss.u, 3)
    (8.0, 0.408)
    """
    before = require_mass(before_g, name="Weight before", argument="gross_g")
    now = require_mass(now_g, name="Weight now", argument="gross_g")
    step = require_mass(step_g, name="Step of the scale", argument="scale")
    if now > before + step * (1 + 1e-9):
        raise OutOfRangeError(
            name="The weight now",
            given=amount_text(now, "g"),
            allowed=f"at most the {amount_text(before, 'g')} of the last weighing",
            advice="Something came in, or the cap is another: read the level instead.",
            argument="gross_g",
        )
    return bounded(
        max(before - now, 0.0),
        half_width=step,
        shape=Shape.TRIANGULAR,
        name="weighing the bottle",
        source=source,
    )


def evaporated(
    *, lost_g: Value, volume_ml: Value, strength_percent: Value, step_g: float
) -> Evaporated:
    """Return a bottle after some of its water has gone.

    c' = c V/(V − w)                                              (3)

    Parameters
    ----------
    lost_g : Value
        Water that has gone. [g]
    volume_ml : Value
        Volume before, V. [mL]
    strength_percent : Value
        Strength before, c. [%]
    step_g : float
        Step of the scale. [g]

    Returns
    -------
    Evaporated
        Water lost, w; volume and strength now; the water lost is what puts it
        back. [mL, %]

    Raises
    ------
    OutOfRangeError
        If more has gone than there was.

    Notes
    -----
    Water at 20 °C [kell1975]_. An error that volume and strength share, such as the
    mark that it was filled to, is one error here too.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> gone = evaporated(
    ...     lost_g=exact(60 * 0.998203),
    ...     volume_ml=exact(600),
    ...     strength_percent=exact(1),
    ...     step_g=1,
    ... )
    >>> round(gone.lost_ml.value, 2), round(gone.strength_percent.value, 4)
    (60.0, 1.1111)
    """
    lost = scaled(lost_g, by=1.0 / water_density_g_per_ml(temperature_c=ROOM_C))
    if lost.value >= volume_ml.value:
        raise OutOfRangeError(
            name="What has gone",
            given=amount_text(lost.value, "ml"),
            allowed=f"less than the {amount_text(volume_ml.value, 'ml')} of the ledger",
            advice="Was stock drawn and not written down? Write it down first.",
            argument="gross_g",
        )
    left = total(volume_ml, scaled(lost, by=-1.0))
    dye = product(strength_percent, volume_ml)
    return Evaporated(
        lost_ml=lost,
        volume_ml=left,
        strength_percent=quotient(dye, left),
        is_seen=lost_g.value > step_g,
    )
