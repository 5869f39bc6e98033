"""Set the lots aside that a whole order comes out of."""

from django.db import transaction

from shadewright.errors import ConflictError
from shadewright.records import order_reads, selling_reads
from shadewright.workflows.days.order_edits import keep_holding
from shadewright.workflows.days.shares import share_bath
from shadewright.workflows.judging.sharing import OrderFrom, sharing
from shadewright.workflows.judging.standards import OfWhat, of_what
from shadewright.workflows.stamps import Stamp


def of_line(line_id: int) -> OfWhat:
    """Return which colourway on which base a line of an open order asks for."""
    row = selling_reads.order_line_row(line_id)
    return of_what(recipe_id=row.recipe_id, base_id=row.base_id)


@transaction.atomic
def set_aside(line_id: int, *, stamp: Stamp) -> OrderFrom:
    """Let the lots that were found for a line be for it, and return what was found.

    Pressed twice, it is set aside once. What the line held before stands in the
    order's ledger.
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
    shares = order_reads.shares_of([line_id])
    known, held = {each.bath.number: each.skeins for each in shares}, dict(asked.aside)
    was = {lot: known.get(lot, 0) for lot, _taken in asked.parts}
    now = {lot: held.get(lot, 0) + taken for lot, taken in asked.parts}
    for lot, skeins in now.items():
        share_bath(line_id=line_id, number=lot, skeins=skeins)
    keep_holding(selling_reads.order_line_row(line_id), was, now, stamp)
    return asked
