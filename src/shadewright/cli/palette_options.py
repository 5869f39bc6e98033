"""Options that several commands of ``shadewright palette`` share."""

from pathlib import Path

import click

from shadewright.cli import words
from shadewright.cli.dose_words import dose_from_words

palette_file = click.argument(
    "palette_file", metavar="PALETTE.json", type=click.Path(path_type=Path)
)
on_base = click.option("--base", required=True, help="The yarn, as in the swatch file.")
doses_given = click.option(
    "--dose",
    "doses",
    type=words.Written(dose_from_words, called="Dose"),
    multiple=True,
    help="NAME=DEPTH, as Gorse=0.6%; once for each dye.",
)
