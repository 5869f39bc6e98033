"""``shadewright palette``: colour from swatch files, without a studio."""

from pathlib import Path

import click

from shadewright.cli import words
from shadewright.cli.answers import as_json, say
from shadewright.cli.colour_files import (
    doses_from_words,
    palette_in,
    swatches_in,
    write_file,
)
from shadewright.cli.colour_words import colour, count, light, surface_share
from shadewright.cli.commands import SumGroup
from shadewright.cli.palette_options import doses_given, on_base, palette_file
from shadewright.cli.palette_recipes import correct, match
from shadewright.core.baths import Dose
from shadewright.core.colour.spectra.lights import Light


@click.group(cls=SumGroup)
def palette() -> None:
    """Learn a palette from swatches; foretell any mix; find recipes for a colour."""


palette.add_command(match)
palette.add_command(correct)


@palette.command()
@click.argument("swatch_file", metavar="SWATCHES.csv", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    required=True,
    help="Where the palette is written, as PALETTE.json.",
)
@click.option(
    "--surface",
    type=words.Written(surface_share, called="Surface term"),
    default="0.5%",
    show_default=True,
    help="Light off the fibre’s surface that the fit starts from; it is learned.",
)
@as_json
def fit(*, swatch_file: Path, output: Path, surface: float, as_json: bool) -> None:
    """Learn every dye on every base from a table of swatches."""
    from shadewright.cli.palette_texts import fit_answer, fit_rows, fit_warnings
    from shadewright.core.mixing import learn
    from shadewright.exchange.palette_file import written_palette

    read = swatches_in(swatch_file)
    learned = learn(read.swatches, start_surface=surface)
    write_file(output, written_palette(learned.palette))
    say(
        fit_answer(learned, read.rejected),
        as_json=as_json,
        rows=fit_rows(learned, output),
        warnings=fit_warnings(learned, read.rejected),
    )


@palette.command()
@palette_file
@on_base
@doses_given
@click.option(
    "--doses",
    "dose_table",
    type=click.Path(path_type=Path),
    help="A table with a column “doses” as in SWATCHES.csv: many mixes at once.",
)
@click.option(
    "--light",
    "lights",
    type=words.Written(light, called="Light"),
    multiple=True,
    help="A light to show the colour under besides, as A, FL11, LED-B3.",
)
@click.option(
    "--session",
    default="",
    help="A session of the swatch file, for a further dyeing of that day.",
)
@as_json
def predict(
    *,
    palette_file: Path,
    base: str,
    doses: tuple[Dose, ...],
    dose_table: Path | None,
    lights: tuple[Light, ...],
    session: str,
    as_json: bool,
) -> None:
    """Foretell the colour of a mix, and how far it may be off."""
    from shadewright.cli.palette_texts import told_answers, told_rows
    from shadewright.core.mixing import Mix, told_mixes

    if bool(doses) == (dose_table is not None):
        either = "Name a --dose for each dye, or a table with --doses: one of the two."
        raise click.UsageError(either)
    found = palette_in(palette_file, session=session)
    wanted = (
        [tuple((dose.dye, dose.depth_percent) for dose in doses)]
        if dose_table is None
        else doses_from_words(dose_table)
    )
    mixes = [Mix(base=base, doses=each, session=session) for each in wanted]
    told = told_mixes(mixes, palette=found)
    answers = told_answers(mixes, told, lights)
    say(
        answers[0] if dose_table is None else {"predictions": answers},
        as_json=as_json,
        rows=told_rows(answers),
    )


@palette.command("next")
@palette_file
@on_base
@click.option(
    "--count",
    type=words.Written(count, called="Count"),
    default="12",
    show_default=True,
    help="How many swatches, a plain number.",
)
@click.option(
    "--towards",
    type=words.Written(colour, called="Colour"),
    help="A colour that matters most, as Lab=50,2.7,-79.8 or #a0522d.",
)
@as_json
def next_(
    *,
    palette_file: Path,
    base: str,
    count: int,
    towards: tuple[float, float, float] | None,
    as_json: bool,
) -> None:
    """Say which swatches to dye next to learn most."""
    from shadewright.cli.palette_texts import next_answer, next_rows
    from shadewright.core.mixing.advising import advised_swatches

    found = palette_in(palette_file)
    advised = advised_swatches(found, base=base, count=count, towards=towards)
    say(next_answer(advised), as_json=as_json, rows=next_rows(advised))
