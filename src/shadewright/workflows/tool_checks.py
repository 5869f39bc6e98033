"""Check a tool: a known weight on a scale, the water of a mark weighed."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.db import transaction

from shadewright.core.quantities import MOST_MASS_G, amount_text, require_above_zero
from shadewright.core.uncertainty.tools import Finding, water_volume_ml
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import tool_reads
from shadewright.records.models import MeasuringTool, ToolCheck
from shadewright.records.models.catalogue import ToolKind
from shadewright.records.writes import keep_line
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.tools import finding_of, unit_of
from shadewright.workflows.undo import may_undo

_SLIP = 0.5
_USUAL_C = 20.0


@dataclass(frozen=True, kw_only=True)
class CheckEntry:
    """A check in the ledger of a tool; ``scale`` is empty for a check weight."""

    at: datetime
    by: str
    nominal: float
    readings_g: tuple[float, ...]
    scale: str
    note: str
    finding: Finding
    deed: UUID
    is_undone: bool
    may_undo: bool


@transaction.atomic
def check_with_weight(
    *,
    tool_id: int,
    nominal_g: float,
    readings_g: Sequence[float],
    stamp: Stamp,
    tolerance_g: float = 0.0,
    note: str = "",
) -> None:
    """Write down what a scale showed for a weight that is known."""
    row = tool_reads.locked_tool(tool_id)
    if is_written(stamp.deed):
        return
    if row.kind != ToolKind.BALANCE or not row.readability:
        raise ConflictError(
            why=f"{row.name} is no scale with a step that is written down.",
            advice="Write its smallest step on its form first.",
        )
    _require_within(row, nominal_g, argument="nominal_g")
    _require_near(readings_g, wanted_g=nominal_g)
    check = ToolCheck(
        tool=row,
        nominal=nominal_g,
        tolerance=tolerance_g,
        readings=list(readings_g),
        note=note.strip(),
    )
    _keep(check, stamp)


@transaction.atomic
def check_with_water(
    *,
    tool_id: int,
    nominal_ml: float,
    readings_g: Sequence[float],
    scale_id: int,
    stamp: Stamp,
    temperature_c: float = _USUAL_C,
    note: str = "",
) -> None:
    """Write down what the water of a mark weighed, fill by fill."""
    row = tool_reads.locked_tool(tool_id)
    if is_written(stamp.deed):
        return
    if row.kind in {ToolKind.BALANCE, ToolKind.THERMOMETER} or not row.size:
        raise ConflictError(
            why=f"{row.name} is no vessel whose size is written down.",
            advice="Write on its form the largest that it measures.",
        )
    _require_within(row, nominal_ml, argument="nominal_ml")
    gram_ml = water_volume_ml(mass_g=1.0, temperature_c=temperature_c)
    _require_near(readings_g, wanted_g=nominal_ml / gram_ml)
    check = ToolCheck(
        tool=row,
        nominal=nominal_ml,
        readings=list(readings_g),
        scale=_scale(scale_id),
        temperature_c=temperature_c,
        note=note.strip(),
    )
    _keep(check, stamp)


def check_entries(tool_id: int) -> tuple[CheckEntry, ...]:
    """Return the ledger of a tool's checks, newest first."""
    rows = reversed(tool_reads.tool_row(tool_id).checks.all())
    return tuple(_entry(row) for row in rows if row.undoes_id is None)


def _entry(row: ToolCheck) -> CheckEntry:
    return CheckEntry(
        at=row.at,
        by="" if row.by is None else row.by.name,
        nominal=row.nominal,
        readings_g=tuple(row.readings),
        scale="" if row.scale is None else row.scale.name,
        note=row.note,
        finding=finding_of(row),
        deed=row.deed,
        is_undone=hasattr(row, "undone_by"),
        may_undo=may_undo(row),
    )


def _keep(check: ToolCheck, stamp: Stamp) -> None:
    """Write a check down, if core can make something of it."""
    finding_of(check)
    keep_line(check, stamp)


def _scale(scale_id: int) -> MeasuringTool:
    row = tool_reads.tool_row(scale_id)
    if row.kind != ToolKind.BALANCE or not row.readability:
        raise MissingError(
            name="A scale with its step",
            advice="Write its smallest step on its form first.",
            argument="scale_id",
        )
    return row


def _require_within(row: MeasuringTool, nominal: float, *, argument: str) -> None:
    is_scale = row.kind == ToolKind.BALANCE
    require_above_zero(
        nominal,
        most=row.size or MOST_MASS_G,
        unit=unit_of(row.kind),
        name="Check weight" if is_scale else "Mark",
        argument=argument,
    )


def _require_near(readings_g: Sequence[float], *, wanted_g: float) -> None:
    """Refuse a reading that is a slip of the finger and no error of a tool."""
    for place, reading in enumerate(readings_g):
        if abs(reading - wanted_g) > _SLIP * wanted_g:
            raise OutOfRangeError(
                name="A reading",
                given=amount_text(reading, "g"),
                allowed=f"near {amount_text(wanted_g, 'g')}",
                advice="Was the scale set to nought, and is the figure typed right?",
                argument=f"readings_g.{place}",
            )
