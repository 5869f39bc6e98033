"""Yarn that goes out with an order leaves the count of its lot, and can come back."""

from collections.abc import Iterator

from shadewright.records import lot_reads
from shadewright.records.models import BathFor, Lot, LotLine, Order
from shadewright.records.models.lots import LotAct
from shadewright.records.writes import keep_lot_line
from shadewright.workflows.days.yields import yield_of
from shadewright.workflows.lot_lines import held
from shadewright.workflows.stamps import Stamp


def take_away(order: Order, stamp: Stamp) -> None:
    """Count what an order has of each lot out of it."""
    shares = BathFor.objects.filter(line__order=order, line__is_dropped=False)
    for number in sorted(set(shares.values_list("bath__number", flat=True))):
        lot = lot_reads.lot_rows().filter(number=number).first()
        if lot is not None:
            _count_out(lot, order, stamp)


def put_back(order: Order, stamp: Stamp) -> None:
    """Take the lines back by which an order’s yarn left its lots."""
    for line in _sent(order):
        keep_lot_line(LotLine(lot=line.lot, act=LotAct.UNDO, undoes=line), stamp)


def _count_out(lot: Lot, order: Order, stamp: Stamp) -> None:
    given = yield_of(lot.number)
    lines = {line.pk for line in order.lines.all()}
    sent = sum(count for line_id, count in given.kept.items() if line_id in lines)
    if sent and held(lot.lines.all()).grade is not None:
        left = LotLine(
            lot=lot,
            act=LotAct.COUNTED,
            value=given.skeins - sent,
            note=_note(order, sent),
        )
        keep_lot_line(left, stamp)


def _sent(order: Order) -> Iterator[LotLine]:
    rows = LotLine.objects.filter(act=LotAct.COUNTED, undone_by=None)
    yield from rows.filter(note__endswith=_with(order)).select_related("lot")


def _note(order: Order, sent: int) -> str:
    return f"{sent} went out{_with(order)}"


def _with(order: Order) -> str:
    return f" with order {order.number}"
