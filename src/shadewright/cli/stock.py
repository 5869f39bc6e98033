"""``shadewright stock``: from a powder jar to a bottle of known strength."""

import click

from shadewright.cli import stock_texts as texts
from shadewright.cli import words
from shadewright.cli.answers import as_json, say
from shadewright.cli.commands import SumGroup
from shadewright.cli.stock_making import (
    make,
    refuse_small_vessel,
    strength_of_powder,
    strength_wanted,
    volume_wanted,
)
from shadewright.cli.strength_texts import how_sure_rows, strength_answer
from shadewright.core.quantities import MeasuringTool, amount_text
from shadewright.core.quantities.writing import about_text
from shadewright.core.solutions import (
    Portion,
    diluted_strength,
    dilution,
    geometric_series_percent,
    joined_strength,
    merged,
    rescue_filled,
    rescue_weighed,
)
from shadewright.core.uncertainty import Term, Value, exact
from shadewright.core.uncertainty.tools import volume_read

NO_TERM = (
    "No tool was named, nor a spread of the stock: name --measure, --vessel, or "
    "--have 2%+-1%."
)
NO_SPREAD = "No bottle was given with its spread, as 180ml@1%+-2%."


@click.group(cls=SumGroup)
def stock() -> None:
    """Make, rescue, dilute and merge stock solutions."""


stock.add_command(make)


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
    "--have",
    type=words.SURE_STRENGTH,
    required=True,
    help="Strength at hand, as 2%; with its spread, as 2%+-1%.",
)
@click.option(
    "--want", type=words.STRENGTH, required=True, help="Strength wanted, as 0.5%."
)
@volume_wanted
@click.option(
    "--measure",
    type=words.TOOL,
    help="Takes the stock: “pipette 25ml”.",
)
@click.option(
    "--vessel", type=words.TOOL, help="What it is made up in: “flask 250ml B”."
)
@as_json
def dilute(
    *,
    have: words.SureStrength,
    want: float,
    volume: float,
    measure: MeasuringTool | None,
    vessel: MeasuringTool | None,
    as_json: bool,
) -> None:
    """Make a weaker stock from a stronger one."""
    plan = dilution(have_percent=have.percent, want_percent=want, volume_ml=volume)
    refuse_small_vessel(vessel, volume_ml=volume)
    thinned = diluted_strength(
        stock_percent=_value(have, "the stock"),
        stock_ml=_read(measure, plan.stock_ml, "stock"),
        filled=_read(vessel, volume, "weaker stock"),
    )
    say(
        {
            "stock_ml": plan.stock_ml,
            "water_ml": plan.water_ml,
            **strength_answer(thinned, why_not=NO_TERM),
        },
        as_json=as_json,
        rows=[
            ("stock", amount_text(plan.stock_ml, "ml")),
            ("make up to", amount_text(volume, "ml")),
            ("water", about_text(plan.water_ml, "ml") if plan.water_ml else "none"),
            *how_sure_rows(thinned),
        ],
    )


@stock.command(context_settings={"ignore_unknown_options": True})
@click.argument("portions", type=words.PORTION, nargs=-1, required=True)
@as_json
def merge(*, portions: tuple[words.Poured, ...], as_json: bool) -> None:
    """Pour part bottles of one dye together, each as 180ml@1%."""
    together = merged([
        Portion(volume_ml=one.volume_ml, strength_percent=one.strength.percent)
        for one in portions
    ])
    strength = _poured_together(portions)
    say(
        {
            "volume_ml": together.volume_ml,
            "strength_percent": together.strength_percent,
            **strength_answer(strength, why_not=NO_SPREAD),
        },
        as_json=as_json,
        rows=[
            ("volume", amount_text(together.volume_ml, "ml")),
            ("strength", amount_text(together.strength_percent, "%")),
            *how_sure_rows(strength),
        ],
    )


def _poured_together(portions: tuple[words.Poured, ...]) -> Value:
    """Return the strength together; each bottle brings an error of its own."""
    volume_ml, strength = 0.0, exact(0.0)
    for number, one in enumerate(portions, start=1):
        strength = joined_strength(
            first_percent=strength,
            first_ml=exact(volume_ml),
            second_percent=_value(one.strength, f"bottle {number}"),
            second_ml=exact(one.volume_ml),
        )
        volume_ml += one.volume_ml
    return strength


def _value(strength: words.SureStrength, of: str) -> Value:
    name = f"strength of {of}"
    own = Term(name=name, source=name, u=strength.u_rel * strength.percent)
    return Value(value=strength.percent, terms=(own,) if own.u else ())


def _read(tool: MeasuringTool | None, volume_ml: float, role: str) -> Value:
    if tool is None:
        return exact(volume_ml)
    return volume_read(tool, volume_ml, role=role, key="tool")


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
