"""How far a bath has come by its ticks, set against the jobs of its day.

A job is over once its step was ticked, or any later one: who ticks the heat off has
looked at 15 minutes, whether that was ticked or not.
"""

from collections.abc import Sequence

from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.planning import Stage
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import BathNow, BathStatus
from shadewright.workflows.days.schedules import BathAt

_KINDS = {
    Stage.HEAT: StepKind.HEAT,
    Stage.RAMP: StepKind.HEAT,
    Stage.HOLD: StepKind.TOP,
    Stage.CHECK: StepKind.OFF,
}


def has_begun(bath: BathNow) -> bool:
    """Whether anything was done at its pot."""
    return bath.status is not BathStatus.PLANNED


def is_stage_over(bath: BathNow, stage: Stage, planned: BathAt) -> bool:
    """Whether what hands do in a stage was done."""
    if stage is Stage.RINSE:
        return bath.status is BathStatus.FINISHED or _is_rinsed(bath)
    return _come_to(bath) >= _last_of(bath, stage, planned)


def are_steps_over(bath: BathNow, steps: Sequence[RoundStep]) -> bool:
    """Whether all of these steps were done; none that are not known are."""
    keys = [each.step.key for each in bath.steps]
    places = [keys.index(step.key) for step in steps if step.key in keys]
    return bool(places) and _come_to(bath) >= max(places)


def _is_rinsed(bath: BathNow) -> bool:
    return any(line.act == BathAct.RINSED for line in bath.standing)


def _come_to(bath: BathNow) -> int:
    """Return the place of the last step that was done, -1 before the first."""
    if bath.status is BathStatus.FINISHED:
        return len(bath.steps)
    done = [place for place, each in enumerate(bath.steps) if each.is_done]
    return max(done, default=-1)


def _last_of(bath: BathNow, stage: Stage, planned: BathAt) -> int:
    """Return the place of the last step that hands do in a stage."""
    kinds = [each.step.kind for each in bath.steps]
    if stage in _KINDS:
        return _place(kinds, _KINDS[stage])
    dosing = planned.stage(Stage.DOSE)
    has_dosing = dosing is not None and dosing.ends_at > dosing.starts_at
    if stage is Stage.FILL and has_dosing:
        return _place(kinds, StepKind.FILL)
    return _place(kinds, StepKind.HEAT) - 1


def _place(kinds: Sequence[StepKind], kind: StepKind) -> int:
    return kinds.index(kind) if kind in kinds else len(kinds)
