"""A bath's place in the plan of its day, as times of the steps on its card."""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from shadewright.core.baths.rounds import LOOK_AFTER_MIN, RoundStep, StepKind
from shadewright.core.planning import Stage
from shadewright.workflows.days.schedules import BathAt, StageAt

_LOOK = timedelta(minutes=LOOK_AFTER_MIN)


def planned_times(
    planned: BathAt | None, steps: Sequence[RoundStep]
) -> dict[str, datetime]:
    """Return when each step is planned, by its key; nothing where no plan says so.

    The heat of the card is the rise of the plan: water may be warmed before, to what
    the doses go into. Where the plan counts the doses to the filling, they have no time
    of their own.
    """
    return {} if planned is None else dict(_times(planned, steps))


def touched(
    touch: StageAt, steps: Sequence[RoundStep], times: dict[str, datetime]
) -> tuple[RoundStep, ...]:
    """Return what is added or looked at in a touch of the plan, by its time."""
    kinds = {StepKind.ADD, StepKind.LOOK}
    near = timedelta(minutes=1)
    return tuple(
        step
        for step in steps
        if step.kind in kinds
        and step.key in times
        and abs(times[step.key] - touch.starts_at) < near
    )


def _times(
    planned: BathAt, steps: Sequence[RoundStep]
) -> Iterator[tuple[str, datetime]]:
    dose = _lasting(planned.stage(Stage.DOSE))
    rise = planned.stage(Stage.RAMP) or planned.stage(Stage.HEAT)
    check = planned.stage(Stage.CHECK)
    when: dict[StepKind, datetime | None] = {
        StepKind.FILL: _starts(planned.stage(Stage.FILL)),
        StepKind.DOSE: _starts(dose),
        StepKind.YARN: None if dose is None else dose.ends_at,
        StepKind.HEAT: _starts(rise),
        StepKind.LOOK: None if rise is None else rise.starts_at + _LOOK,
        StepKind.TOP: _starts(planned.stage(Stage.HOLD)),
        StepKind.HOLD: _starts(check),
        StepKind.OFF: None if check is None else check.ends_at,
        StepKind.FINISH: _starts(planned.stage(Stage.RINSE)),
    }
    for step in steps:
        at = when.get(step.kind)
        if at is not None:
            yield step.key, at
    yield from _added(planned, steps, rise)


def _added(
    planned: BathAt, steps: Sequence[RoundStep], rise: StageAt | None
) -> Iterator[tuple[str, datetime]]:
    # What goes in on the way up and at the top has its touch in the plan.
    looks = set() if rise is None else {rise.starts_at + _LOOK}
    waiting = [x.starts_at for x in planned.touches if x.starts_at not in looks]
    kinds = [step.kind for step in steps]
    heat, top = kinds.index(StepKind.HEAT), kinds.index(StepKind.TOP)
    on_the_way = [x for x in steps[heat + 1 : top] if x.kind is StepKind.ADD]
    yield from zip((x.key for x in on_the_way), waiting, strict=False)
    hold = planned.stage(Stage.HOLD)
    for step in steps[top + 1 :]:
        if step.kind is StepKind.ADD and hold is not None:
            yield step.key, hold.starts_at


def _lasting(stage: StageAt | None) -> StageAt | None:
    """Return a stage, unless it takes no time of its own."""
    return stage if stage is not None and stage.ends_at > stage.starts_at else None


def _starts(stage: StageAt | None) -> datetime | None:
    return None if stage is None else stage.starts_at
