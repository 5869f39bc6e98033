"""Undo: a counter-entry for a deed, all day long."""

from collections.abc import Sequence
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.core.solutions.ledger import BottleAct
from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.records import (
    day_reads,
    reads,
    recipe_reads,
    shade_reads,
    tool_reads,
)
from shadewright.records.models import (
    BathLine,
    BottleLine,
    ColourReading,
    DayLine,
    EvidenceLine,
    JarLine,
    LotLine,
    StockMaking,
    ToolCheck,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.days import DayAct
from shadewright.records.models.ledgers import JarAct, LedgerRow
from shadewright.records.models.lots import LotAct
from shadewright.records.models.swatches import EvidenceAct
from shadewright.records.writes import (
    keep_bath_line,
    keep_bottle_line,
    keep_colour_reading,
    keep_day_line,
    keep_evidence_line,
    keep_jar_line,
    keep_lot_line,
    keep_tool_check,
    left_in_jar_g,
)
from shadewright.workflows.stamps import Stamp, is_written, today

_STANDING = {"undone_by": None, "undoes": None}


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
    bottle_lines = list(reads.bottle_lines_of(deed).filter(**_STANDING))
    jar_lines = list(reads.jar_lines_of(deed).filter(**_STANDING))
    bath_lines = list(recipe_reads.bath_lines_of(deed).filter(**_STANDING))
    lot_lines = list(recipe_reads.lot_lines_of(deed).filter(**_STANDING))
    checks = list(tool_reads.tool_checks_of(deed).filter(**_STANDING))
    colours = list(shade_reads.colour_readings_of(deed).filter(**_STANDING))
    said = list(shade_reads.evidence_lines_of(deed).filter(**_STANDING))
    of_days = list(day_reads.day_lines_of(deed).filter(**_STANDING))
    if any(_is_of_the_plan(line) for line in bath_lines):
        raise ConflictError(
            why="A change of bottle is not undone here.",
            advice="Choose the other bottle again on the bath’s page.",
        )
    _refuse_if_late(
        [
            *bottle_lines,
            *jar_lines,
            *bath_lines,
            *lot_lines,
            *checks,
            *colours,
            *said,
            *of_days,
        ],
        stamp,
    )
    try:
        _counter(bottle_lines, jar_lines, stamp)
        _counter_dyed(bath_lines, lot_lines, stamp)
        _counter_checks(checks, stamp)
        _counter_shades(colours, said, stamp)
        _counter_days(of_days, stamp)
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


def may_undo(
    line: BottleLine
    | JarLine
    | BathLine
    | LotLine
    | ToolCheck
    | ColourReading
    | EvidenceLine
    | DayLine,
) -> bool:
    """Whether a line was written today and still stands."""
    is_standing = line.undoes_id is None and not hasattr(line, "undone_by")
    if isinstance(line, BathLine) and _is_of_the_plan(line):
        return False
    return is_standing and timezone.localdate(line.written_at) == today()


def _is_of_the_plan(line: BathLine) -> bool:
    """Whether a line notes that the plan was changed, which nobody did at the pot."""
    return line.act == BathAct.NOTE and line.step.startswith("dose-")


def _lock(deed: UUID) -> None:
    recipe_reads.lock_baths_of(deed)
    reads.lock_bottles(
        reads.bottle_lines_of(deed).values_list("bottle__code", flat=True)
    )
    reads.lock_jars(reads.jar_lines_of(deed).values_list("jar_id", flat=True))


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


def _counter(
    bottle_lines: list[BottleLine], jar_lines: list[JarLine], stamp: Stamp
) -> None:
    for line in reversed(bottle_lines):
        counter = BottleLine(
            bottle=line.bottle, act=BottleAct.UNDO.value, undoes=line, other=line.other
        )
        keep_bottle_line(counter, stamp)
    for jar_line in reversed(jar_lines):
        keep_jar_line(
            JarLine(jar=jar_line.jar, act=JarAct.UNDO, undoes=jar_line), stamp
        )
        if left_in_jar_g(jar_line.jar) < -1e-9:
            raise ConflictError(why="The jar would hold less than nothing.")


def _counter_dyed(
    bath_lines: list[BathLine], lot_lines: list[LotLine], stamp: Stamp
) -> None:
    for line in reversed(bath_lines):
        keep_bath_line(
            BathLine(bath=line.bath, act=BathAct.UNDO, step=line.step, undoes=line),
            stamp,
        )
    for lot_line in reversed(lot_lines):
        keep_lot_line(
            LotLine(lot=lot_line.lot, act=LotAct.UNDO, undoes=lot_line), stamp
        )


def _counter_checks(checks: list[ToolCheck], stamp: Stamp) -> None:
    for check in checks:
        keep_tool_check(ToolCheck(tool=check.tool, undoes=check), stamp)


def _counter_shades(
    colours: list[ColourReading], said: list[EvidenceLine], stamp: Stamp
) -> None:
    for reading in colours:
        counter = ColourReading(
            swatch=reading.swatch, read_by=reading.read_by, undoes=reading
        )
        keep_colour_reading(counter, stamp)
    for line in said:
        counted = EvidenceLine(swatch=line.swatch, act=EvidenceAct.UNDO, undoes=line)
        keep_evidence_line(counted, stamp)


def _counter_days(lines: list[DayLine], stamp: Stamp) -> None:
    for line in reversed(lines):
        counter = DayLine(dye_day=line.dye_day, act=DayAct.UNDO, undoes=line)
        keep_day_line(counter, stamp)
