"""What somebody says of a swatch or a lot as evidence: it teaches, or it does not."""

from collections.abc import Sequence

from django.db import transaction

from shadewright.errors import ConflictError
from shadewright.records import lot_reads, shade_reads
from shadewright.records.models import ColourReading, EvidenceLine, Lot
from shadewright.records.models.swatches import EvidenceAct
from shadewright.records.writes import keep_line
from shadewright.workflows.shades.entering_swatches import swatch_of_bath
from shadewright.workflows.shades.offering import noted_lot
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.stamps import Stamp, is_written


def set_aside(*, swatch_id: int, stamp: Stamp) -> str:
    """Let a swatch teach no longer; return what stands on its tag."""
    return _judge(swatch_id, EvidenceAct.SET_ASIDE, stamp)


def restore(*, swatch_id: int, stamp: Stamp) -> str:
    """Let a swatch teach again; return what stands on its tag."""
    return _judge(swatch_id, EvidenceAct.COUNTS, stamp)


def trust(*, swatch_id: int, stamp: Stamp) -> str:
    """Let a swatch teach even where the others do not believe it; return its tag."""
    return _judge(swatch_id, EvidenceAct.TRUSTED, stamp)


def teach_lot(*, number: str, stamp: Stamp) -> None:
    """Let a lot teach by its colour, read of it or noted on its page."""
    teach_lots(numbers=[number], stamp=stamp)


@transaction.atomic
def teach_lots(*, numbers: Sequence[str], stamp: Stamp) -> None:
    """Let lots teach by their colours, read of them or noted on their pages."""
    if not is_written(stamp.deed):
        for number in numbers:
            _judge_lot(number, EvidenceAct.COUNTS, stamp)


@transaction.atomic
def leave_lot(*, number: str, stamp: Stamp) -> None:
    """Leave a lot out, and offer it no more."""
    if not is_written(stamp.deed):
        _judge_lot(number, EvidenceAct.SET_ASIDE, stamp)


@transaction.atomic
def _judge(swatch_id: int, act: EvidenceAct, stamp: Stamp) -> str:
    row = shade_reads.locked_swatch(swatch_id)
    if not is_written(stamp.deed):
        keep_line(EvidenceLine(swatch=row, act=act), stamp)
    return row.label


def _judge_lot(number: str, act: EvidenceAct, stamp: Stamp) -> None:
    lot = lot_reads.lot_row(number)
    swatch_id = swatch_of_bath(number, stamp=stamp)
    if swatch_now(swatch_id).reading is None:
        _keep_noted(swatch_id, lot, stamp)
    keep_line(EvidenceLine(swatch_id=swatch_id, act=act), stamp)


def _keep_noted(swatch_id: int, lot: Lot, stamp: Stamp) -> None:
    noted = noted_lot(lot)
    if noted is None:
        raise ConflictError(
            why=f"Lot {lot.number} has no colour yet, so it can teach nothing.",
            advice="Read its colour first, rinsed and dry.",
        )
    reading = ColourReading(
        swatch_id=swatch_id,
        read_by=noted.read_by,
        labs={"D65": list(noted.lab)},
        as_typed=noted.as_typed,
    )
    keep_line(reading, stamp)
