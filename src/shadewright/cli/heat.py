"""``shadewright heat``: what it takes to bring a bath to a temperature."""

from functools import partial

import click

from shadewright.cli import words
from shadewright.cli.answers import Rows, as_json, say
from shadewright.cli.commands import SumCommand
from shadewright.cli.heat_words import (
    Vessel,
    altitude_from_words,
    source_from_words,
    vessel_from_words,
)
from shadewright.core.baths.heating import HeatSum, HeatWanted, Load, heat_sum
from shadewright.core.quantities import (
    amount_text,
    number_text,
    power_kw,
    require_volume,
    temperature_c,
    volume_ml,
)
from shadewright.core.tables.heat import Source


@click.command("heat", cls=SumCommand)
@click.option(
    "--water",
    type=words.Written(partial(volume_ml, guard=require_volume), called="Water"),
    required=True,
    help="All the liquor in the pot, as 4l.",
)
@click.option(
    "--fibre", type=words.FIBRE, required=True, help="Weight of the dry yarn, as 100g."
)
@click.option(
    "--vessel",
    type=words.Written(vessel_from_words, called="Vessel"),
    required=True,
    help="Weight and material of the pot, as 2kg:stainless (or enamel, aluminium).",
)
@click.option(
    "--from",
    "start",
    type=words.TEMPERATURE,
    required=True,
    help="Temperature of the bath at the start, as 20C.",
)
@click.option(
    "--to",
    "top",
    type=words.Written(temperature_c, called="The aim"),
    required=True,
    help="Temperature to be reached, as 95C.",
)
@click.option(
    "--power",
    type=words.Written(power_kw, called="Power"),
    required=True,
    help="Power of the source, as 1.8kW.",
)
@click.option(
    "--source",
    type=words.Written(source_from_words, called="Source"),
    required=True,
    help="What the pot stands on: gas, coil or induction.",
)
@click.option(
    "--altitude",
    type=words.Written(altitude_from_words, called="Altitude"),
    default="0m",
    help="Height above the sea, as 1600m; without it sea level.",
)
@as_json
def heat(  # ruff: ignore[too-many-arguments] - one for each option
    *,
    water: float,
    fibre: float,
    vessel: Vessel,
    start: float,
    top: float,
    power: float,
    source: Source,
    altitude: float,
    as_json: bool,
) -> None:
    """Reckon the heat for a bath, its minutes, and the fastest rise."""
    load = Load(
        water_ml=water,
        fibre_g=fibre,
        vessel_kg=vessel.mass_kg,
        material=vessel.material,
    )
    wanted = HeatWanted(
        load=load,
        start_c=start,
        top_c=top,
        power_kw=power,
        source=source,
        altitude_m=altitude,
    )
    found = heat_sum(wanted=wanted)
    say(_answer(found), as_json=as_json, rows=_rows(found), warnings=found.warnings)


def _answer(found: HeatSum) -> dict[str, object]:
    return {
        "energy_kwh": found.energy_kwh,
        "input_kwh": found.input_kwh,
        "minutes": found.minutes,
        "fastest_ramp_c_per_min": found.fastest_rise_c_per_min,
        "share": found.share,
        "boils_at_c": found.boils_at_c,
        "warnings": list(found.warnings),
    }


def _rows(found: HeatSum) -> Rows:
    fastest = number_text(found.fastest_rise_c_per_min, digits=3)
    return (
        ("heat into the pot", amount_text(found.energy_kwh, "kWh")),
        ("from the source", amount_text(found.input_kwh, "kWh")),
        ("time", amount_text(found.minutes, "min")),
        ("fastest rise", f"{fastest}\u00a0°C a minute"),
        ("water boils at", f"{number_text(found.boils_at_c, digits=3)}\u00a0°C"),
    )
