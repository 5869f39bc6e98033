"""Snip, squeeze, dry: a snip of yarn dries, and the studio's clock says when."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from operator import attrgetter
from typing import Final
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.core.quantities import require_between
from shadewright.errors import ConflictError
from shadewright.records import judging_reads, lot_reads
from shadewright.records.models import LotLine
from shadewright.records.models.lots import LotAct
from shadewright.records.writes import keep_line
from shadewright.workflows.stamps import Stamp, is_written, this_moment
from shadewright.workflows.undo import may_undo

USUAL_MIN: Final = 20.0
"""How long a squeezed snip dries in moving warm air (common practice). [min]"""
_MOST_MIN = 24 * 60.0
_WAITS = timedelta(days=3)
"""A snip that nobody read for longer is forgotten, not waiting."""


@dataclass(frozen=True, kw_only=True)
class Snip:
    """A snip that was hung to dry."""

    lot: str
    at: datetime
    dry_at: datetime
    deed: UUID
    may_undo: bool

    @property
    def minutes_left(self) -> int:
        """Minutes until it should be dry, begun ones counted; none once it is."""
        left = (self.dry_at - this_moment()).total_seconds() / 60
        return max(0, -int(-left // 1))


def snip_of(number: str) -> Snip | None:
    """Return the newest snip of a lot that nobody took back."""
    lines = lot_reads.lot_row(number).lines.all()
    snipped = [line for line in lines if line.act == LotAct.SNIPPED]
    return _shaped(snipped[-1], number) if snipped else None


def snips_waiting() -> tuple[Snip, ...]:
    """Return the snips of the last days that were not read yet, the first to dry first.

    Of each lot the newest.
    """
    rows = judging_reads.snips_unread(this_moment() - _WAITS)
    newest = {line.lot.number: line for line in rows}
    found = (_shaped(line, number) for number, line in newest.items())
    return tuple(sorted(found, key=attrgetter("dry_at")))


@transaction.atomic
def keep_snip(number: str, *, minutes: float, stamp: Stamp) -> None:
    """Write down that a snip was cut and hung to dry, once."""
    lot = lot_reads.locked_lot_row(number)
    if is_written(stamp.deed):
        return
    if not lot.lines.all():
        raise ConflictError(why=f"Lot {number} was taken back.")
    require_between(
        minutes,
        least=1.0,
        most=_MOST_MIN,
        unit="min",
        name="The time to dry",
        argument="minutes",
    )
    line = LotLine(lot=lot, act=LotAct.SNIPPED, value=minutes)
    keep_line(line, stamp)


def require_dry(number: str, at: datetime) -> None:
    """Refuse while a snip is still drying: nothing passes wet."""
    snip = snip_of(number)
    if snip is not None and snip.at <= at < snip.dry_at:
        until = timezone.localtime(snip.dry_at)
        raise ConflictError(
            why=f"The snip of lot {number} dries until {until:%H:%M}.",
            advice="Read it then; if it is dry already, take the clock back first.",
            argument="is_wet",
        )


def _shaped(line: LotLine, number: str) -> Snip:
    return Snip(
        lot=number,
        at=line.at,
        dry_at=line.at + timedelta(minutes=line.value or 0.0),
        deed=line.deed,
        may_undo=may_undo(line),
    )
