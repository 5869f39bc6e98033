"""Measuring tools as they are now: by their standard, their sheet, their checks."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.utils import timezone

from shadewright.core.quantities import Balance, MeasuringTool
from shadewright.core.quantities.tools import CLASSED, KINDS
from shadewright.core.uncertainty import Value
from shadewright.core.uncertainty.tools import (
    Finding,
    checked_balance,
    checked_ware,
    mass_read,
    volume_read,
    water_check,
    weight_check,
)
from shadewright.records import tool_reads
from shadewright.records.models import MeasuringTool as ToolRow
from shadewright.records.models import ToolCheck
from shadewright.records.models.catalogue import ToolKind
from shadewright.records.shapes import standing_lines

_SURELY_STEP_G = 1.0


@dataclass(frozen=True, kw_only=True)
class ToolNow:
    """A tool and what it is worth now.

    ``core`` is a ``Balance`` or a ``MeasuringTool`` as narrowed by its checks, and
    None where a scale has no step, a vessel no size, or it is a thermometer.
    """

    id: int
    name: str
    kind: str
    unit: str
    size: float | None
    core: Balance | MeasuringTool | None
    is_checked: bool
    is_by_sheet: bool
    checked_on: date | None
    price: Decimal | None
    is_retired: bool

    @property
    def key(self) -> str:
        """What its errors are kept under."""
        return f"tool {self.id}"

    @property
    def balance(self) -> Balance | None:
        """The tool as a scale, or None."""
        return self.core if isinstance(self.core, Balance) else None

    @property
    def step_g(self) -> float:
        """The step of a scale, by which the finest is found; nought of ware."""
        return 0.0 if self.balance is None else self.balance.step_g

    @property
    def ware(self) -> MeasuringTool | None:
        """The tool as ware, or None."""
        return self.core if isinstance(self.core, MeasuringTool) else None

    def read(self, amount: float, *, role: str) -> Value | None:
        """Return an amount in its unit with what reading it here is worth."""
        if self.balance is not None:
            return mass_read(self.balance, amount, role=role, key=self.key)
        if self.ware is not None:
            return volume_read(self.ware, amount, role=role, key=self.key)
        return None


def tool_now(tool_id: int) -> ToolNow:
    """Return one tool as it is now, retired or not."""
    return shaped_tool(tool_reads.tool_row(tool_id))


def tools_now() -> tuple[ToolNow, ...]:
    """Return the tools in use, by name."""
    rows = tool_reads.tool_rows().filter(is_retired=False)
    return tuple(shaped_tool(row) for row in rows)


def tools_of(tool_ids: Collection[int | None]) -> dict[int | None, ToolNow]:
    """Return some tools by row number, retired or not."""
    wanted = [tool_id for tool_id in tool_ids if tool_id is not None]
    rows = tool_reads.tool_rows().filter(pk__in=wanted) if wanted else ()
    return {row.pk: shaped_tool(row) for row in rows}


def shaped_tool(row: ToolRow) -> ToolNow:
    """Return a row with its checks as the tool is now."""
    standing = standing_lines(row.checks.all())
    newest = standing[-1].at if standing else None
    return ToolNow(
        id=row.pk,
        name=row.name,
        kind=row.kind,
        unit=unit_of(row.kind),
        size=row.size,
        core=_core(row, standing),
        is_checked=bool(standing),
        is_by_sheet=row.own_error is not None and not standing,
        checked_on=timezone.localdate(newest) if newest else row.checked_on,
        price=row.price,
        is_retired=row.is_retired,
    )


def unit_of(kind: str) -> str:
    """Return the unit that a kind of tool measures in."""
    units = {ToolKind.BALANCE.value: "g", ToolKind.THERMOMETER.value: "°C"}
    return units.get(kind, "ml")


def finding_of(check: ToolCheck) -> Finding:
    """Return what one check says about its tool."""
    if check.tool.kind == ToolKind.BALANCE:
        return weight_check(
            step_g=check.tool.readability or _SURELY_STEP_G,
            nominal_g=check.nominal,
            tolerance_g=check.tolerance,
            readings_g=check.readings,
        )
    return water_check(
        nominal_ml=check.nominal,
        readings_g=check.readings,
        temperature_c=20.0 if check.temperature_c is None else check.temperature_c,
        scale=_scale_of(check),
    )


def ware_by_its_sheet(row: ToolRow) -> MeasuringTool | None:
    """Return ware as its standard or its own sheet has it, before any check."""
    if row.kind not in KINDS or not row.size:
        return None
    return MeasuringTool(
        kind=row.kind,
        size_ml=row.size,
        accuracy_class=row.tool_class or ("B" if row.kind in CLASSED else ""),
        standard="ASTM" if "ASTM" in row.standard.upper() else "ISO",
        error_ml=row.own_error,
    )


def _core(
    row: ToolRow, standing: tuple[ToolCheck, ...]
) -> Balance | MeasuringTool | None:
    findings = {check.nominal: finding_of(check) for check in standing}
    if row.kind == ToolKind.BALANCE:
        if not row.readability:
            return None
        return checked_balance(
            step_g=row.readability,
            findings=findings,
            own_error_g=row.own_error,
        )
    ware = ware_by_its_sheet(row)
    return None if ware is None else checked_ware(tool=ware, findings=findings)


def _scale_of(check: ToolCheck) -> Balance:
    """Return the scale that water was weighed on, as it is now."""
    core = None if check.scale is None else shaped_tool(check.scale).balance
    return core or checked_balance(step_g=_SURELY_STEP_G, findings={})
