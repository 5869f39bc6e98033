"""The plan of a day that holds, read back: which bath stands where, and when."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Any

from django.utils import timezone

from shadewright.core.planning import Stage
from shadewright.records import day_reads
from shadewright.records.models import DaySchedule


@dataclass(frozen=True, kw_only=True)
class StageAt:
    """A stage of a bath, or a touch within one, and who does it ('' if nobody)."""

    name: str
    starts_at: datetime
    ends_at: datetime
    person: str = ""


@dataclass(frozen=True, kw_only=True)
class BathAt:
    """A bath in a day's plan; ``number`` is the bath's own."""

    number: str
    pot: str
    source: str
    stages: tuple[StageAt, ...]
    touches: tuple[StageAt, ...]

    def stage(self, which: Stage) -> StageAt | None:
        """Return one of its stages, if the plan has it."""
        return next((each for each in self.stages if each.name == which), None)


@dataclass(frozen=True, kw_only=True)
class WashoutAt:
    """A pot that is washed out before a bath."""

    pot: str
    before: str
    starts_at: datetime
    ends_at: datetime
    person: str


@dataclass(frozen=True, kw_only=True)
class LeftOutOfDay:
    """A bath that the day does not hold, and what ran out."""

    number: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Schedule:
    """The newest plan of a day; ``asked`` is the day as the planner was given it."""

    id: int
    day: date
    opens_at: datetime
    closes_at: datetime
    baths: tuple[BathAt, ...]
    washouts: tuple[WashoutAt, ...]
    left_out: tuple[LeftOutOfDay, ...]
    ends_at: datetime
    bound_at: datetime
    is_proved: bool
    hands_min: float
    peak_kw: Mapping[str, float]
    made_at: datetime
    made_by: str
    why: str
    asked: Mapping[str, Any]
    plan: Mapping[str, Any]

    def bath(self, number: str) -> BathAt | None:
        """Return where a bath stands in it."""
        return next((each for each in self.baths if each.number == number), None)


def schedule_of(day: date) -> Schedule | None:
    """Return the newest plan of a day, or None where none was made."""
    row = day_reads.schedule_row(day)
    return None if row is None else shaped_schedule(row)


def shaped_schedule(row: DaySchedule) -> Schedule:
    """Return a kept plan with its minutes as times of its day."""
    day, plan = row.dye_day.day, row.plan
    opens_at = _at(day, row.asked["start"])
    return Schedule(
        id=row.pk,
        day=day,
        opens_at=opens_at,
        closes_at=_at(day, row.asked["end"]),
        baths=tuple(_bath(each, opens_at) for each in plan["baths"]),
        washouts=tuple(
            WashoutAt(pot=each["pot"], before=each["before"], **_span(each, opens_at))
            for each in plan["washouts"]
        ),
        left_out=tuple(
            LeftOutOfDay(number=each["name"], why=each["why"])
            for each in plan["left_out"]
        ),
        ends_at=opens_at + timedelta(minutes=plan["end_min"]),
        bound_at=opens_at + timedelta(minutes=plan["bound_min"]),
        is_proved=plan["proved"],
        hands_min=plan["hands_min"],
        peak_kw=plan["peak_kw_by_circuit"],
        made_at=row.made_at,
        made_by="" if row.made_by is None else row.made_by.name,
        why=row.why,
        asked=row.asked,
        plan=plan,
    )


def _bath(each: Mapping[str, Any], opens_at: datetime) -> BathAt:
    return BathAt(
        number=each["name"],
        pot=each["pot"] or "",
        source=each["source"],
        stages=tuple(_stage(one, one["stage"], opens_at) for one in each["stages"]),
        touches=_touches(each["touches"], opens_at),
    )


def _touches(
    each: Sequence[Mapping[str, Any]], opens_at: datetime
) -> tuple[StageAt, ...]:
    return tuple(_stage(one, "touch", opens_at) for one in each)


def _stage(one: Mapping[str, Any], name: str, opens_at: datetime) -> StageAt:
    return StageAt(name=name, **_span(one, opens_at))


def _span(one: Mapping[str, Any], opens_at: datetime) -> dict[str, Any]:
    return {
        "starts_at": opens_at + timedelta(minutes=one["start_min"]),
        "ends_at": opens_at + timedelta(minutes=one["end_min"]),
        "person": one["person"] or "",
    }


def _at(day: date, clock: str) -> datetime:
    return timezone.make_aware(datetime.combine(day, time.fromisoformat(clock)))
