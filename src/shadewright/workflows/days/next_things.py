"""What the hands are wanted for next, over every bath that is open.

A bath asks for one thing at a time: an alarm that rings, a step that waits for hands,
a clock that runs, its cooling or drying, or its start. Alarms come first, then what
waits for hands; then what has a time, the soonest first; last what has none.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import open_baths
from shadewright.workflows.bath_shapes import BathNow, BathStatus, Clock
from shadewright.workflows.days.schedules import BathAt, Schedule, schedule_of
from shadewright.workflows.stamps import today

_UNSTARTED = "Wash out the pot, then fill it"


class NextKind(StrEnum):
    """Why a bath is next."""

    RINGS = "rings"
    HANDS = "hands"
    RUNS = "runs"
    COOLS = "cools"
    DRIES = "dries"
    BEGINS = "begins"


_ORDER = {NextKind.RINGS: 0, NextKind.HANDS: 1}
_TIMED, _UNTIMED = 2, 3


@dataclass(frozen=True, kw_only=True)
class NextThing:
    """What a bath asks for next, and when; ``at`` is None where no time is known.

    For a step that waits for hands, ``at`` is since when.
    """

    at: datetime | None
    number: str
    called: str
    words: str
    pot: str
    kind: NextKind
    is_late: bool


def next_things(
    now: datetime, baths: Sequence[BathNow] | None = None
) -> tuple[NextThing, ...]:
    """Return what each open bath of today, or left from before, asks for, in order."""
    known = open_baths() if baths is None else baths
    plan = schedule_of(today())
    found = [_thing(bath, plan, now) for bath in known if bath.dyed_on <= today()]
    return tuple(sorted(found, key=lambda thing: _rank(thing, now)))


def _rank(thing: NextThing, now: datetime) -> tuple[int, datetime, str]:
    at, kind = thing.at, thing.kind
    is_due = kind is NextKind.BEGINS and thing.is_late
    place = _ORDER[NextKind.HANDS] if is_due else _ORDER.get(kind)
    if place is None:
        place = _UNTIMED if at is None else _TIMED
    return place, at or now, thing.number


def _thing(bath: BathNow, plan: Schedule | None, now: datetime) -> NextThing:
    planned = None if plan is None else plan.bath(bath.number)
    words, at, kind = _asked(bath, planned, plan, now)
    return NextThing(
        at=at,
        number=bath.number,
        called=bath.called,
        words=words,
        pot=bath.pot_name or ("" if planned is None else planned.pot),
        kind=kind,
        is_late=kind is not NextKind.HANDS and at is not None and at <= now,
    )


def _asked(
    bath: BathNow, planned: BathAt | None, plan: Schedule | None, now: datetime
) -> tuple[str, datetime | None, NextKind]:
    clock = _calling(bath, now)
    if clock is not None:
        kind = NextKind.RINGS if clock.rings_at <= now else NextKind.RUNS
        return clock.words.removeprefix(f"{bath.called}: "), clock.rings_at, kind
    words = _step_words(bath)
    if bath.status is BathStatus.PLANNED:
        at = None if planned is None else planned.stages[0].starts_at
        return _first_words(bath, plan, words), at, NextKind.BEGINS
    acts = {line.act for line in bath.standing}
    if BathAct.HUNG in acts:
        return "Write the lot", None, NextKind.DRIES
    if bath.status is BathStatus.COOLING:
        words = bath.steps[-1].step.title
        if BathAct.RINSED not in acts:
            return words, _starts(planned, "rinse"), NextKind.COOLS
    return words, bath.standing[0].at, NextKind.HANDS


def _calling(bath: BathNow, now: datetime) -> Clock | None:
    """Return the clock that a bath waits for; none where a step wants hands now."""
    rings = [x for x in bath.clocks if x.rings_at <= now and not x.is_heard]
    awaited = {x.key: x for x in bath.clocks}
    step = "" if bath.next_step is None else bath.next_step.step.key
    if rings or step not in awaited:
        return rings[0] if rings else None
    running = [x for x in bath.clocks if x.rings_at > now]
    return running[0] if running and awaited[step].rings_at > now else None


def _step_words(bath: BathNow) -> str:
    return "" if bath.next_step is None else bath.next_step.step.title


def _first_words(bath: BathNow, plan: Schedule | None, words: str) -> str:
    washed = set() if plan is None else {each.before for each in plan.washouts}
    return _UNSTARTED if bath.number in washed else words


def _starts(planned: BathAt | None, stage: str) -> datetime | None:
    found = [x for x in planned.stages if x.name == stage] if planned else []
    return found[0].starts_at if found else None
