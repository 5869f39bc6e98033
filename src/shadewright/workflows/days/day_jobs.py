"""Every job of a planned day by the clock: what the hands do, at which pot, and who."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime
from operator import itemgetter

from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.planning import Stage
from shadewright.core.quantities import amount_text
from shadewright.paper.day_sheet import DayJob
from shadewright.workflows.days.come_to import (
    are_steps_over,
    has_begun,
    is_stage_over,
)
from shadewright.workflows.days.day_order import DayInOrder, OrderedBath, clock
from shadewright.workflows.days.schedules import BathAt, Schedule, StageAt
from shadewright.workflows.days.step_clock import touched

Timed = tuple[datetime, int, DayJob]
"""When a job begins, its turn among those of that minute, and the job."""

_EMPTIED, _WASHED, _FILLED = range(3)  # a pot's turns: nothing is washed out over yarn

_TOUCH = "What the card says for the way up"
_OVERNIGHT = "Stays in its pot overnight"
_DOSES = ", doses in, then the yarn"


def day_jobs(order: DayInOrder, plan: Schedule) -> tuple[DayJob, ...]:
    """Return the jobs of a day, the first first."""
    timed = [*_washouts(order, plan)]
    for each in (*order.left, *order.baths):
        if each.planned is not None:
            timed += _jobs(each, each.planned, order)
    return tuple(job for *_when, job in sorted(timed, key=itemgetter(0, 1)))


def _jobs(each: OrderedBath, planned: BathAt, order: DayInOrder) -> Iterator[Timed]:
    words, called = dict(_stage_words(each, planned)), each.called_on(order.day)
    is_left = not each.of_day(order.day)
    where = " on ".join(part for part in (planned.pot, planned.source) if part)
    of_pot = DayJob(at="", bath=called, what="", where=where, who="")
    for stage in planned.stages:
        if is_left and stage.name != Stage.RINSE:
            continue
        if stage.name in words and stage.ends_at > stage.starts_at:
            what = words[Stage(stage.name)]
            is_over = is_stage_over(each.bath, Stage(stage.name), planned)
            yield _job(of_pot, stage, what, is_over=is_over)
    for touch in planned.touches:
        steps = touched(touch, [x.step for x in each.bath.steps], each.times)
        is_over = are_steps_over(each.bath, steps)
        yield _job(of_pot, touch, _touch_words(steps), is_over=is_over)


def _job(of_pot: DayJob, stage: StageAt, what: str, *, is_over: bool) -> Timed:
    said = replace(
        of_pot, at=clock(stage.starts_at), what=what, who=stage.person, is_over=is_over
    )
    turn = _EMPTIED if stage.name == Stage.RINSE else _FILLED
    return stage.starts_at, turn, said


def _stage_words(each: OrderedBath, planned: BathAt) -> Iterator[tuple[Stage, str]]:
    bath = each.bath
    water = next((x.step for x in bath.steps if x.step.key == "fill"), None)
    litres = None if water is None else water.amount
    fill = "" if litres is None else f", {amount_text(litres, 'l')}"
    skeins = {None: "", 1: " 1 skein"}.get(bath.skeins, f" {bath.skeins} skeins")
    stays = planned.stage(Stage.RINSE) is None
    dosed, warmed = planned.stage(Stage.DOSE), planned.stage(Stage.HEAT)
    yield Stage.FILL, f"Fill the pot{fill}{'' if lasts(dosed) else _DOSES}"
    yield Stage.HEAT, "Heat on"
    yield Stage.DOSE, "Doses in, then the yarn"
    yield Stage.RAMP, "Heat up to the top" if lasts(warmed) else "Heat on, to the top"
    yield Stage.HOLD, "At the top: hold"
    yield Stage.CHECK, f"Look at the bath, heat off{_overnight(stays=stays)}"
    yield Stage.RINSE, f"Rinse and hang{skeins}"


def _overnight(*, stays: bool) -> str:
    return f". {_OVERNIGHT}" if stays else ""


def lasts(stage: StageAt | None) -> bool:
    """Whether a stage takes time of its own."""
    return stage is not None and stage.ends_at > stage.starts_at


def _touch_words(steps: Sequence[RoundStep]) -> str:
    """Return what goes in, or is looked at, by the card's own words."""
    said = [x.title if x.kind is StepKind.LOOK else f"{x.title} in" for x in steps]
    return ", ".join(said) or _TOUCH


def _washouts(order: DayInOrder, plan: Schedule) -> Iterator[Timed]:
    baths = {each.bath.number: each.bath for each in order.baths}
    for each in plan.washouts:
        bath = baths.get(each.before)
        job = DayJob(
            at=clock(each.starts_at),
            bath=each.before if bath is None else bath.called,
            what="Wash out the pot before it",
            where=each.pot,
            who=each.person,
            is_over=bath is not None and has_begun(bath),
        )
        yield each.starts_at, _WASHED, job
