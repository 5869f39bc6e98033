"""The clocks of a bath: what calls the dyer, and when.

A clock begins with the tick of one step and ends with that of another, at the
latest when the heat is off. Its time is the first tick's: a second phone that
ticks the same step later does not put it off.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta

from shadewright.core.baths.rounds import LOOK_AFTER_MIN, RoundStep, StepKind
from shadewright.workflows.bath_shapes import HEARD, MORE, Clock, DoneLine, StepNow


@dataclass(frozen=True, kw_only=True)
class ClockPlan:
    """A clock before it runs: the step that begins it, that it calls for, and when."""

    begun_by: str
    key: str
    words: str
    minutes: float


def clock_plans(called: str, round_: Sequence[RoundStep]) -> tuple[ClockPlan, ...]:
    """Return what would ring: look, what goes in on the way, top, end of the hold."""
    by_kind = {step.kind: step for step in round_}
    heat, look = by_kind[StepKind.HEAT], by_kind[StepKind.LOOK]
    top, hold = by_kind[StepKind.TOP], by_kind[StepKind.HOLD]
    waits = (
        (heat, look, LOOK_AFTER_MIN),
        *((heat, step, step.heated_min) for step in round_),
        (heat, top, heat.timer_min),
        (top, hold, top.timer_min),
    )
    return tuple(
        ClockPlan(
            begun_by=begun.key,
            key=awaited.key,
            words=f"{called}: {awaited.title}",
            minutes=minutes,
        )
        for begun, awaited, minutes in waits
        if minutes is not None
    )


def clocks_of(
    number: str, called: str, steps: Sequence[StepNow], lines: Sequence[DoneLine]
) -> tuple[Clock, ...]:
    """Return the clocks that run or ring, the soonest first, each naming its pot."""
    standing = [line for line in lines if not line.is_undone]
    running = _running(number, called, steps, standing)
    return tuple(sorted(running, key=lambda clock: clock.rings_at))


def _running(
    number: str, called: str, steps: Sequence[StepNow], standing: Sequence[DoneLine]
) -> Iterator[Clock]:
    by_key = {each.step.key: each for each in steps}
    is_off = any(each.is_done for each in steps if each.step.kind is StepKind.OFF)
    for plan in clock_plans(called, [each.step for each in steps]):
        begun = by_key[plan.begun_by]
        if is_off or not begun.ticks or by_key[plan.key].is_done:
            continue
        minutes = plan.minutes + _added_min(plan, standing)
        rings_at = begun.ticks[0].at + timedelta(minutes=minutes)
        heard = (x.at for x in standing if x.step == plan.key + HEARD)
        yield Clock(
            bath=number,
            key=plan.key,
            words=plan.words,
            rings_at=rings_at,
            is_heard=any(at >= rings_at for at in heard),
        )


def _added_min(plan: ClockPlan, standing: Sequence[DoneLine]) -> float:
    more = (line.value for line in standing if line.step == plan.key + MORE)
    return sum(minutes for minutes in more if minutes is not None)
