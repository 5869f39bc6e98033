"""``shadewright stock make``: powder, water, steps, and how sure the strength is."""

import click

from shadewright.cli import stock_texts as texts
from shadewright.cli import words
from shadewright.cli.answers import as_json, say
from shadewright.cli.commands import SumCommand
from shadewright.core.quantities import (
    Balance,
    MeasuringTool,
    amount_text,
)
from shadewright.core.solutions import (
    OnScale,
    StockPlan,
    filled_mass_g,
    hot_fill_warning,
    made_strength,
    making_steps,
    powder_on_scale,
    stock_plan,
    weighed_volume,
)
from shadewright.core.uncertainty import Value, exact
from shadewright.core.uncertainty.tools import mass_read, volume_read
from shadewright.errors import OutOfRangeError

volume_wanted = click.option(
    "--volume", type=words.VOLUME, required=True, help="Finished stock, as 500ml."
)
strength_wanted = click.option(
    "--strength",
    type=words.STRENGTH,
    required=True,
    help="Strength wanted: grams of dye in 100 ml, as 1%.",
)
strength_of_powder = click.option(
    "--powder-strength",
    type=words.POWDER_STRENGTH,
    default="100%",
    show_default=True,
    help="The powder against the dye's standard, as 80% for a weaker one.",
)


@click.command(cls=SumCommand)
@volume_wanted
@strength_wanted
@strength_of_powder
@click.option(
    "--balance",
    type=words.BALANCE,
    help="Step of the scale, as 0.1g; with its own error, as 0.1g+-0.2g.",
)
@click.option(
    "--vessel", type=words.TOOL, help="What it is made up in, as “cylinder 500ml B”."
)
@click.option(
    "--temperature",
    "filled_at",
    type=words.TEMPERATURE,
    default="20C",
    show_default=True,
    help="Of the liquid at the mark, as 60C or 140F.",
)
@click.option("--by-weight", is_flag=True, help="Make up on a scale, not to a mark.")
@as_json
def make(
    *,
    volume: float,
    strength: float,
    powder_strength: float,
    balance: Balance | None,
    vessel: MeasuringTool | None,
    filled_at: float,
    by_weight: bool,
    as_json: bool,
) -> None:
    """Plan a stock: powder, water, and the steps with their cautions."""
    plan = stock_plan(
        volume_ml=volume,
        strength_percent=strength,
        powder_strength_percent=powder_strength,
    )
    refuse_small_vessel(vessel, volume_ml=volume)
    hot_fill = hot_fill_warning(strength_percent=strength, filled_at_c=filled_at)
    at_mark_g = filled_mass_g(
        volume_ml=volume, powder_g=plan.powder_g, filled_at_c=filled_at
    )
    filled_g = filled_mass_g(volume_ml=volume, powder_g=plan.powder_g)
    if by_weight and hot_fill:
        hot_fill = texts.hot_by_weight(filled_g)
    answer = texts.Made(
        plan=plan,
        steps=making_steps(plan, filled_g=filled_g if by_weight else None),
        shown=_on_scale(plan, balance),
        made=_made(plan, balance, vessel, filled_g if by_weight else None),
        balance=balance,
        vessel=vessel,
        hot_fill=hot_fill or "",
        make_up_to_g=at_mark_g if by_weight else None,
    )
    say(
        answer.as_answer(),
        as_json=as_json,
        rows=answer.rows(),
        warnings=answer.warnings(),
        after=answer.steps_text(),
    )


def _on_scale(plan: StockPlan, balance: Balance | None) -> OnScale | None:
    """Return what the scale shows, where one was named."""
    if balance is None:
        return None
    return powder_on_scale(
        powder_g=plan.powder_g,
        step_g=balance.step_g,
        volume_ml=plan.final_volume_ml,
    )


def _made(
    plan: StockPlan,
    balance: Balance | None,
    vessel: MeasuringTool | None,
    filled_g: float | None,
) -> Value:
    """Return the strength with what is known of scale and vessel."""
    powder = _weighed(balance, plan.powder_g, "powder")
    if filled_g is not None:
        filled = _weighed(balance, filled_g, "finished stock")
        volume = weighed_volume(filled=filled, powder=powder, key="stock")
    elif vessel is not None:
        volume = volume_read(
            vessel, plan.final_volume_ml, role="stock", key="the vessel"
        )
    else:
        volume = exact(plan.final_volume_ml)
    return made_strength(
        powder=powder,
        volume=volume,
        powder_strength_percent=plan.powder_strength_percent,
    )


def _weighed(balance: Balance | None, mass_g: float, role: str) -> Value:
    if balance is None:
        return exact(mass_g)
    return mass_read(balance, mass_g, role=role, key="the scale")


def refuse_small_vessel(vessel: MeasuringTool | None, *, volume_ml: float) -> None:
    """Refuse a vessel that the finished stock would overflow."""
    if vessel is None or vessel.size_ml >= volume_ml:
        return
    raise OutOfRangeError(
        name="The vessel",
        given=f"one of {amount_text(vessel.size_ml, 'ml')}",
        allowed=f"large enough for {amount_text(volume_ml, 'ml')}",
        advice="Take a larger one, or make less.",
        argument="vessel",
    )
