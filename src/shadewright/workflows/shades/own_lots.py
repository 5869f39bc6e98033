"""How well the studio repeats itself, out of the colours of its own lots."""

from itertools import groupby

from shadewright.core.quality import Repeatability, repeatability
from shadewright.records import judging_reads
from shadewright.records.models import Bath, Lot
from shadewright.workflows.shades.lot_colours import lot_colours

MOST_LOTS = 120
"""The newest lots tell how the studio repeats itself now. [1]"""


def studio_repeatability() -> Repeatability | None:
    """Return how well the studio repeats itself, by its newest lots; None before two.

    Only colours that a meter read count.
    """
    rows = list(judging_reads.coloured_lots().order_by("-pk")[:MOST_LOTS])
    rows.sort(key=lambda row: (*_kind(row), row.bath.dyed_on, row.pk))
    colours = lot_colours(rows)
    recipes = [
        [
            colours[x.pk].lab
            for x in lots
            if x.pk in colours and colours[x.pk].is_by_meter
        ]
        for _kind_of, lots in groupby(rows, key=_kind)
    ]
    if not any(len(labs) > 1 for labs in recipes):
        return None
    return repeatability(recipes)


def own_lots_differ() -> Repeatability | None:
    """Return it where enough lots tell, so that what is foretold counts it."""
    found = studio_repeatability()
    return found if found is not None and found.is_enough else None


def own_lots_words(found: Repeatability | None) -> str:
    """Return what a prediction says of it; empty where it counts none.

    >>> found = Repeatability(sd=0.4, apart=0.9, u=0.1, lots=15, recipes=6)
    >>> own_lots_words(found)
    'Your own lots of one recipe differ by about 0.9 (15 lots); the spread counts that.'
    """
    if found is None:
        return ""
    return (
        f"Your own lots of one recipe differ by about {found.apart:.1f} "
        f"({found.lots} lots); the spread counts that."
    )


def planned_doses(bath: Bath) -> frozenset[tuple[str, float]]:
    """Return the depths that a bath’s recipe asks for, by dye. [%]."""
    return frozenset((x.dye.name, x.depth_percent) for x in bath.doses.all())


def _kind(row: Lot) -> tuple[int, int, list[tuple[str, float]]]:
    """Return what makes two lots the same: recipe, base and doses."""
    bath = row.bath
    return bath.version.recipe_id, bath.base_id, sorted(planned_doses(bath))
