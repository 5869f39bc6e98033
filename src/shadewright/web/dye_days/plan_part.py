"""The plan that holds, on the page of its day: lanes, their twin, what it says."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from django.urls import reverse
from django.utils import timezone

from shadewright.drawing import LanesShown
from shadewright.web.dye_days.lanes import lanes_of
from shadewright.web.dye_days.words import clock, span
from shadewright.web.pages import Link
from shadewright.workflows.days.day_clock import DayClock
from shadewright.workflows.days.day_jobs import day_jobs
from shadewright.workflows.days.day_now import DayNow
from shadewright.workflows.days.day_order import DayInOrder
from shadewright.workflows.days.moved_on import moved_on
from shadewright.workflows.days.schedules import Schedule
from shadewright.workflows.stamps import today

NEXT = 8
"""So many jobs stand open on the page, the rest behind a key."""


@dataclass(frozen=True, kw_only=True)
class JobRow:
    """Something that hands do, as a row."""

    at: str
    bath: str
    name: str
    what: str
    where: str
    who: str


@dataclass(frozen=True, kw_only=True)
class OutRow:
    """A bath that the plan does not hold, why, and the ways on."""

    called: str
    why: str
    ways: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class ConflictRow:
    """A bath that is going and cannot go on, all that is in its way, and the way on."""

    called: str
    why: tuple[str, ...]
    way: Link


@dataclass(frozen=True, kw_only=True)
class PlanShown:
    """All that the page says of a plan."""

    lanes: LanesShown
    ends: str
    bound: str
    hands: str
    made: str
    why: str
    moved: str
    changes: tuple[str, ...]
    conflicts: tuple[ConflictRow, ...]
    left_out: tuple[OutRow, ...]
    aside: tuple[OutRow, ...]
    jobs: tuple[JobRow, ...]
    later: tuple[JobRow, ...]
    is_from_now: bool


def shown_plan(day: DayNow, plan: Schedule, order: DayInOrder) -> PlanShown:
    """Return the plan as its page shows it."""
    called = {each.number: each.called for each in day.baths}
    is_today = day.day == today()
    jobs = tuple(_jobs(order, plan, is_today=is_today))
    return PlanShown(
        lanes=lanes_of(day, plan),
        ends=_ends(plan),
        bound=_bound(plan),
        hands=span(plan.hands_min),
        made=_made(plan),
        why=plan.why,
        moved="" if day.is_past else ", ".join(moved_on(day, plan)),
        changes=tuple(_changes(plan, day, called)),
        conflicts=tuple(_conflicts(day, plan, called)),
        left_out=tuple(
            _out(day, each.number, each.why, called)
            for each in plan.left_out
            if each.number in called
        ),
        aside=tuple(
            _out(day, each["name"], each["why"], called)
            for each in plan.plan.get("aside", ())
        ),
        jobs=jobs[:NEXT],
        later=jobs[NEXT:],
        is_from_now=is_today,
    )


def unplanned(day: DayNow) -> tuple[str, ...]:
    """Return the open baths that the plan that holds has not heard of."""
    plan = day.schedule
    if plan is None:
        return ()
    heard = {each["name"] for each in plan.asked["baths"]}
    heard |= {each["name"] for each in plan.plan.get("aside", ())}
    return tuple(x.called for x in day.open_baths if x.number not in heard)


def _ends(plan: Schedule) -> str:
    return f"The last rinse or look ends {clock(plan.ends_at)}."


def _bound(plan: Schedule) -> str:
    """Return how near the plan is to the best that there can be."""
    if plan.left_out:
        return "As not every bath fits in, no bound is stated."
    if plan.is_proved or plan.ends_at <= plan.bound_at:
        return "No plan of this day can end earlier."
    gap = (plan.ends_at - plan.bound_at).total_seconds() / 60
    return (
        f"No plan can end before {clock(plan.bound_at)}: this one is within "
        f"{span(gap)} of the best there can be."
    )


def _made(plan: Schedule) -> str:
    local = timezone.localtime(plan.made_at)
    by = f" by {plan.made_by}" if plan.made_by else ""
    made = f"Planned {local.day} {local:%b} {clock(local)}{by}."
    if not plan.plan.get("stopped_by_clock"):
        return made
    return f"{made} The computer was busy, so fewer plans were looked at than usual."


def _changes(plan: Schedule, day: DayNow, called: Mapping[str, str]) -> Iterator[str]:
    opens = DayClock(day=day.day, opens_at=timezone.localtime(plan.opens_at).time())
    for each in plan.plan.get("changes", ()):
        name = called.get(each["name"], each["name"])
        was, now = each["was"], each["now"]
        if now is None:
            yield f"{name} no longer fits in; it stood {_stood(was, opens)}."
        else:
            yield f"{name}: {_stood(now, opens)}, was {_stood(was, opens)}."


def _stood(place: Mapping[str, Any], opens: DayClock) -> str:
    at = clock(opens.time_of(place["start_min"]))
    where = " on ".join(x for x in (place["pot"], place["source"]) if x)
    return f"{at} in {where}"


def _conflicts(
    day: DayNow, plan: Schedule, called: Mapping[str, str]
) -> Iterator[ConflictRow]:
    found: dict[str, list[str]] = {}
    for each in plan.plan.get("conflicts", ()):
        found.setdefault(each["name"], []).append(each["why"])
    still_open = {each.number for each in day.open_baths}
    for number, why in found.items():
        if number in still_open:
            way = Link(
                words="Say where it really stands",
                address=reverse("day-bath", args=[day.day, number]),
            )
            yield ConflictRow(called=called[number], why=tuple(why), way=way)


def _out(day: DayNow, number: str, why: str, called: Mapping[str, str]) -> OutRow:
    again = f"{reverse('plan-bath')}?again={number}"
    wishes = Link(
        words="Change its wishes", address=reverse("day-bath", args=[day.day, number])
    )
    ways = (wishes, Link(words="Put it on another day", address=again))
    return OutRow(called=called.get(number, number), why=why, ways=ways)


def _jobs(order: DayInOrder, plan: Schedule, *, is_today: bool) -> Iterator[JobRow]:
    # Today what was to be done earlier and was not stands first: it is late, not over.
    for job in day_jobs(order, plan):
        if job.who and not (is_today and job.is_over):
            bath, _space, name = job.bath.partition(" ")
            yield JobRow(
                at=job.at,
                bath=bath,
                name=name,
                what=job.what,
                where=job.where,
                who=job.who,
            )
