"""``shadewright palette match`` and ``correct``: from a colour to doses."""

import time
from pathlib import Path

import click

from shadewright.cli import words
from shadewright.cli.answers import as_json, say
from shadewright.cli.colour_files import palette_in, target_spectrum_in
from shadewright.cli.colour_words import colour, count, dye_names, light, tolerance
from shadewright.cli.commands import SumCommand
from shadewright.cli.palette_options import doses_given, on_base, palette_file
from shadewright.core.baths import Dose
from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.quantities import percent

Colour = tuple[float, float, float]


@click.command(cls=SumCommand)
@palette_file
@on_base
@click.option(
    "--target",
    type=words.Written(colour, called="Colour"),
    help="The colour wanted, as Lab=50,2.7,-79.8 or #a0522d.",
)
@click.option(
    "--target-spectrum",
    type=click.Path(path_type=Path),
    help="The same as a spectrum: a file with R400 to R700; its first is taken.",
)
@click.option(
    "--most-dyes",
    type=words.Written(count, called="Most dyes"),
    default="4",
    show_default=True,
    help="Dyes in one recipe, 1 to 4.",
)
@click.option(
    "--top",
    type=words.Written(count, called="Recipes asked for"),
    default="10",
    show_default=True,
    help="How many recipes, a plain number.",
)
@click.option(
    "--most-depth",
    "most_depth_percent",
    type=words.Written(percent, called="Most depth of all dyes"),
    default="6%",
    show_default=True,
    help="Depth of all dyes together.",
)
@click.option(
    "--with",
    "wanted",
    type=words.Written(dye_names, called="Dyes wanted"),
    default="",
    help="Dyes that are in every recipe, as Gorse,Slate.",
)
@click.option(
    "--without",
    "unwanted",
    type=words.Written(dye_names, called="Dyes left out"),
    default="",
    help="Dyes that are in none, as Kelp.",
)
@click.option(
    "--light",
    "lights",
    type=words.Written(light, called="Light"),
    multiple=True,
    help="A light under which a spectrum is to be met besides daylight; usually A.",
)
@click.option(
    "--tolerance",
    type=words.Written(tolerance, called="Tolerance"),
    default="1.0",
    show_default=True,
    help="CIEDE2000 that still passes.",
)
@as_json
def match(  # ruff: ignore[too-many-arguments] - one for each option
    *,
    palette_file: Path,
    base: str,
    target: Colour | None,
    target_spectrum: Path | None,
    most_dyes: int,
    top: int,
    most_depth_percent: float,
    wanted: tuple[str, ...],
    unwanted: tuple[str, ...],
    lights: tuple[Light, ...],
    tolerance: float,
    as_json: bool,
) -> None:
    """Find the recipes that give a colour, and say how sure each is."""
    start = time.perf_counter()
    if (target is None) == (target_spectrum is None):
        either = "Name a --target or a --target-spectrum: one of the two."
        raise click.UsageError(either)
    found = palette_in(palette_file)
    from shadewright.cli.recipe_texts import (
        match_answer,
        match_rows,
        match_warnings,
        unused_lights,
    )
    from shadewright.core.recipes import (
        Wishes,
        matches,
        target_of_labs,
        target_of_spectrum,
    )

    if target_spectrum is None:
        aim = target_of_labs({Light.D65: Lab(*(target or ()))})
    else:
        spectrum = target_spectrum_in(target_spectrum)
        aim = target_of_spectrum(spectrum, lights=lights or (Light.A,))
    answer = matches(
        found,
        base=base,
        target=aim,
        wishes=Wishes(
            most_dyes=most_dyes,
            most_depth_percent=most_depth_percent,
            wanted=wanted,
            unwanted=unwanted,
        ),
        top=top,
        tolerance=tolerance,
    )
    seconds = time.perf_counter() - start
    say(
        match_answer(answer, aim, seconds),
        as_json=as_json,
        rows=match_rows(answer),
        warnings=[
            *match_warnings(answer, tolerance),
            *unused_lights(lights, aim),
        ],
    )


@click.command(cls=SumCommand)
@palette_file
@on_base
@doses_given
@click.option(
    "--measured",
    type=words.Written(colour, called="Colour"),
    required=True,
    help="What the yarn is now, rinsed and dry, as Lab=50,2.7,-79.8.",
)
@click.option(
    "--target",
    type=words.Written(colour, called="Colour"),
    required=True,
    help="The colour wanted.",
)
@as_json
def correct(
    *,
    palette_file: Path,
    base: str,
    doses: tuple[Dose, ...],
    measured: Colour,
    target: Colour,
    as_json: bool,
) -> None:
    """Say what to add to a bath that came out beside its target."""
    found = palette_in(palette_file)
    from shadewright.cli.recipe_texts import (
        correct_answer,
        correct_rows,
        correct_warnings,
    )
    from shadewright.core.recipes import correction

    answer = correction(
        found,
        base=base,
        doses=tuple((dose.dye, dose.depth_percent) for dose in doses),
        measured=Lab(*measured),
        target=Lab(*target),
    )
    say(
        correct_answer(answer),
        as_json=as_json,
        rows=correct_rows(answer),
        warnings=correct_warnings(answer),
    )
