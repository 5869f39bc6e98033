"""The sheet of a set of swatches: every jar on one page, to tick at the bench.

First what is thinned or made, then one row a swatch: the number to write on its tag
for the pot, its doses with bottle, ml and g, its water and acid. It is readable in
black and white, and says in words what a colour would.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.errors import MissingError
from shadewright.paper.bath_card import SAFETY
from shadewright.paper.papers import paper_size
from shadewright.paper.typeset import printable, typeset
from shadewright.paper.words import day_words

_TAGS = (
    "Write the number of each row on an in-pot tag before the yarn is wet: pencil or "
    "waterproof marker on something that lives through acid and heat."
)


@dataclass(frozen=True, kw_only=True)
class SheetDose:
    """A dose: what it is measured from, how much, and the same in the other unit."""

    dye: str
    depth: str
    bottle: str
    strength: str
    amount: str
    beside: str


@dataclass(frozen=True, kw_only=True)
class SheetSwatch:
    """A row: the swatch's number in the set, its bath's, its doses, all else."""

    place: int
    number: str
    doses: tuple[SheetDose, ...]
    water: str
    helpers: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class SwatchPlanSheet:
    """A set; ``first`` says which stocks are had first, ``facts`` words with values."""

    name: str
    facts: tuple[tuple[str, str], ...]
    first: tuple[str, ...]
    heat: str
    swatches: tuple[SheetSwatch, ...]
    dyed_on: dt.date
    cautions: tuple[str, ...] = ()
    is_demo: bool = False


def swatch_plan_pdf(
    sheet: SwatchPlanSheet, *, paper: str = "a4", printed_on: dt.date
) -> bytes:
    """Return the sheet as a PDF, on as many pages as its rows take."""
    return typeset("swatch_plan.typ", data=plan_data(sheet, paper=paper), on=printed_on)


def plan_data(sheet: SwatchPlanSheet, *, paper: str) -> Mapping[str, object]:
    """Return what the template is given: the paper's size and the texts."""
    if not sheet.swatches:
        raise MissingError(
            name="A swatch", advice="All of this set were given up.", argument="plan"
        )
    return {
        "title": f"Swatches to dye: {printable(sheet.name[:80])}",
        "page_mm": paper_size(paper),
        "name": printable(sheet.name[:80]),
        "day": day_words(sheet.dyed_on),
        "facts": [{"word": word, "said": said} for word, said in sheet.facts],
        "first": [printable(each[:200]) for each in sheet.first],
        "heat": printable(sheet.heat[:300]),
        "tags": _TAGS,
        "cautions": list(sheet.cautions),
        "safety": SAFETY,
        "demo": sheet.is_demo,
        "swatches": _rows(sheet.swatches),
    }


def _rows(swatches: Sequence[SheetSwatch]) -> list[Mapping[str, object]]:
    return [
        {
            "place": str(each.place),
            "number": each.number,
            "doses": [_dose(dose) for dose in each.doses],
            "water": each.water,
            "helpers": [printable(helper[:80]) for helper in each.helpers],
        }
        for each in swatches
    ]


def _dose(dose: SheetDose) -> Mapping[str, str]:
    return {
        "dye": printable(dose.dye[:60]),
        "depth": dose.depth,
        "bottle": dose.bottle,
        "strength": dose.strength,
        "amount": dose.amount,
        "beside": dose.beside,
    }
