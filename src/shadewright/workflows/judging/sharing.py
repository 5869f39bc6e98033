"""Which lots may share a sweater, and out of which lots each order comes."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import inf
from typing import Final

from django.db.models import Q

from shadewright.core.quality import SharingGroup, allocated, sharing_groups
from shadewright.errors import MissingError
from shadewright.records import lot_reads, selling_reads
from shadewright.records.models import Correction, Lot, OrderLine
from shadewright.records.models.lots import Grade
from shadewright.workflows.days.yields import BathYield, yields_of
from shadewright.workflows.judging.standards import OfWhat, judged_as, of_what
from shadewright.workflows.judging.tolerances import tolerances_now
from shadewright.workflows.lot_lines import held
from shadewright.workflows.lot_skeins import skeins_of_lots
from shadewright.workflows.shades.kinds import SPREADS
from shadewright.workflows.shades.wanted import Wanted, wanted_of_lot

MOST: Final = 100
"""The newest lots that are held against each other."""


@dataclass(frozen=True, kw_only=True)
class SharingLot:
    """A lot with the skeins that are left of it; None where nobody counted them.

    ``aside`` of them are for orders already.
    """

    number: str
    left: int | None
    aside: int = 0

    @property
    def free(self) -> int:
        """Counted skeins that no order waits for."""
        return max(0, (self.left or 0) - self.aside)


@dataclass(frozen=True, kw_only=True)
class LotGroup:
    """Lots every two of which are alike; ``widest`` is the largest distance."""

    lots: tuple[SharingLot, ...]
    widest: float

    @property
    def left(self) -> int:
        """How many counted skeins are left of all of them."""
        return sum(each.left or 0 for each in self.lots)


@dataclass(frozen=True, kw_only=True)
class OrderFrom:
    """An order and the lots that it comes out of; no parts where it cannot be.

    ``line_id`` is its line, None for what is only asked; ``aside`` are the lots and
    planned baths that hold skeins for it already, the rest of ``wanted`` being open.
    """

    line_id: int | None
    order: int
    for_whom: str
    wanted: int
    parts: tuple[tuple[str, int], ...]
    aside: tuple[tuple[str, int], ...] = ()

    @property
    def open(self) -> int:
        """Skeins that nothing holds yet."""
        return self.wanted - sum(skeins for _lot, skeins in self.aside)

    @property
    def is_mixed(self) -> bool:
        """Whether more than one lot is in it."""
        return len({lot for lot, _skeins in (*self.aside, *self.parts)}) > 1


@dataclass(frozen=True, kw_only=True)
class Sharing:
    """The lots of a recipe on a base.

    ``unsure`` were read too coarsely to tell, ``unread`` not at all.
    """

    what: OfWhat
    tolerance: float
    groups: tuple[LotGroup, ...]
    unsure: tuple[SharingLot, ...]
    unread: tuple[SharingLot, ...]
    orders: tuple[OrderFrom, ...]


def sharing(*, recipe_id: int, base_id: int, wanted: int | None = None) -> Sharing:
    """Return which lots may share, and where open orders come from.

    ``wanted`` asks for so many skeins besides, after the orders that are open.
    """
    what, tolerance = of_what(recipe_id=recipe_id, base_id=base_id), _tolerance()
    yields = yields_of(recipe_ids={recipe_id}, base_ids={base_id})
    lots = {each.number: each for each in _lots(what, yields)}
    colours = {number: _colour(number) for number in lots}
    sure = {
        number: wanted_.lab
        for number, wanted_ in colours.items()
        if wanted_ is not None and SPREADS.get(wanted_.read_by, inf) <= tolerance
    }
    found = sharing_groups(sure, tolerance=tolerance)
    return Sharing(
        what=what,
        tolerance=tolerance,
        groups=tuple(_group(each, lots) for each in found),
        unsure=tuple(
            lots[n] for n, w in colours.items() if w is not None and n not in sure
        ),
        unread=tuple(lots[n] for n, w in colours.items() if w is None),
        orders=tuple(_orders(what, lots, found, yields, wanted)),
    )


def recipes_shared() -> tuple[OfWhat, ...]:
    """Return the recipes and bases of which there are lots, the newest first."""
    rows = lot_reads.lot_rows().filter(bath__is_swatch=False)[: 4 * MOST]
    baths = {(x.bath.version.recipe_id, x.bath.base_id): x.bath for x in rows}
    return tuple(dict.fromkeys(map(judged_as, baths.values())))


def _tolerance() -> float:
    return tolerances_now().steps.match


def _lots(what: OfWhat, yields: Sequence[BathYield]) -> Iterator[SharingLot]:
    """Yield the first-grade lots that are here.

    Yields
    ------
    SharingLot
        Lots of which skeins are left or were never counted.
    """
    rows = [row for row in _rows(what) if _is_for_sale(row)][:MOST]
    skeins = skeins_of_lots(row.number for row in rows)
    aside = {each.number: sum(each.kept.values()) for each in yields}
    for row in rows:
        left = skeins[row.number].left
        if left != 0:
            yield SharingLot(
                number=row.number, left=left, aside=aside.get(row.number, 0)
            )


def _rows(what: OfWhat) -> Iterator[Lot]:
    """Yield the lots that are held against the same standard.

    Yields
    ------
    Lot
        Those dyed by the recipe, and those that were corrected or overdyed to it.
    """
    again = set(
        Correction.objects.filter(
            recipe__versions__baths__lot__isnull=False
        ).values_list("lot_id", flat=True)
    )
    rows = lot_reads.lot_rows().filter(
        Q(bath__version__recipe_id=what.recipe_id)
        | Q(bath__version__recipe__correction__isnull=False),
        bath__base_id=what.base_id,
        bath__is_swatch=False,
    )
    for row in rows:
        if row.pk not in again and judged_as(row.bath).recipe_id == what.recipe_id:
            yield row


def _is_for_sale(row: Lot) -> bool:
    lines = tuple(row.lines.all())
    return bool(lines) and held(lines).grade in {None, Grade.FIRST}


def _colour(number: str) -> Wanted | None:
    try:
        return wanted_of_lot(number)
    except MissingError:
        return None


def _group(found: SharingGroup, lots: Mapping[str, SharingLot]) -> LotGroup:
    return LotGroup(
        lots=tuple(lots[number] for number in found.lots), widest=found.widest
    )


def _orders(
    what: OfWhat,
    lots: Mapping[str, SharingLot],
    groups: tuple[SharingGroup, ...],
    yields: Sequence[BathYield],
    wanted: int | None,
) -> Iterator[OrderFrom]:
    """Yield where each order comes from, what is taken being gone for the next.

    Yields
    ------
    OrderFrom
        The orders by the day they are due.
    """
    free = {number: lot.free for number, lot in lots.items()}
    rows = selling_reads.open_lines_for(recipe_id=what.recipe_id, base_id=what.base_id)
    asked = [_asked(row, yields) for row in rows]
    if wanted:
        asked.append(
            OrderFrom(line_id=None, order=0, for_whom="", wanted=wanted, parts=())
        )
    for each in asked:
        if each.wanted < 1:
            continue
        parts: tuple[tuple[str, int], ...] = ()
        if each.open > 0:
            parts = allocated(
                each.open, left=free, groups=[group.lots for group in groups]
            ).parts
        for lot, taken in parts:
            free[lot] -= taken
        yield replace(each, parts=parts)


def _asked(row: OrderLine, yields: Sequence[BathYield]) -> OrderFrom:
    aside = ((each.number, each.kept.get(row.pk, 0)) for each in yields)
    return OrderFrom(
        line_id=row.pk,
        order=row.order.number,
        for_whom=row.order.for_whom,
        wanted=_still(row),
        parts=(),
        aside=tuple((number, skeins) for number, skeins in aside if skeins),
    )


def _still(row: OrderLine) -> int:
    out = selling_reads.standing_skeins_out().filter(order_line=row)
    return row.skeins - sum(out.values_list("skeins", flat=True))
