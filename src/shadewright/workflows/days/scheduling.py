"""Making a plan of a day, and making it anew from what is on the heat.

Both are one verb: a plan of today begins now, with what is going where it is, and
changes as little of the plan before as it can. The budget is counted in spots looked
at, so that the same day gives the same plan; the clock only stops a search that a busy
machine drags out.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from random import Random
from time import monotonic
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from shadewright.core.planning import DayPlan, Tried, plan_of, searched_for
from shadewright.errors import ConflictError, MissingError
from shadewright.exchange.day_file import plan_answer
from shadewright.records import day_reads, recipe_reads
from shadewright.records.models import Bath, DaySchedule, DyeDay
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.asked import Asked, asked_of
from shadewright.workflows.days.asked_file import file_of
from shadewright.workflows.days.day_now import DayNow, day_now, status_of_row
from shadewright.workflows.days.schedules import Schedule, shaped_schedule
from shadewright.workflows.stamps import Stamp, this_moment, today

PLAN_SECONDS = 1.0
"""How long is searched while the dyer waits; reading the day comes on top. [s]"""
PATIENT_SECONDS = 60.0
_SEED = 1


@dataclass(frozen=True, kw_only=True)
class Found:
    """A plan that was found, and what it was asked from.

    ``held`` is the plan of the day that held when the search began, if one did.
    """

    asked: Asked
    plan: DayPlan
    is_stopped: bool
    held: int | None = None


def make_plan(
    *, day: date, stamp: Stamp, why: str = "", seconds: float = PLAN_SECONDS
) -> Schedule:
    """Plan a day, keep the plan, and put its baths where it says."""
    kept = day_reads.schedule_of_deed(stamp.deed)
    if kept is not None:
        return shaped_schedule(kept)
    return keep_plan(found_plan(day_now(day), seconds=seconds), day, stamp, why=why)


def found_plan(
    now: DayNow, *, seconds: float, is_wanted: Callable[[Tried], bool] | None = None
) -> Found:
    """Search a plan of a day; ``is_wanted`` hears of each and may end the search."""
    check_can_plan(now)
    asked = asked_of(now)
    if not asked.day.baths:
        raise _nothing_to_plan(asked)
    _check_open(now)
    tried, is_stopped = _searched(asked, seconds, is_wanted or _always)
    return Found(
        asked=asked,
        plan=plan_of(tried, asked.day),
        is_stopped=is_stopped,
        held=None if now.schedule is None else now.schedule.id,
    )


@transaction.atomic
def keep_plan(found: Found, day: date, stamp: Stamp, *, why: str = "") -> Schedule:
    """Keep a plan for good; baths that have not begun are put where it says.

    Refused where somebody made a plan of the day since the search began.
    """
    recipe_reads.lock_numbers()
    kept = day_reads.schedule_of_deed(stamp.deed)
    if kept is not None:
        return shaped_schedule(kept)
    check_held(day, held=found.held)
    row = DaySchedule.objects.create(
        dye_day=day_said(day, stamp),
        deed=stamp.deed,
        why=why[:200],
        asked=file_of(found.asked.day, found.asked.before),
        plan=_answer(found),
        method=found.plan.method[:60],
        made_at=stamp.at,
        made_by_id=stamp.by,
    )
    _put_baths(day, found.plan)
    return shaped_schedule(row)


def is_planned(deed: UUID) -> bool:
    """Say whether a deed made its plan already."""
    return day_reads.schedule_of_deed(deed) is not None


def check_held(day: date, *, held: int | None) -> None:
    """Refuse to go on where another plan of a day holds now; None: none held then."""
    row = day_reads.schedule_row(day)
    if row is None or row.pk == held:
        return
    who = "Somebody" if row.made_by is None else row.made_by.name
    raise ConflictError(
        why=f"{who} planned this day at {timezone.localtime(row.made_at):%H:%M}, "
        "after what you saw.",
        advice="Look at that plan first; if it should change, plan again.",
    )


def check_can_plan(now: DayNow) -> None:
    """Refuse a day that is over, or that lacks what any plan needs."""
    if now.is_past:
        raise ConflictError(
            why="This day is over, so it is not planned any more.",
            advice="Plan its baths anew on a day that comes.",
        )
    lacks = (
        (now.has_pots, "A pot", "Write your pots down first."),
        (now.has_sources, "A burner", "Write your burners down first."),
        (bool(now.people), "Somebody who is in", "Say who is in and when."),
    )
    for is_there, name, advice in lacks:
        if not is_there:
            raise MissingError(name=name, advice=advice)


def _check_open(now: DayNow) -> None:
    at = timezone.localtime(this_moment()).time()
    if now.day == today() and at >= now.closes_at:
        raise ConflictError(
            why=f"It is past {now.closes_at:%H:%M}, when this day closes.",
            advice="Say under Hours and people until when you are here, then plan.",
        )


def day_said(day: date, stamp: Stamp) -> DyeDay:
    """Return the row of a day, made where none was."""
    row, _is_new = DyeDay.objects.get_or_create(
        day=day, defaults={"created_at": stamp.at, "created_by_id": stamp.by}
    )
    return row


def _searched(
    asked: Asked, seconds: float, is_wanted: Callable[[Tried], bool]
) -> tuple[Tried, bool]:
    until = monotonic() + 1.1 * seconds + 0.5
    return searched_for(
        asked.day,
        seconds=seconds,
        draws=Random(_SEED),  # ruff: ignore[suspicious-non-cryptographic-random-usage]
        before=asked.before,
        goes_on=lambda tried: monotonic() <= until and is_wanted(tried),
    )


def _always(_tried: Tried) -> bool:
    return True


def _answer(found: Found) -> Mapping[str, object]:
    """Return the plan as the command answers it, with what was left aside."""
    answer = plan_answer(found.plan, is_stopped=found.is_stopped)
    aside = [{"name": name, "why": why} for name, why in found.asked.aside]
    return {**answer, "aside": aside}


def _put_baths(day: date, plan: DayPlan) -> None:
    pots = {each.name: each for each in day_reads.pot_rows()}
    sources = {each.name: each for each in day_reads.source_rows()}
    places = {each.name: each for each in plan.baths}
    for row in day_reads.baths_of_day(day):
        place = places.get(row.number)
        if place is None or not _is_before_heat(row):
            continue
        row.source = sources.get(place.source)
        if status_of_row(row) is BathStatus.PLANNED:
            row.pot = pots.get(place.pot)
        row.save(update_fields=["pot", "source"])


def _is_before_heat(row: Bath) -> bool:
    """Whether no heat was on yet: a pot that is filled may still change its burner."""
    acts = {line.act for line in standing_lines(row.lines.all())}
    is_open = status_of_row(row) in {BathStatus.PLANNED, BathStatus.GOING}
    return is_open and not acts & {BathAct.HEAT_ON, BathAct.AT_TOP}


def _nothing_to_plan(asked: Asked) -> ConflictError:
    if asked.aside:
        return ConflictError(why=asked.aside[0][1])
    return ConflictError(
        why="There is no bath on this day, so there is nothing to plan.",
        advice="Put baths on it first.",
    )
