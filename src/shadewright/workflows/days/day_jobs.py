"""Every job of a planned day by the clock: what the hands do, at which pot, and who."""

from collections.abc import Iterator
from datetime import datetime
from operator import itemgetter

from shadewright.core.baths.rounds import StepKind
from shadewright.core.planning import Stage
from shadewright.core.quantities import amount_text
from shadewright.paper.day_sheet import DayJob
from shadewright.workflows.days.day_order import DayInOrder, OrderedBath, clock
from shadewright.workflows.days.schedules import BathAt, Schedule, StageAt
from shadewright.workflows.days.step_clock import touched

Timed = tuple[datetime, DayJob]

_TOUCH = "What the card says for the way up"
_OVERNIGHT = "Stays in its pot overnight"
_DOSES = ", doses in, then the yarn"


def day_jobs(order: DayInOrder, plan: Schedule) -> tuple[DayJob, ...]:
    """Return the jobs of a day, the first first."""
    timed = [*_washouts(order, plan)]
    for each in (*order.left, *order.baths):
        if each.planned is not None:
            timed += _jobs(each, each.planned, order)
    return tuple(job for _at, job in sorted(timed, key=itemgetter(0)))


def _jobs(each: OrderedBath, planned: BathAt, order: DayInOrder) -> Iterator[Timed]:
    words, called = dict(_stage_words(each, planned)), each.called_on(order.day)
    is_left = not each.of_day(order.day)
    for stage in planned.stages:
        if is_left and stage.name != Stage.RINSE:
            continue
        if stage.name in words and stage.ends_at > stage.starts_at:
            what = words[Stage(stage.name)]
            yield _job(called, planned, stage.starts_at, what, stage.person)
    for touch in planned.touches:
        what = _touch_words(each, touch)
        yield _job(called, planned, touch.starts_at, what, touch.person)


def _job(called: str, planned: BathAt, at: datetime, what: str, who: str) -> Timed:
    where = " on ".join(part for part in (planned.pot, planned.source) if part)
    job = DayJob(at=clock(at), bath=called, what=what, where=where, who=who)
    return at, job


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


def _touch_words(each: OrderedBath, touch: StageAt) -> str:
    """Return what goes in, or is looked at, by the card's own words."""
    steps = touched(touch, [x.step for x in each.bath.steps], each.times)
    said = [x.title if x.kind is StepKind.LOOK else f"{x.title} in" for x in steps]
    return ", ".join(said) or _TOUCH


def _washouts(order: DayInOrder, plan: Schedule) -> Iterator[Timed]:
    names = {each.bath.number: each.bath.called for each in order.baths}
    for each in plan.washouts:
        job = DayJob(
            at=clock(each.starts_at),
            bath=names.get(each.before, each.before),
            what="Wash out the pot before it",
            where=each.pot,
            who=each.person,
        )
        yield each.starts_at, job
