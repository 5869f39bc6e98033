"""Set the lots aside that a whole order comes out of, and put them back."""

from collections.abc import Mapping

from django.db import transaction

from shadewright.errors import ConflictError
from shadewright.records import selling_reads
from shadewright.workflows.days.shares import share_bath
from shadewright.workflows.judging.sharing import OrderFrom, sharing
from shadewright.workflows.judging.standards import OfWhat, of_what


def of_line(line_id: int) -> OfWhat:
    """Return which colourway on which base a line of an open order asks for."""
    row = selling_reads.order_line_row(line_id)
    return of_what(recipe_id=row.recipe_id, base_id=row.base_id)


@transaction.atomic
def set_aside(line_id: int) -> OrderFrom:
    """Let the lots that were found for a line be for it, and return what was found.

    Pressed twice, it is set aside once.
    """
    what = of_line(line_id)
    found = sharing(recipe_id=what.recipe_id, base_id=what.base_id)
    asked = next((each for each in found.orders if each.line_id == line_id), None)
    if asked is None or not asked.open:
        raise ConflictError(why="That order has all of its skeins.")
    if not asked.parts:
        raise ConflictError(
            why=f"No lot, and no group of lots that share, holds {asked.open} free "
            f"skeins for order {asked.order}.",
            advice="Orders that are due sooner come first. Take skeins on its own "
            "page, let those of another go, or dye more.",
        )
    before = dict(asked.aside)
    for lot, taken in asked.parts:
        share_bath(line_id=line_id, number=lot, skeins=before.get(lot, 0) + taken)
    return asked


@transaction.atomic
def put_back(line_id: int, held: Mapping[str, int]) -> None:
    """Let a line have so many skeins of each of some lots, as it had before."""
    for lot, skeins in held.items():
        share_bath(line_id=line_id, number=lot, skeins=skeins)
