"""Swatch tags: what is tied to a swatch once it is dry, and what goes into the pot.

Paper does not live through a pot. In it go tags written by hand, in pencil or
waterproof marker; the sheet begins with the numbers to write on them.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.quantities import amount_text
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper.papers import paper_size
from shadewright.paper.squares import square_svg
from shadewright.paper.typeset import printable, typeset
from shadewright.paper.words import day_words

MOST_TAGS = 200
_MOST_DOSES = 8


@dataclass(frozen=True, kw_only=True)
class SwatchTag:
    """One swatch; ``depths_percent`` is each dye by name, on weight of fibre."""

    number: str
    qr_text: str
    recipe: str
    base_name: str
    depths_percent: Mapping[str, float]
    dyed_on: dt.date
    is_demo: bool = False


def swatch_tags_pdf(
    tags: Sequence[SwatchTag], *, paper: str = "a4", printed_on: dt.date
) -> bytes:
    """Return the tags as a PDF, to be cut along the dotted lines."""
    return typeset("swatch_tags.typ", data=tags_data(tags, paper=paper), on=printed_on)


def tags_data(tags: Sequence[SwatchTag], *, paper: str) -> Mapping[str, object]:
    """Return what the template is given: the paper's size and the texts."""
    if not tags:
        raise MissingError(
            name="A swatch", advice="Choose at least one to tag.", argument="number"
        )
    if len(tags) > MOST_TAGS:
        raise OutOfRangeError(
            name="The number of tags",
            given=str(len(tags)),
            allowed=f"at most {MOST_TAGS} at a time",
            argument="number",
        )
    names = ", ".join(tag.number for tag in tags[:6])
    return {
        "title": f"Swatch tags: {names}{', …' if tags[6:] else ''}",
        "page_mm": paper_size(paper),
        "tags": [_texts(tag) for tag in tags],
    }


def _texts(tag: SwatchTag) -> Mapping[str, object]:
    return {
        "number": tag.number,
        "square": square_svg(tag.qr_text),
        "recipe": printable(tag.recipe[:90]),
        "base": f"on {printable(tag.base_name[:60])}",
        "doses": _doses(tag.depths_percent),
        "day": day_words(tag.dyed_on),
        "demo": tag.is_demo,
    }


def _doses(depths_percent: Mapping[str, float]) -> list[str]:
    said = [
        f"{dye[:60]} {amount_text(depth, '%')}" for dye, depth in depths_percent.items()
    ]
    rest = len(said) - _MOST_DOSES
    if rest <= 0:
        return said
    return [*said[:_MOST_DOSES], f"and {rest} more: see the bath’s page"]
