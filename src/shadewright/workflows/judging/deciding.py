"""What was decided of a lot: one tap, one line of its ledger."""

from collections.abc import Mapping
from enum import StrEnum

from django.db import transaction

from shadewright.core.quality import Decision
from shadewright.errors import ConflictError
from shadewright.records import lot_reads
from shadewright.records.models import LotLine
from shadewright.records.models.lots import Grade, LotAct
from shadewright.records.writes import keep_line
from shadewright.workflows.lot_lines import held
from shadewright.workflows.stamps import Stamp, is_written


class Choice(StrEnum):
    """What can be done with a lot, as its ledger says it."""

    WITH_LAST = "goes with the last lot"
    ALTERNATE = "alternate skeins with the last lot"
    OWN_LOT = "a lot of its own"
    CORRECT = "correct it"
    ONE_OFF = "sell it as a one-off"


FITS: Mapping[Decision, Choice] = {
    Decision.MATCH: Choice.WITH_LAST,
    Decision.ALTERNATE: Choice.ALTERNATE,
    Decision.NEW_LOT: Choice.OWN_LOT,
    Decision.CORRECT: Choice.CORRECT,
    Decision.ONE_OFF: Choice.ONE_OFF,
}
"""The choice that a verdict asks for."""


@transaction.atomic
def decide(number: str, choice: Choice, *, stamp: Stamp) -> None:
    """Write down what was decided, once; a one-off is graded as one."""
    lot = lot_reads.locked_lot_row(number)
    if is_written(stamp.deed):
        return
    lines = tuple(lot.lines.all())
    if not lines:
        raise ConflictError(why=f"Lot {number} was taken back.")
    keep_line(LotLine(lot=lot, act=LotAct.DECIDED, words=choice), stamp)
    if choice is Choice.ONE_OFF and held(lines).grade is not Grade.ONE_OFF:
        line = LotLine(lot=lot, act=LotAct.GRADED, words=Grade.ONE_OFF)
        keep_line(line, stamp)
