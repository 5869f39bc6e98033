"""The part of a tool's page that only tools have: worth, jobs, checks."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from django.urls import reverse

from shadewright.core.uncertainty.tools.spoons import SPOON_REASON
from shadewright.web.catalogue.tool_check_form import WaterForm, WeightForm, check_form
from shadewright.web.catalogue.tool_words import (
    JOB_WORDS,
    along,
    basis_words,
    check_words,
    doubt_words,
    good_words,
    worth_words,
)
from shadewright.workflows.tool_checks import CheckEntry, check_entries
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.usual_tools import Job, jobs_of, usual_tools


@dataclass(frozen=True, kw_only=True)
class WorthRow:
    """An amount, how far it may be off, and that as a share for the bar."""

    amount: float
    words: str
    share: float


@dataclass(frozen=True, kw_only=True)
class JobRow:
    """A job that the tool can do: whether it does, or which other tool does."""

    words: str
    is_mine: bool
    other: str
    use_address: str
    leave_address: str


@dataclass(frozen=True, kw_only=True)
class CheckRow:
    """A check in words."""

    at: datetime
    by: str
    words: str
    doubt: str
    readings: tuple[float, ...]
    scale: str
    note: str
    deed: UUID
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class ToolPart:
    """What is shown of a tool beside what is written down of it."""

    unit: str
    worth: tuple[WorthRow, ...]
    good: str
    basis: str
    missing: str
    edit_address: str
    checked_on: date | None
    jobs: tuple[JobRow, ...]
    no_powder: str
    checks: tuple[CheckRow, ...]
    weight_form: WeightForm | None
    water_form: WaterForm | None
    check_address: str


def tool_part(tool: ToolNow, form: WeightForm | WaterForm | None = None) -> ToolPart:
    """Return the part of a tool; ``form`` is one that was refused."""
    shown = form or check_form(tool)
    return ToolPart(
        unit=tool.unit,
        worth=tuple(_worth(tool)),
        good=good_words(tool),
        basis=basis_words(tool),
        missing=_missing(tool),
        edit_address=reverse("edit-tool", args=[tool.id]),
        checked_on=tool.checked_on,
        jobs=tuple(_jobs(tool)),
        no_powder=_no_powder(tool),
        checks=tuple(_check(each, tool) for each in check_entries(tool.id)),
        weight_form=shown if isinstance(shown, WeightForm) else None,
        water_form=shown if isinstance(shown, WaterForm) else None,
        check_address=reverse("check-tool", args=[tool.id]),
    )


def _worth(tool: ToolNow) -> Iterator[WorthRow]:
    for each in along(tool):
        words = worth_words(each, tool.unit)
        yield WorthRow(amount=each.amount, words=words, share=each.share)


def _jobs(tool: ToolNow) -> Iterator[JobRow]:
    if tool.core is None or tool.is_retired:
        return
    usual = usual_tools()
    for job in jobs_of(tool.kind):
        now = usual.of(job)
        is_mine = now is not None and now.id == tool.id
        yield JobRow(
            words=_job_words(job, tool),
            is_mine=is_mine,
            other="" if now is None or is_mine else now.name,
            use_address=reverse("use-tool", args=[tool.id, job.name.casefold()]),
            leave_address=reverse("leave-tool", args=[tool.id, job.name.casefold()]),
        )


def _job_words(job: Job, tool: ToolNow) -> str:
    if job is Job.DOSE and tool.balance is not None:
        return "Weighing doses of stock"
    return JOB_WORDS[job]


def _no_powder(tool: ToolNow) -> str:
    if tool.ware is None:
        return ""
    return f"Not for powder: it measures a volume, as a spoon does. {SPOON_REASON}"


def _missing(tool: ToolNow) -> str:
    if tool.core is not None:
        return ""
    if tool.unit == "g":
        return "Write down its smallest step to see what it is worth."
    if tool.unit == "ml":
        return "Write down the largest that it measures to see what it is worth."
    return ""


def _check(entry: CheckEntry, tool: ToolNow) -> CheckRow:
    return CheckRow(
        at=entry.at,
        by=entry.by,
        words=check_words(entry, tool.unit),
        doubt=doubt_words(entry, tool.unit),
        readings=entry.readings_g,
        scale=entry.scale,
        note=entry.note,
        deed=entry.deed,
        is_undone=entry.is_undone,
        may_undo=entry.may_undo,
    )
