"""``shadewright difference``: how far two colours are apart, and which way."""

from dataclasses import dataclass

import click

from shadewright.cli.answers import Rows, as_json, say
from shadewright.cli.commands import SumCommand
from shadewright.core.colour import (
    GreyScale,
    Lab,
    ciede2000,
    cmc,
    difference_words,
    grey_scale,
)
from shadewright.core.quantities import NO_BREAK, number_text
from shadewright.exchange.colour_text import measured_lab, typed_colour

CARRIED = "smoothest reflectance, from D65/2° to D65/10°"
FROM_A_SCREEN = (
    "A screen’s colour is meant for another field of view and no screen keeps to it: "
    "trust such a difference to a few units."
)
VIVID_BLUE = (
    "In vivid blues the grey scale’s own sum takes a little off the difference; that "
    "is left out here, so the grade may be half a step or a whole one too low."
)


@dataclass(frozen=True, kw_only=True)
class Given:
    """A colour as it was typed, and as a meter would read it."""

    lab: Lab
    hex_code: str

    @property
    def evidence(self) -> str:
        """What the colour rests on."""
        return "screen" if self.hex_code else "lab"

    def as_answer(self) -> dict[str, object]:
        """Return the colour as plain values."""
        return {
            "lab": list(self.lab),
            "evidence": self.evidence,
            "carried_by": CARRIED if self.hex_code else None,
        }

    def text(self) -> str:
        """Return the colour as a person reads it."""
        numbers = ", ".join(number_text(part, digits=3) for part in self.lab)
        source = f"  ({self.hex_code} of a screen)" if self.hex_code else ""
        return f"Lab {numbers}{source}"


@click.command("difference", cls=SumCommand)
@click.argument("standard", metavar="STANDARD")
@click.argument("sample", metavar="SAMPLE")
@as_json
def difference(*, standard: str, sample: str, as_json: bool) -> None:
    """Say how far SAMPLE is from STANDARD: Lab=50,2.7,-79.8 or a CSS colour."""
    one, other = _given(standard, "standard"), _given(sample, "sample")
    grade = grey_scale(one.lab, other.lab)
    distances = ciede2000(one.lab, other.lab), cmc(one.lab, other.lab)
    words = difference_words(one.lab, other.lab)
    warnings = _warnings(one, other, grade)
    say(
        {
            "ciede2000": distances[0],
            "cmc_2_1": distances[1],
            "grey_scale": grade.rating,
            "grey_scale_step": grade.step,
            "words": words,
            "standard": one.as_answer(),
            "sample": other.as_answer(),
            "warnings": warnings,
        },
        as_json=as_json,
        rows=_rows(one, other, distances, grade, words),
        warnings=warnings,
    )


def _given(text: str, argument: str) -> Given:
    typed = typed_colour(text, argument=argument)
    return Given(lab=Lab(*measured_lab(typed)), hex_code=typed.hex_code)


def _rows(
    one: Given,
    other: Given,
    distances: tuple[float, float],
    grade: GreyScale,
    words: str,
) -> Rows:
    return [
        ("standard", one.text()),
        ("sample", other.text()),
        ("in words", words),
        ("CIEDE2000", number_text(distances[0], digits=3)),
        ("CMC(2:1)", number_text(distances[1], digits=3)),
        ("grey scale", f"grade{NO_BREAK}{grade.step}"),
    ]


def _warnings(one: Given, other: Given, grade: GreyScale) -> list[str]:
    is_screen = "screen" in {one.evidence, other.evidence}
    told = ((is_screen, FROM_A_SCREEN), (grade.is_vivid_blue, VIVID_BLUE))
    return [words for holds, words in told if holds]
