"""A plan of a day as it is drawn: what stands on each source, what circuits carry."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta

from shadewright.core.planning import Day, Stage
from shadewright.core.planning.fitting import stays_on_source
from shadewright.exchange.day_file import read_day
from shadewright.workflows.days.schedules import BathAt, Schedule, StageAt

_MINUTE = timedelta(minutes=1)


@dataclass(frozen=True, kw_only=True)
class PlaceShown:
    """A source of the day, in kW."""

    name: str
    power_kw: float


@dataclass(frozen=True, kw_only=True)
class Load:
    """What a circuit carries from each minute on, and what it bears, in kW and min."""

    name: str
    limit_kw: float
    peak_kw: float
    steps: tuple[tuple[float, float], ...]


@dataclass(frozen=True, kw_only=True)
class SpanShown:
    """A stage or a touch of a bath in minutes of the day; ``is_off`` the source."""

    name: str
    starts: float
    ends: float
    is_off: bool


@dataclass(frozen=True, kw_only=True)
class BathShown:
    """A bath on its source, by the bath's own number."""

    number: str
    source: str
    spans: tuple[SpanShown, ...]


@dataclass(frozen=True, kw_only=True)
class DayPicture:
    """All that a plan's lanes show, in minutes after the day opens."""

    opens_min: int
    length: float
    sources: tuple[PlaceShown, ...]
    loads: tuple[Load, ...]
    baths: tuple[BathShown, ...]
    hands: tuple[tuple[float, float], ...]


def picture_of(plan: Schedule) -> DayPicture:
    """Return a plan as it is drawn."""
    day = read_day(json.dumps(plan.asked))
    cooling = {each.name for each in day.baths if _cools_there(each.name, plan, day)}
    shown = tuple(
        _bath(each, plan, cools_there=each.number in cooling) for each in plan.baths
    )
    return DayPicture(
        opens_min=day.opens_min,
        length=day.length / day.ticks_per_min,
        sources=tuple(
            PlaceShown(name=each.name, power_kw=each.power_kw) for each in day.sources
        ),
        loads=tuple(_loads(plan, day)),
        baths=shown,
        hands=tuple(sorted(_hands(plan))),
    )


def _cools_there(name: str, plan: Schedule, day: Day) -> bool:
    planned = plan.bath(name)
    pots = {each.name: each for each in day.pots}
    if planned is None or planned.pot not in pots:
        return False
    bath = next(each for each in day.baths if each.name == name)
    return stays_on_source(bath, pots[planned.pot])


def _bath(bath: BathAt, plan: Schedule, *, cools_there: bool) -> BathShown:
    off = {Stage.RINSE} if cools_there else {Stage.COOL, Stage.RINSE}
    spans = [
        _span(stage, plan, is_off=stage.name in off)
        for stage in bath.stages
        if stage.ends_at > stage.starts_at
    ]
    spans += [_span(touch, plan, is_off=False) for touch in bath.touches]
    return BathShown(number=bath.number, source=bath.source, spans=tuple(spans))


def _span(stage: StageAt, plan: Schedule, *, is_off: bool) -> SpanShown:
    return SpanShown(
        name=stage.name,
        starts=(stage.starts_at - plan.opens_at) / _MINUTE,
        ends=(stage.ends_at - plan.opens_at) / _MINUTE,
        is_off=is_off,
    )


def _hands(plan: Schedule) -> Iterator[tuple[float, float]]:
    # Yields when somebody is at work, washing a pot out too.
    spans: list[tuple[StageAt, ...]] = [(*x.stages, *x.touches) for x in plan.baths]
    for each in (x for some in spans for x in some if x.person):
        yield _minutes(each, plan)
    for washout in plan.washouts:
        starts = (washout.starts_at - plan.opens_at) / _MINUTE
        yield starts, (washout.ends_at - plan.opens_at) / _MINUTE


def _minutes(each: StageAt, plan: Schedule) -> tuple[float, float]:
    opens = plan.opens_at
    return (each.starts_at - opens) / _MINUTE, (each.ends_at - opens) / _MINUTE


def _loads(plan: Schedule, day: Day) -> Iterator[Load]:
    powers = {each.name: (each.circuit, each.power_kw) for each in day.sources}
    for circuit in day.circuits:
        on = [x for x in plan.baths if powers.get(x.source, ("",))[0] == circuit.name]
        steps = tuple(_steps(on, plan, powers))
        yield Load(
            name=circuit.name,
            limit_kw=circuit.limit_kw,
            peak_kw=max((kw for _at, kw in steps), default=0.0),
            steps=steps,
        )


def _steps(
    baths: Sequence[BathAt], plan: Schedule, powers: Mapping[str, tuple[str, float]]
) -> Iterator[tuple[float, float]]:
    # Yields from each change on what the baths of a circuit draw together.
    changes: dict[float, float] = {0.0: 0.0}
    for bath in baths:
        heat, hold = bath.stage(Stage.HEAT), bath.stage(Stage.HOLD)
        if heat is None or hold is None:
            continue
        kw = powers[bath.source][1]
        starts = max(0.0, (heat.starts_at - plan.opens_at) / _MINUTE)
        ends = max(0.0, (hold.ends_at - plan.opens_at) / _MINUTE)
        changes[starts] = changes.get(starts, 0.0) + kw
        changes[ends] = changes.get(ends, 0.0) - kw
    load_kw = 0.0
    for at in sorted(changes):
        load_kw += changes[at]
        yield at, max(0.0, round(load_kw, 6))
