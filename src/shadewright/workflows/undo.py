"""Undo: a counter-entry for a deed, all day long."""

from collections.abc import Sequence
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.records import (
    order_reads,
    reads,
    recipe_reads,
    selling_reads,
    shade_reads,
)
from shadewright.records.deeds import standing_lines_of
from shadewright.records.models import BathLine, JarLine, OrderEdit, StockMaking
from shadewright.records.models.baths import BathAct
from shadewright.records.models.ledgers import LedgerRow
from shadewright.records.shapes import standing_lines
from shadewright.records.writes import keep_line, left_in_jar_g
from shadewright.workflows.order_undo import say_again
from shadewright.workflows.stamps import Stamp, is_written, today


@transaction.atomic
def undo(*, deed: UUID, stamp: Stamp) -> None:
    """Take a deed of today back, in every ledger that it wrote in."""
    _lock(deed)
    if is_written(stamp.deed):
        return
    if not is_written(deed):
        raise NotFoundError(
            kind="act to undo", key=str(deed), advice="Perhaps it was undone."
        )
    lines = list(standing_lines_of(deed))
    if any(isinstance(line, BathLine) and _is_of_the_plan(line) for line in lines):
        raise ConflictError(
            why="A change of bottle is not undone here.",
            advice="Choose the other bottle again on the bath’s page.",
        )
    _refuse_if_late(lines, stamp)
    _give_up_correction(deed, stamp)
    try:
        for line in lines:
            _counter(line, stamp)
    except (OutOfRangeError, ConflictError) as error:
        raise ConflictError(
            why="Something later rests on this, so it cannot be taken back alone.",
            advice="Undo what came after it first.",
        ) from error
    open_making = StockMaking.objects.filter(deed=deed, bottle=None)
    open_making.update(powder_g=None, final_ml=None, filled_g=None, step="weigh")


def touches_shades(deed: UUID) -> bool:
    """Whether a deed wrote what the palette rests on."""
    return (
        shade_reads.colour_readings_of(deed).exists()
        or shade_reads.evidence_lines_of(deed).exists()
    )


def may_undo(line: LedgerRow) -> bool:
    """Whether a line was written today and still stands."""
    if isinstance(line, BathLine) and _is_of_the_plan(line):
        return False
    return line.is_standing and timezone.localdate(line.written_at) == today()


def _is_of_the_plan(line: BathLine) -> bool:
    """Whether a line notes that the plan was changed, which nobody did at the pot."""
    return line.act == BathAct.NOTE and line.step.startswith("dose-")


def _lock(deed: UUID) -> None:
    if order_reads.order_edits_of(deed).exists():
        recipe_reads.lock_numbers()  # as every verb that changes an order does
    recipe_reads.lock_baths_of(deed)
    reads.lock_bottles(
        reads.bottle_lines_of(deed).values_list("bottle__code", flat=True)
    )
    reads.lock_jars(reads.jar_lines_of(deed).values_list("jar_id", flat=True))


def _give_up_correction(deed: UUID, stamp: Stamp) -> None:
    """Give up the bath that a lot was to go back into, unless it has begun."""
    planned = selling_reads.correction_bath_of(deed)
    if planned is None:
        return
    bath = recipe_reads.locked_bath(planned.number)
    acts = {line.act for line in standing_lines(bath.lines.all())} - {BathAct.NOTE}
    if BathAct.GIVEN_UP in acts:
        return
    if acts:
        raise ConflictError(
            why=f"Bath {bath.number} has begun: its yarn is wet, and dye stays in it.",
            advice="Finish it, or give it up on its own page.",
        )
    words = "the correction was taken back"
    keep_line(BathLine(bath=bath, act=BathAct.GIVEN_UP, note=words), stamp)


def _refuse_if_late(lines: Sequence[LedgerRow], stamp: Stamp) -> None:
    if not lines:
        raise ConflictError(why="That was taken back already.")
    newest = max(line.written_at for line in lines)
    if timezone.localdate(newest) != timezone.localdate(stamp.written_at):
        raise ConflictError(
            why="This was written on an earlier day and can no longer be undone.",
            advice="Write down how things stand now instead: read the level, "
            "weigh the jar or test the strength.",
        )


def _counter(line: LedgerRow, stamp: Stamp) -> None:
    if isinstance(line, OrderEdit):
        say_again(line)
    keep_line(line.counter(), stamp)
    if isinstance(line, JarLine) and left_in_jar_g(line.jar) < -1e-9:
        raise ConflictError(why="The jar would hold less than nothing.")
