"""The skeins of a lot: how many came out, to whom they went, how many are left.

What went out is a line of its own, undone for the day like any other. A lot that nobody
counted may still give skeins away: what is left of it is then unknown.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.db import transaction

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import lot_reads, selling_reads
from shadewright.records.models import Lot, SkeinsOut
from shadewright.records.models.lots import Grade
from shadewright.records.writes import keep_line
from shadewright.workflows.lot_lines import Held, held
from shadewright.workflows.lots import MOST_SKEINS
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.undo import may_undo


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
    """A lot's skeins; ``counted`` and ``left`` are None where nobody counted them."""

    number: str
    counted: int | None
    place: str
    out: tuple[WentOut, ...]

    @property
    def gone(self) -> int:
        """How many went out."""
        return sum(each.skeins for each in self.out)

    @property
    def left(self) -> int | None:
        """How many should still be here; never less than none."""
        return None if self.counted is None else max(0, self.counted - self.gone)


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
    row = lot_reads.lot_row(number)
    out = selling_reads.standing_skeins_out().filter(lot=row)
    return _shaped(row, held(row.lines.all()), list(out))


def skeins_of_lots(numbers: Iterable[str]) -> Mapping[str, LotSkeins]:
    """Return the skeins of many lots, by number."""
    rows = list(lot_reads.lot_rows().filter(number__in=set(numbers)))
    out: dict[int, list[SkeinsOut]] = {row.pk: [] for row in rows}
    for line in selling_reads.standing_skeins_out().filter(lot__in=rows):
        out[line.lot_id].append(line)
    return {
        row.number: _shaped(row, held(row.lines.all()), out[row.pk]) for row in rows
    }


@transaction.atomic
def send_out(*, number: str, said: Sending, stamp: Stamp) -> LotSkeins:
    """Write down that skeins of a lot went to somebody, once."""
    row = lot_reads.locked_lot_row(number)
    if not is_written(stamp.deed):
        _check(row, said)
        keep_line(
            SkeinsOut(
                lot=row,
                skeins=said.skeins,
                to_whom=" ".join(said.to_whom.split())[:80],
                reach=said.reach.strip()[:120],
                order_line=None
                if said.line_id is None
                else selling_reads.order_line_row(said.line_id),
                note=said.note.strip()[:300],
            ),
            stamp,
        )
    return skeins_of(number)


def lines_served_by(number: str) -> tuple[tuple[str, str], ...]:
    """Return the lines of open orders that a lot may serve: their ids and words."""
    bath = lot_reads.lot_row(number).bath
    rows = selling_reads.open_lines_for(
        recipe_id=bath.version.recipe_id, base_id=bath.base_id
    )
    return tuple(
        (str(row.pk), f"{row.order.number}, {row.order.for_whom}: {row.skeins}")
        for row in rows
    )


def buyers_known() -> tuple[str, ...]:
    """Return to whom skeins went before, the newest first, to choose from."""
    rows = selling_reads.standing_skeins_out().order_by("-id")
    return tuple(dict.fromkeys(rows.values_list("to_whom", flat=True)[:300]))


def _shaped(row: Lot, said: Held, out: Sequence[SkeinsOut]) -> LotSkeins:
    return LotSkeins(
        number=row.number,
        counted=said.skeins,
        place=said.place,
        out=tuple(_line(line, row.number) for line in out),
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
    _check_count(row, said.skeins)


def _check_count(row: Lot, skeins: int) -> None:
    now = skeins_of(row.number)
    most = MOST_SKEINS if now.left is None else now.left
    if not 0 < skeins <= most:
        raise OutOfRangeError(
            name="The number of skeins",
            given=str(skeins),
            allowed="at least 1"
            if now.left is None
            else f"from 1 to {most}, which is what is left of this lot",
            advice="" if now.left is None else "Count the lot anew if there are more.",
            argument="skeins",
        )
