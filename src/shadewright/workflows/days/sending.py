"""Yarn that goes out with an order leaves its lots, and can come back."""

from collections.abc import Iterator

from shadewright.records import lot_reads, order_reads, selling_reads
from shadewright.records.models import Order, OrderLine, SkeinsOut
from shadewright.records.writes import keep_line
from shadewright.workflows.days.yields import yield_of
from shadewright.workflows.stamps import Stamp


def take_away(order: Order, stamp: Stamp) -> None:
    """Write what an order has of each lot as gone, and no more than it asked for."""
    for line in order.lines.filter(is_dropped=False):
        for number, skeins in _of_line(line):
            keep_line(
                SkeinsOut(
                    lot=lot_reads.locked_lot_row(number),
                    skeins=skeins,
                    to_whom=order.for_whom,
                    order_line=line,
                ),
                stamp,
            )


def put_back(order: Order, stamp: Stamp) -> None:
    """Take the lines back by which an order’s yarn left its lots."""
    for line in selling_reads.standing_skeins_out().filter(order_line__order=order):
        keep_line(line.counter(), stamp)


def _of_line(line: OrderLine) -> Iterator[tuple[str, int]]:
    left = line.skeins - sum(
        each.skeins
        for each in selling_reads.standing_skeins_out().filter(order_line=line)
    )
    for share in order_reads.shares_of([line.pk]):
        given = yield_of(share.bath.number)
        kept = given.kept.get(line.pk, 0) if given.is_on_shelf else 0
        taken = min(left, kept)
        if taken > 0:
            yield given.number, taken
            left -= taken
