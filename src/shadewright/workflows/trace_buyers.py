"""The trace to the buyer: below a lot, everybody who has skeins of it."""

from collections.abc import Iterable, Iterator, Mapping

from shadewright.core.quantities import counted
from shadewright.workflows.lot_skeins import (
    LotSkeins,
    WentOut,
    skeins_of,
    skeins_of_lots,
)
from shadewright.workflows.trace_nodes import Kind, Node, day, joined, missing


def onwards_from_lot(number: str) -> Node:
    """Return a lot with its buyers below it, and what nobody can say of its skeins."""
    lot = skeins_of(number)
    return Node(
        kind=Kind.LOT,
        name=number,
        more=_more(lot),
        key=number,
        below=tuple(_below(lot)),
    )


def buyers_below(numbers: Iterable[str]) -> Mapping[str, tuple[Node, ...]]:
    """Return the buyers of many lots, by number, as they hang below them in a trace."""
    lots = skeins_of_lots(numbers)
    return {number: tuple(map(_buyer, lot.out)) for number, lot in lots.items()}


def _more(lot: LotSkeins) -> str:
    if lot.counted is None:
        return "skeins not counted"
    return joined(counted(lot.counted, "skein"), f"{lot.gone} went out")


def _below(lot: LotSkeins) -> Iterator[Node]:
    for bath in lot.back:
        yield Node(
            kind=Kind.LOT_AFTER, name=bath.number, more=bath.name, key=bath.number
        )
    for each in lot.out:
        yield _buyer(each)
    if lot.counted is None:
        yield missing(Kind.SKEINS, "skeins not counted", "count them on the lot’s page")
    elif lot.left and lot.place:
        yield Node(kind=Kind.SKEINS, name=counted(lot.left, "skein"), more=lot.place)
    elif lot.left:
        yield missing(
            Kind.SKEINS,
            counted(lot.left, "skein"),
            "still here? place not written down",
        )


def _buyer(each: WentOut) -> Node:
    order = "" if each.order is None else f"order {each.order}"
    return Node(
        kind=Kind.BUYER,
        name=each.to_whom,
        more=joined(counted(each.skeins, "skein"), day(each.at), order, each.reach),
    )
