"""Yarn that goes out with an order leaves the count of its lot, and can come back."""

from collections import Counter
from collections.abc import Iterator

from shadewright.records import lot_reads, order_reads
from shadewright.records.models import LotLine, Order
from shadewright.records.models.lots import LotAct
from shadewright.records.writes import keep_lot_line
from shadewright.workflows.days.yields import yield_of
from shadewright.workflows.stamps import Stamp


def take_away(order: Order, stamp: Stamp) -> None:
    """Count what an order has of each lot out of it, and no more than it asked for."""
    sent: Counter[str] = Counter()
    for line in order.lines.filter(is_dropped=False):
        left = line.skeins
        for share in order_reads.shares_of([line.pk]):
            given = yield_of(share.bath.number)
            taken = min(left, given.kept.get(line.pk, 0)) if given.is_on_shelf else 0
            sent[given.number] += taken
            left -= taken
    for number, skeins in sorted(sent.items()):
        if skeins:
            _count_out(number, skeins, order, stamp)


def put_back(order: Order, stamp: Stamp) -> None:
    """Take the lines back by which an order’s yarn left its lots."""
    for line in _sent(order):
        keep_lot_line(LotLine(lot=line.lot, act=LotAct.UNDO, undoes=line), stamp)


def _count_out(number: str, skeins: int, order: Order, stamp: Stamp) -> None:
    left = LotLine(
        lot=lot_reads.lot_row(number),
        act=LotAct.COUNTED,
        value=yield_of(number).skeins - skeins,
        note=f"{skeins} went out{_with(order)}",
    )
    keep_lot_line(left, stamp)


def _sent(order: Order) -> Iterator[LotLine]:
    rows = LotLine.objects.filter(act=LotAct.COUNTED, undone_by=None)
    yield from rows.filter(note__endswith=_with(order)).select_related("lot")


def _with(order: Order) -> str:
    return f" with order {order.number}"
