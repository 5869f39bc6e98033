"""``shadewright stock``: from a powder jar to a bottle of known strength."""

import click

from shadewright.cli import stock_texts as texts
from shadewright.cli import words
from shadewright.cli.answers import NO_SPREAD_YET, as_json, say
from shadewright.cli.commands import SumGroup
from shadewright.core.quantities import (
    Balance,
    MeasuringTool,
    amount_text,
)
from shadewright.core.quantities.writing import about_text
from shadewright.core.solutions import (
    OnScale,
    Portion,
    StockPlan,
    dilution,
    filled_mass_g,
    geometric_series_percent,
    hot_fill_warning,
    making_steps,
    merged,
    powder_on_scale,
    rescue_filled,
    rescue_weighed,
    stock_plan,
)
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


@click.group(cls=SumGroup)
def stock() -> None:
    """Make, rescue, dilute and merge stock solutions."""


@stock.command()
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
    _refuse_small_vessel(vessel, volume_ml=volume)
    hot_fill = hot_fill_warning(strength_percent=strength, filled_at_c=filled_at)
    filled_g = filled_mass_g(
        volume_ml=volume, powder_g=plan.powder_g, filled_at_c=filled_at
    )
    if by_weight and hot_fill:
        hot_fill = texts.hot_by_weight(
            filled_mass_g(volume_ml=volume, powder_g=plan.powder_g)
        )
    answer = texts.Made(
        plan=plan,
        steps=making_steps(plan, filled_g=filled_g if by_weight else None),
        shown=_on_scale(plan, balance),
        balance=balance,
        vessel=vessel,
        hot_fill=hot_fill or "",
        make_up_to_g=filled_g if by_weight else None,
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


def _refuse_small_vessel(vessel: MeasuringTool | None, *, volume_ml: float) -> None:
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


@stock.command()
@click.option(
    "--powder", type=words.POWDER, required=True, help="Powder weighed, as 5.37g."
)
@strength_wanted
@strength_of_powder
@click.option(
    "--in-vessel",
    type=words.IN_VESSEL,
    help="Not made up yet: what stands in the vessel so far, as 480ml.",
)
@click.option(
    "--volume",
    type=words.VOLUME,
    help="Made up already: the volume that it came to, as 1040ml.",
)
@as_json
def rescue(
    *,
    powder: float,
    strength: float,
    powder_strength: float,
    in_vessel: float | None,
    volume: float | None,
    as_json: bool,
) -> None:
    """Save a stock that was weighed or filled wrongly."""
    if in_vessel is not None and volume is not None:
        both = (
            "--in-vessel and --volume do not go together: --in-vessel is a stock "
            "that is not made up yet, --volume one that is."
        )
        raise click.UsageError(both)
    if volume is None:
        weighed = rescue_weighed(
            powder_g=powder,
            strength_percent=strength,
            in_vessel_ml=in_vessel,
            powder_strength_percent=powder_strength,
        )
        say(
            texts.weighed_answer(weighed),
            as_json=as_json,
            rows=texts.weighed_rows(weighed),
        )
        return
    filled = rescue_filled(
        powder_g=powder,
        strength_percent=strength,
        volume_ml=volume,
        powder_strength_percent=powder_strength,
    )
    say(
        texts.filled_answer(filled),
        as_json=as_json,
        rows=texts.filled_rows(filled),
        warnings=texts.filled_warnings(filled),
    )


@stock.command()
@click.option(
    "--have", type=words.STRENGTH, required=True, help="Strength at hand, as 2%."
)
@click.option(
    "--want", type=words.STRENGTH, required=True, help="Strength wanted, as 0.5%."
)
@volume_wanted
@as_json
def dilute(*, have: float, want: float, volume: float, as_json: bool) -> None:
    """Make a weaker stock from a stronger one."""
    plan = dilution(have_percent=have, want_percent=want, volume_ml=volume)
    say(
        {
            "stock_ml": plan.stock_ml,
            "water_ml": plan.water_ml,
            "u_strength_rel": None,
            "u_why": NO_SPREAD_YET,
        },
        as_json=as_json,
        rows=[
            ("stock", amount_text(plan.stock_ml, "ml")),
            ("make up to", amount_text(volume, "ml")),
            ("water", about_text(plan.water_ml, "ml") if plan.water_ml else "none"),
        ],
    )


@stock.command(context_settings={"ignore_unknown_options": True})
@click.argument("portions", type=words.PORTION, nargs=-1, required=True)
@as_json
def merge(*, portions: tuple[Portion, ...], as_json: bool) -> None:
    """Pour part bottles of one dye together, each as 180ml@1%."""
    together = merged(portions)
    say(
        {
            "volume_ml": together.volume_ml,
            "strength_percent": together.strength_percent,
        },
        as_json=as_json,
        rows=[
            ("volume", amount_text(together.volume_ml, "ml")),
            ("strength", amount_text(together.strength_percent, "%")),
        ],
    )


@stock.command()
@click.option(
    "--from", "first", type=words.STRENGTH, required=True, help="First strength, as 2%."
)
@click.option(
    "--to", "last", type=words.STRENGTH, required=True, help="Last strength, as 0.05%."
)
@click.option(
    "--steps",
    type=words.COUNT,
    required=True,
    help="How many strengths, 2 to 100, both ends counted, as 6.",
)
@as_json
def series(*, first: float, last: float, steps: int, as_json: bool) -> None:
    """List strengths that fall or rise by the same factor."""
    strengths = geometric_series_percent(
        first_percent=first, last_percent=last, steps=steps
    )
    say(
        {"strengths_percent": list(strengths)},
        as_json=as_json,
        rows=[
            (f"{number}", amount_text(strength, "%"))
            for number, strength in enumerate(strengths, start=1)
        ],
    )
