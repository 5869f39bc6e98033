"""A plan as people read it: every stage of every bath, who does it, where it stands."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.planning.board import Stay, Taken
from shadewright.core.planning.day import BLOCK, Day, Stage
from shadewright.core.planning.explaining import why_left_out
from shadewright.core.planning.searching import Tried

METHOD = "serial generation under annealing 1"


@dataclass(frozen=True, kw_only=True)
class PlannedStage:
    """A stage of a bath, and who does it, where it wants hands, in minutes."""

    stage: Stage
    start_min: float
    end_min: float
    person: str = ""


@dataclass(frozen=True, kw_only=True)
class PlannedTouch:
    """Something to be done within a stage, in minutes."""

    start_min: float
    end_min: float
    person: str


@dataclass(frozen=True, kw_only=True)
class PlannedBath:
    """A bath in its pot on its source."""

    name: str
    pot: str
    source: str
    stages: tuple[PlannedStage, ...]
    touches: tuple[PlannedTouch, ...]


@dataclass(frozen=True, kw_only=True)
class PlannedWashout:
    """A pot washed out before a bath, in minutes."""

    pot: str
    before: str
    start_min: float
    end_min: float
    person: str


@dataclass(frozen=True, kw_only=True)
class LeftOut:
    """A bath that the day does not hold, and what ran out."""

    name: str
    why: str


@dataclass(frozen=True, kw_only=True)
class DayPlan:
    """A planned day; ``bound_min`` is a time before which no plan of it ends.

    ``peak_kw`` is by circuit, sources without one left aside. [min, kW]
    """

    baths: tuple[PlannedBath, ...]
    washouts: tuple[PlannedWashout, ...]
    left_out: tuple[LeftOut, ...]
    end_min: float
    bound_min: float
    is_proved: bool
    hands_min: float
    peak_kw: tuple[tuple[str, float], ...]
    orders: int
    method: str = METHOD


def plan_of(tried: Tried, day: Day) -> DayPlan:
    """Return the best plan of a search as people read it.

    Parameters
    ----------
    tried : Tried
        What the search came to. [min]
    day : Day
        The day that was planned. [-]

    Returns
    -------
    DayPlan
        Baths in the order of their filling. [min, kW]
    """
    stays = sorted(tried.best.stays, key=lambda stay: (stay.fill.start, stay.bath))
    hands = sum(each.length for stay in stays for each in _hands_of(stay))
    return DayPlan(
        baths=tuple(_bath(stay, day) for stay in stays),
        washouts=tuple(_washouts(stays, day)),
        left_out=tuple(
            LeftOut(name=day.baths[n].name, why=why_left_out(tried.best, day, n))
            for n in tried.best.left_out
        ),
        end_min=tried.best.end / day.ticks_per_min,
        bound_min=tried.bound / day.ticks_per_min,
        is_proved=tried.is_proved,
        hands_min=hands / day.ticks_per_min,
        peak_kw=tuple(_peaks(stays, day)),
        orders=tried.orders,
    )


def _bath(stay: Stay, day: Day) -> PlannedBath:
    return PlannedBath(
        name=day.baths[stay.bath].name,
        pot=day.pots[stay.pot].name,
        source=day.sources[stay.way.source].name,
        stages=tuple(_stages(stay, day)),
        touches=tuple(_touches(stay, day)),
    )


def _stages(stay: Stay, day: Day) -> Iterator[PlannedStage]:
    bath = day.baths[stay.bath]
    yield _stage(Stage.FILL, stay.fill.start, stay.fill.length, day, stay.fill)
    for stage, start, length in _block(stay, day):
        yield _stage(stage, start, length, day, _by(stay, stage))
    checked = stay.checked
    cool = day.length - checked if bath.is_overnight else bath.minutes[Stage.COOL]
    yield _stage(Stage.COOL, checked, cool, day, None)
    if stay.rinse is not None:
        yield _stage(Stage.RINSE, stay.rinse.start, stay.rinse.length, day, stay.rinse)


def _block(stay: Stay, day: Day) -> Iterator[tuple[Stage, int, int]]:
    # Yields the stages from the heat to the check: when each starts, how long it is.
    lengths = day.baths[stay.bath].minutes | {
        Stage.HEAT: stay.way.heat,
        Stage.RAMP: stay.way.ramp,
    }
    start = stay.heat
    for stage in BLOCK:
        yield stage, start, lengths[stage]
        start += lengths[stage]


def _stage(
    stage: Stage, start: int, length: int, day: Day, by: Taken | None
) -> PlannedStage:
    return PlannedStage(
        stage=stage,
        start_min=start / day.ticks_per_min,
        end_min=(start + length) / day.ticks_per_min,
        person="" if by is None else day.people[by.person].name,
    )


def _by(stay: Stay, what: str | int) -> Taken | None:
    """Return who does a stage or a touch of a bath; nobody, where it takes no time."""
    pairs = zip(stay.way.hands, stay.hands, strict=True)
    return next((taken for wanted, taken in pairs if wanted.what == what), None)


def _touches(stay: Stay, day: Day) -> Iterator[PlannedTouch]:
    begins = {stage: start for stage, start, _length in _block(stay, day)}
    for number, touch in enumerate(day.baths[stay.bath].touches):
        at = begins[touch.stage] + touch.at
        by = _by(stay, number)
        yield PlannedTouch(
            start_min=at / day.ticks_per_min,
            end_min=(at + touch.minutes) / day.ticks_per_min,
            person="" if by is None else day.people[by.person].name,
        )


def _washouts(stays: list[Stay], day: Day) -> Iterator[PlannedWashout]:
    for stay in stays:
        if stay.washout is not None:
            yield PlannedWashout(
                pot=day.pots[stay.pot].name,
                before=day.baths[stay.bath].name,
                start_min=stay.washout.start / day.ticks_per_min,
                end_min=(stay.washout.start + stay.washout.length) / day.ticks_per_min,
                person=day.people[stay.washout.person].name,
            )


def _hands_of(stay: Stay) -> Iterator[Taken]:
    yield stay.fill
    yield from stay.hands
    for each in (stay.rinse, stay.washout):
        if each is not None:
            yield each


def _peaks(stays: list[Stay], day: Day) -> Iterator[tuple[str, float]]:
    for circuit in day.circuits:
        on = [
            stay
            for stay in stays
            if day.sources[stay.way.source].circuit == circuit.name
        ]
        loads = [
            sum(
                other.way.power_kw
                for other in on
                if other.heat <= stay.heat < other.heat + other.way.power
            )
            for stay in on
        ]
        yield circuit.name, max(loads, default=0.0)
