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
    the doses go into. What goes in on the way up is a touch, in the order of both.
    """
    return {} if planned is None else dict(_times(planned, steps))


def _times(
    planned: BathAt, steps: Sequence[RoundStep]
) -> Iterator[tuple[str, datetime]]:
    rise = planned.stage(Stage.RAMP) or planned.stage(Stage.HEAT)
    when: dict[StepKind, datetime | None] = {
        StepKind.FILL: _starts(planned.stage(Stage.FILL)),
        StepKind.DOSE: _starts(planned.stage(Stage.DOSE)),
        StepKind.YARN: _ends(planned.stage(Stage.DOSE)),
        StepKind.HEAT: _starts(rise),
        StepKind.LOOK: None if rise is None else rise.starts_at + _LOOK,
        StepKind.TOP: _starts(planned.stage(Stage.HOLD)),
        StepKind.HOLD: _starts(planned.stage(Stage.CHECK)),
        StepKind.OFF: _ends(planned.stage(Stage.CHECK)),
        StepKind.FINISH: _starts(planned.stage(Stage.RINSE)),
    }
    for step in steps:
        at = when.get(step.kind)
        if at is not None:
            yield step.key, at
    for step, touch in zip(_on_the_way(steps), planned.touches, strict=False):
        yield step.key, touch.starts_at


def _on_the_way(steps: Sequence[RoundStep]) -> Iterator[RoundStep]:
    is_rising = False
    for step in steps:
        if step.kind is StepKind.HEAT:
            is_rising = True
        elif step.kind is StepKind.TOP:
            return
        elif is_rising and step.kind is StepKind.ADD:
            yield step


def _starts(stage: StageAt | None) -> datetime | None:
    return None if stage is None else stage.starts_at


def _ends(stage: StageAt | None) -> datetime | None:
    return None if stage is None else stage.ends_at
