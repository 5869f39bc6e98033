"""The recall list: who has skeins of some lots, and what of them nobody can find."""

import csv
import io
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from django.utils import timezone

from shadewright.records import lot_reads, selling_reads
from shadewright.workflows.buyers.kin import Circle, Kin
from shadewright.workflows.lot_skeins import LotSkeins, WentOut, skeins_of_lots

HEAD = ("lot", "colourway", "base", "skeins", "where", "reach", "on", "order", "shares")
_FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r")


@dataclass(frozen=True, kw_only=True)
class Reach:
    """How far a circle of lots went: skeins out, buyers, still here, not counted.

    ``buyers`` are named as they were when they got the first of them.
    """

    circle: Circle
    lots: int
    out: int
    buyers: tuple[str, ...]
    here: int
    uncounted: tuple[str, ...]


def reaches_of(kin: Kin) -> tuple[Reach, ...]:
    """Return how far each circle around a lot reached."""
    circles = kin.circles
    known = skeins_of_lots({lot for each in circles for lot in each.lots})
    return tuple(_reach(each, [known[lot] for lot in each.lots]) for each in circles)


def recall_csv(circle: Circle) -> str:
    """Return a table of everybody who has skeins of a circle's lots.

    A line for each time skeins went out or back into a bath, one for what is still
    here, one where nobody counted. Cells that a spreadsheet would take for a formula
    begin with an apostrophe.
    """
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(HEAD)
    for row in _rows(circle):
        table.writerow([_plain(cell) for cell in row])
    return "\ufeff" + out.getvalue()


def _reach(circle: Circle, lots: list[LotSkeins]) -> Reach:
    gone = [each for lot in lots for each in lot.out]
    named: dict[str, str] = {}
    for each in gone:
        named.setdefault(each.to_whom.casefold(), each.to_whom)
    return Reach(
        circle=circle,
        lots=len(lots),
        out=sum(each.skeins for each in gone),
        buyers=tuple(named.values()),
        here=sum(lot.here or 0 for lot in lots),
        uncounted=tuple(lot.number for lot in lots if lot.left is None),
    )


def _rows(circle: Circle) -> Iterator[tuple[str, ...]]:
    numbers = (*circle.lots, *circle.perhaps)
    known, names = skeins_of_lots(numbers), _names(numbers)
    for number in numbers:
        shares = circle.name if number in circle.lots else f"perhaps {circle.name}"
        for cells in _skeins(known[number]):
            yield (number, *names[number], *cells, shares)


def _skeins(lot: LotSkeins) -> Iterator[tuple[str, ...]]:
    yield from map(_gone, lot.out)
    for bath in lot.back:
        skeins = "the rest" if bath.skeins is None else str(bath.skeins)
        went = "went into bath" if bath.has_lot else "to go, or in the pot, in bath"
        yield (skeins, f"{went} {bath.number}", "", "", "")
    if lot.left is None:
        yield ("not counted", "perhaps still here", "", "", "")
    elif lot.left:
        place = lot.place or "place not written"
        yield (str(lot.left), f"still here: {place}", "", "", "")


def _gone(each: WentOut) -> tuple[str, ...]:
    on = timezone.localdate(each.at).isoformat()
    order = "" if each.order is None else str(each.order)
    return (str(each.skeins), each.to_whom, each.reach, on, order)


def _names(numbers: Iterable[str]) -> dict[str, tuple[str, str]]:
    rows = lot_reads.lot_rows().filter(number__in=set(numbers))
    return {
        row.number: (selling_reads.sold_as(row.bath).name, row.bath.base.name)
        for row in rows
    }


def _plain(cell: str) -> str:
    """Return a cell that a spreadsheet takes as text."""
    return f"'{cell}" if cell.startswith(_FORMULA_SIGNS) else cell
