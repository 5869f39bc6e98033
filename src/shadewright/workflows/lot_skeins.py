"""The skeins of a lot: how many came out, to whom they went, how many are left.

What went out is a line of its own, undone for the day like any other. A lot that nobody
counted may still give skeins away: what is left of it is then unknown. Skeins that went
back into a bath, to be corrected or overdyed, are no skeins of this lot any more.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from uuid import UUID

from django.db import transaction

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import lot_reads, selling_reads
from shadewright.records.models import Lot, SkeinsOut
from shadewright.records.models.lots import Grade
from shadewright.records.selling_reads import BathAfter
from shadewright.records.writes import keep_line
from shadewright.workflows.lot_lines import held
from shadewright.workflows.lots import MOST_SKEINS
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.undo import may_undo

_COUNT_ANEW = "If more came out of the bath, write its count anew, sold ones too."


@dataclass(frozen=True, kw_only=True)
class WentOut:
    """Skeins that went to somebody; ``reach`` is how they can be written to."""

    lot: str
    skeins: int
    to_whom: str
    reach: str
    order: int | None
    at: datetime
    by: str
    note: str
    deed: UUID
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class LotSkeins:
    """A lot’s skeins; ``counted`` is None where nobody counted them.

    ``back`` are the baths that some of them went back into.
    """

    number: str
    counted: int | None
    place: str
    out: tuple[WentOut, ...]
    back: tuple[BathAfter, ...] = ()

    @property
    def gone(self) -> int:
        """How many went out."""
        return sum(each.skeins for each in self.out)

    @property
    def left(self) -> int | None:
        """How many may still go out; never less than none, None if nobody counted."""
        return self._without(self.back)

    @property
    def here(self) -> int | None:
        """How many should still be here, also what a planned bath will take."""
        return self._without([bath for bath in self.back if bath.has_lot])

    def _without(self, baths: Sequence[BathAfter]) -> int | None:
        if self.counted is None:
            return None
        here = self.counted - self.gone
        taken = sum(here if bath.skeins is None else bath.skeins for bath in baths)
        return max(0, here - taken)


@dataclass(frozen=True, kw_only=True)
class Sending:
    """What is said of skeins that go out."""

    skeins: int
    to_whom: str
    reach: str = ""
    line_id: int | None = None
    note: str = ""


def skeins_of(number: str) -> LotSkeins:
    """Return the skeins of one lot."""
    return _skeins([lot_reads.lot_row(number)])[number]


def skeins_of_lots(numbers: Iterable[str]) -> Mapping[str, LotSkeins]:
    """Return the skeins of many lots, by number."""
    return _skeins(list(lot_reads.lot_rows().filter(number__in=set(numbers))))


def _skeins(rows: Sequence[Lot]) -> Mapping[str, LotSkeins]:
    out: dict[int, list[SkeinsOut]] = {row.pk: [] for row in rows}
    for line in selling_reads.standing_skeins_out().filter(lot__in=rows):
        out[line.lot_id].append(line)
    back: dict[str, list[BathAfter]] = {row.number: [] for row in rows}
    for bath in selling_reads.baths_correcting(list(back)):
        back[bath.lot].append(bath)
    return {row.number: _shaped(row, out[row.pk], back[row.number]) for row in rows}


@transaction.atomic
def send_out(*, number: str, said: Sending, stamp: Stamp) -> LotSkeins:
    """Write down that skeins of a lot went to somebody, once.

    Skeins for an order go to whoever ordered them, unless somebody else is named.
    """
    row = lot_reads.locked_lot_row(number)
    if not is_written(stamp.deed):
        line = None
        if said.line_id is not None:
            line = selling_reads.order_line_row(said.line_id)
            said = replace(said, to_whom=said.to_whom.strip() or line.order.for_whom)
        _check(row, said)
        keep_line(
            SkeinsOut(
                lot=row,
                skeins=said.skeins,
                to_whom=" ".join(said.to_whom.split())[:80],
                reach=said.reach.strip()[:120],
                order_line=line,
                note=said.note.strip()[:300],
            ),
            stamp,
        )
    return skeins_of(number)


def lines_served_by(number: str) -> tuple[tuple[str, str], ...]:
    """Return the lines of open orders that a lot may serve: their ids and words."""
    bath = lot_reads.lot_row(number).bath
    rows = selling_reads.open_lines_for(
        recipe_id=selling_reads.sold_as(bath).pk, base_id=bath.base_id
    )
    return tuple(
        (str(row.pk), f"{row.order.number}, {row.order.for_whom}: {row.skeins}")
        for row in rows
    )


def buyers_known() -> tuple[str, ...]:
    """Return to whom skeins went before, the newest first, to choose from."""
    rows = selling_reads.standing_skeins_out().order_by("-id")
    return tuple(dict.fromkeys(rows.values_list("to_whom", flat=True)[:300]))


def _shaped(row: Lot, out: Sequence[SkeinsOut], back: Sequence[BathAfter]) -> LotSkeins:
    said = held(row.lines.all())
    return LotSkeins(
        number=row.number,
        counted=said.skeins,
        place=said.place,
        out=tuple(_line(line, row.number) for line in out),
        back=tuple(back),
    )


def _line(line: SkeinsOut, number: str) -> WentOut:
    order = line.order_line
    return WentOut(
        lot=number,
        skeins=line.skeins,
        to_whom=line.to_whom,
        reach=line.reach,
        order=None if order is None else order.order.number,
        at=line.at,
        by="" if line.by is None else line.by.name,
        note=line.note,
        deed=line.deed,
        may_undo=may_undo(line),
    )


def _check(row: Lot, said: Sending) -> None:
    lines = tuple(row.lines.all())
    if not lines:
        raise ConflictError(why=f"Lot {row.number} was taken back: it has no skeins.")
    if held(lines).grade is Grade.SWATCH:
        raise ConflictError(
            why=f"Lot {row.number} is a swatch, which is not for sale.",
            advice="Grade it anew first if it is sold all the same.",
            argument="skeins",
        )
    if not said.to_whom.strip():
        raise MissingError(
            name="To whom they went",
            advice="A name, a shop, or “the fair at …”.",
            argument="to_whom",
        )
    require_left(_skeins([row])[row.number], said.skeins)


def _went_back(lot: LotSkeins) -> str:
    baths = ", ".join(bath.number for bath in lot.back)
    return f"It goes into bath {baths}: give that up to keep it." if baths else ""


def require_left(lot: LotSkeins, skeins: int) -> None:
    """Refuse skeins that are no more of a lot, or never were."""
    if lot.left == 0:
        raise ConflictError(
            why=f"No skein of lot {lot.number} is left.",
            advice=_went_back(lot) or _COUNT_ANEW,
            argument="skeins",
        )
    most = MOST_SKEINS if lot.left is None else lot.left
    if not 0 < skeins <= most:
        raise OutOfRangeError(
            name="The number of skeins",
            given=str(skeins),
            allowed="at least 1"
            if lot.left is None
            else f"from 1 to {most}, which is what is left of this lot",
            advice="" if lot.left is None else _COUNT_ANEW,
            argument="skeins",
        )
