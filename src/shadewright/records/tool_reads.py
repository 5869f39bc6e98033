"""Questions to the store about measuring tools and their checks."""

from uuid import UUID

from django.db.models import Prefetch, QuerySet

from shadewright.errors import NotFoundError
from shadewright.records.models import MeasuringTool, ToolCheck


def tool_rows() -> QuerySet[MeasuringTool]:
    """Return every tool there ever was, with its checks."""
    return MeasuringTool.objects.prefetch_related(
        Prefetch("checks", _checks()), "checks__scale__checks"
    )


def tool_row(tool_id: int) -> MeasuringTool:
    """Return one tool with its checks."""
    row = tool_rows().filter(pk=tool_id).first()
    if row is None:
        raise NotFoundError(kind="tool", key=str(tool_id), argument="tool")
    return row


def locked_tool(tool_id: int) -> MeasuringTool:
    """Return a tool that nobody else can check or change in this transaction."""
    MeasuringTool.objects.select_for_update().filter(pk=tool_id).first()
    return tool_row(tool_id)


def tool_checks_of(deed: UUID) -> QuerySet[ToolCheck]:
    """Return the checks that one deed wrote."""
    return ToolCheck.objects.filter(deed=deed).select_related("tool").order_by("id")


def _checks() -> QuerySet[ToolCheck]:
    rows = ToolCheck.objects.select_related("by", "undone_by", "scale")
    return rows.order_by("id")
