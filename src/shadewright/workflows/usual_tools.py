"""The tools that a studio usually measures with, each for its job."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from django.db import transaction

from shadewright.core.uncertainty.tools import require_scale_for_powder
from shadewright.errors import OutOfRangeError
from shadewright.records import reads, tool_reads
from shadewright.records.models import Studio
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.tools import ToolNow, tools_now


class Job(StrEnum):
    """What a tool is used for; the value is the studio's column."""

    POWDER = "powder_scale"
    YARN = "yarn_scale"
    FILL = "fill_tool"
    DOSE = "dose_tool"


@dataclass(frozen=True, kw_only=True)
class UsualTools:
    """What the studio measures with where nothing else is said; None: not said."""

    powder_scale: ToolNow | None = None
    yarn_scale: ToolNow | None = None
    fill_tool: ToolNow | None = None
    dose_tool: ToolNow | None = None
    doses_by_weight: bool = False

    @property
    def dose_scale(self) -> ToolNow | None:
        """The scale for doses by weight: the dose tool if it is one, else powder's."""
        if self.dose_tool is not None and self.dose_tool.balance is not None:
            return self.dose_tool
        return self.powder_scale

    def of(self, job: Job) -> ToolNow | None:
        """Return the tool of a job."""
        found: ToolNow | None = getattr(self, job)
        return found


def usual_tools() -> UsualTools:
    """Return the usual tools; what is retired is none any more."""
    return usual_among(tools_now())


def usual_among(in_use: Iterable[ToolNow]) -> UsualTools:
    """Return which of the tools in use are the usual ones."""
    studio = reads.studio_row()
    if studio is None:
        return UsualTools()
    known: dict[int | None, ToolNow] = {tool.id: tool for tool in in_use}
    return UsualTools(
        powder_scale=known.get(studio.powder_scale_id),
        yarn_scale=known.get(studio.yarn_scale_id),
        fill_tool=known.get(studio.fill_tool_id),
        dose_tool=known.get(studio.dose_tool_id),
        doses_by_weight=studio.doses_by_weight,
    )


@transaction.atomic
def set_usual_tools(
    *,
    powder_scale: int | None = None,
    yarn_scale: int | None = None,
    fill_tool: int | None = None,
    dose_tool: int | None = None,
    doses_by_weight: bool | None = None,
) -> None:
    """Set what is said; what is None stays as it was.

    A dose tool that is a scale means doses by weight, unless it is said otherwise.
    """
    wanted = {
        Job.POWDER: powder_scale,
        Job.YARN: yarn_scale,
        Job.FILL: fill_tool,
        Job.DOSE: dose_tool,
    }
    for job, tool_id in wanted.items():
        if tool_id is not None:
            _set(job, tool_id)
    if doses_by_weight is not None:
        Studio.objects.update(doses_by_weight=doses_by_weight)


def leave_job_open(job: Job) -> None:
    """Say of no tool any more that it does a job."""
    Studio.objects.update(**{f"{job}_id": None})
    if job is Job.DOSE:
        Studio.objects.update(doses_by_weight=False)


def jobs_of(kind: str) -> tuple[Job, ...]:
    """Return what a kind of tool can be used for."""
    if kind == ToolKind.BALANCE:
        return (Job.POWDER, Job.YARN, Job.DOSE)
    return () if kind == ToolKind.THERMOMETER else (Job.FILL, Job.DOSE)


def _set(job: Job, tool_id: int) -> None:
    row = tool_reads.tool_row(tool_id)
    if job is Job.POWDER:
        require_scale_for_powder(row.kind, argument="tool")
    if job not in jobs_of(row.kind):
        raise OutOfRangeError(
            name="The tool for this",
            given=f"a {row.get_kind_display().casefold()}",
            allowed="a scale" if job is Job.YARN else "a vessel with marks",
            argument="tool",
        )
    Studio.objects.update(**{f"{job}_id": tool_id})
    if job is Job.DOSE:
        is_scale = row.kind == ToolKind.BALANCE
        Studio.objects.update(doses_by_weight=is_scale)
