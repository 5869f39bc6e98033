"""What baths give to orders and to the shelf, in skeins, as far as it can be known."""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from shadewright.records import order_reads, selling_reads
from shadewright.records.models import Bath, BathFor, OrderLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade
from shadewright.records.selling_reads import BathAfter
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_pages import BathStatus, status_of
from shadewright.workflows.days.rack import wet_now
from shadewright.workflows.lot_lines import Held, held
from shadewright.workflows.stamps import today

_LOT_LATE = timedelta(days=30)
"""A bath without a lot is hoped for no longer than this after its day."""


@dataclass(frozen=True, kw_only=True)
class BathYield:
    """What a bath gives: first-grade skeins of its lot, or those planned.

    ``recipe_id`` is the colourway that they are sold as, corrected or overdyed.
    ``is_drying`` says that it has its lot, but still hangs wet on the rack.
    ``why_none`` says why it gives nothing. ``promised`` is by line of an order what
    was planned for it, ``kept`` what of that it can really have, the most urgent line
    first; ``free`` is nobody's. ``skein_g`` is None where no skeins were counted.
    """

    number: str
    recipe_id: int
    base_id: int
    dyed_on: date
    status: BathStatus
    is_on_shelf: bool
    is_drying: bool
    place: str
    skein_g: float | None
    skeins: int
    why_none: str
    promised: Mapping[int, int]
    kept: Mapping[int, int]

    @property
    def is_to_come(self) -> bool:
        """Whether it has not begun."""
        return self.status is BathStatus.PLANNED

    @property
    def free(self) -> int:
        """Skeins that no order waits for."""
        return self.skeins - sum(self.kept.values())


def yields_of(
    *, recipe_ids: Collection[int], base_ids: Collection[int]
) -> tuple[BathYield, ...]:
    """Return what baths of these recipes and bases give, oldest first.

    And what those give that are for a line of an open order. Yarn of a lot that was
    corrected counts to its colourway, that of an overdyed one to what it became.
    """
    rows = order_reads.serving_baths(
        recipe_ids=recipe_ids, base_ids=base_ids, since=today() - _LOT_LATE
    )
    back: dict[str, list[BathAfter]] = defaultdict(list)
    for bath in selling_reads.baths_correcting([row.number for row in rows]):
        back[bath.lot].append(bath)
    wet = wet_now()
    found = (
        shaped_yield(row, back=back[row.number], is_wet=row.number in wet)
        for row in rows
    )
    return tuple(one for one in found if one.recipe_id in recipe_ids or one.promised)


def yield_of(number: str) -> BathYield:
    """Return what one bath gives."""
    back = selling_reads.baths_correcting([number])
    row = order_reads.serving_bath(number)
    return shaped_yield(row, back=back, is_wet=number in wet_now())


def shaped_yield(
    row: Bath, *, back: Sequence[BathAfter] = (), is_wet: bool = False
) -> BathYield:
    """Return what a bath gives, fetched with its ledger, its lot and its shares.

    What of its lot went back into another bath is no more to be had; what hangs wet
    on the rack is not on the shelf yet.
    """
    acts = [BathAct(line.act) for line in standing_lines(row.lines.all())]
    status = status_of(acts)
    lot = row.lot if hasattr(row, "lot") else None
    lot_lines = () if lot is None else tuple(lot.lines.all())
    said = held(lot_lines) if lot_lines else None
    shares = sorted(_open_shares(row), key=_need)
    why_none = _why_none(row, status, said)
    gone = 0 if lot is None else sum(each.skeins for each in lot.skeins_out.all())
    here = 0 if why_none else max(0, _skeins(row, said, shares) - gone)
    taken = sum(here if bath.skeins is None else bath.skeins for bath in back)
    skeins = max(0, here - taken)
    return BathYield(
        number=row.number,
        recipe_id=selling_reads.sold_as(row).pk,
        base_id=row.base_id,
        dyed_on=row.dyed_on,
        status=status,
        is_on_shelf=said is not None and not is_wet,
        is_drying=said is not None and is_wet,
        place="" if said is None else said.place,
        skein_g=row.fibre_g / row.skeins if row.skeins else row.base.skein_g,
        skeins=skeins,
        why_none=why_none,
        promised={share.line_id: share.skeins for share in shares},
        kept=_kept(shares, skeins),
    )


def still_wanted(line: OrderLine) -> int:
    """Return the skeins of a line that have not gone out, fetched with it."""
    return max(0, line.skeins - sum(each.skeins for each in line.skeins_out.all()))


def _open_shares(row: Bath) -> list[BathFor]:
    return [
        each
        for each in row.for_lines.all()
        if not (each.line.is_dropped or each.line.order.is_closed)
    ]


def _need(share: BathFor) -> tuple[date, int]:
    order = share.line.order
    days = [day for day in (order.promised_on, order.due_on) if day is not None]
    return min(days, default=date.max), share.line_id


def _why_none(row: Bath, status: BathStatus, said: Held | None) -> str:
    if said is not None and said.grade not in {None, Grade.FIRST}:
        return f"Its lot is graded “{said.grade_words}”, not first."
    if said is not None:
        return ""
    if status is BathStatus.GIVEN_UP:
        return "It was given up."
    if status is BathStatus.PLANNED and row.dyed_on < today():
        return "Its day is over and it was never begun."
    return ""


def _skeins(row: Bath, said: Held | None, shares: list[BathFor]) -> int:
    """Return the skeins that came out: counted, planned, or told by the weight."""
    if said is not None and said.skeins is not None:
        return said.skeins
    if row.skeins is not None:
        return row.skeins
    by_weight = int(row.fibre_g / row.base.skein_g + 0.5) if row.base.skein_g else 0
    return max(by_weight, sum(share.skeins for share in shares))


def _kept(shares: list[BathFor], skeins: int) -> dict[int, int]:
    left, kept = skeins, {}
    for share in shares:
        kept[share.line_id] = min(left, share.skeins, still_wanted(share.line))
        left -= kept[share.line_id]
    return kept
