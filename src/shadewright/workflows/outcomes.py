"""What the label of a stock in the making will say, and what would mend it."""

from dataclasses import dataclass, replace

from shadewright.core.quantities import amount_text, require_mass, require_volume
from shadewright.core.solutions.filling import cooled_strength_percent
from shadewright.core.solutions.rescue import rescue_filled, rescue_weighed
from shadewright.errors import ConflictError
from shadewright.workflows.makings import Making
from shadewright.workflows.stock_spreads import (
    MadeWith,
    StockSpread,
    made_spread,
    weighed_ml,
)
from shadewright.workflows.stocks import label_strength_percent

HOT_C = 80.0
"""The water that powder is dissolved in; what a stock may still be when filled."""


@dataclass(frozen=True, kw_only=True)
class IfWeighed:
    """So much powder, made up as planned: the label, and the volume that is exact.

    ``over_g`` is below zero for too little.
    """

    over_g: float
    label_percent: float
    exact_ml: float
    spread: StockSpread


@dataclass(frozen=True, kw_only=True)
class IfFilled:
    """The powder in so much stock: the label, and what would make it exact."""

    final_ml: float
    label_percent: float
    spread: StockSpread
    add_water_ml: float | None
    add_powder_g: float | None


def if_weighed(
    making: Making, *, powder_g: float, made_with: MadeWith | None = None
) -> IfWeighed:
    """Say what a weight on the scale comes to; refuse what cannot be.

    Other tools than those of the stock may be named.
    """
    plan = making.stock.plan
    label_percent = label_strength_percent(
        powder_g=require_mass(powder_g, name="Powder", argument="powder_g"),
        final_ml=plan.final_volume_ml,
        powder_strength_percent=plan.powder_strength_percent,
    )
    rescue = rescue_weighed(
        powder_g=powder_g,
        strength_percent=plan.strength_percent,
        powder_strength_percent=plan.powder_strength_percent,
    )
    return IfWeighed(
        over_g=powder_g - plan.powder_g,
        label_percent=label_percent,
        exact_ml=rescue.make_up_to_ml,
        spread=_spread(
            making,
            powder_g=powder_g,
            final_ml=plan.final_volume_ml,
            made_with=replace(made_with or making.made_with, filled_g=None),
        ),
    )


def if_filled(
    making: Making, *, final_ml: float, made_with: MadeWith | None = None
) -> IfFilled | None:
    """Say what a level comes to; None as long as nothing is weighed."""
    return _if_filled(making, final_ml, made_with or making.made_with)


def if_filled_by_weight(making: Making, *, filled_g: float) -> IfFilled | None:
    """Say what the weight of the finished stock comes to, likewise."""
    if making.powder_g is None:
        return None
    final_ml = weighed_ml(filled_g=filled_g, powder_g=making.powder_g)
    return _if_filled(making, final_ml, replace(making.made_with, filled_g=filled_g))


def _if_filled(making: Making, final_ml: float, made_with: MadeWith) -> IfFilled | None:
    if making.powder_g is None:
        return None
    plan = making.stock.plan
    label_percent = label_strength_percent(
        powder_g=making.powder_g,
        final_ml=require_volume(final_ml, name="Final volume", argument="final_ml"),
        powder_strength_percent=plan.powder_strength_percent,
    )
    rescue = rescue_filled(
        powder_g=making.powder_g,
        strength_percent=plan.strength_percent,
        volume_ml=final_ml,
        powder_strength_percent=plan.powder_strength_percent,
    )
    return IfFilled(
        final_ml=final_ml,
        label_percent=label_percent,
        spread=_spread(
            making,
            powder_g=making.powder_g,
            final_ml=final_ml,
            made_with=made_with,
        ),
        add_water_ml=rescue.add_water_ml,
        add_powder_g=rescue.add_powder_g,
    )


def _spread(
    making: Making, *, powder_g: float, final_ml: float, made_with: MadeWith
) -> StockSpread:
    return made_spread(
        powder_g=powder_g,
        final_ml=final_ml,
        powder_strength_percent=making.stock.plan.powder_strength_percent,
        made_with=made_with,
        deed="the stock in the making",
    )


def refuse_hot() -> ConflictError:
    """Return the refusal of a stock that is made up before it is cold."""
    cooled = cooled_strength_percent(strength_percent=1.0, filled_at_c=HOT_C)
    error = amount_text(round(100.0 * (cooled - 1.0), 1), "%")
    return ConflictError(
        why="It is not ticked that the stock is cold.",
        advice=f"Let it cool, then make up to the mark and tick it: filled at "
        f"{amount_text(HOT_C, '°C')}, it is {error} too strong once it is cool.",
        argument="is_cold",
    )
