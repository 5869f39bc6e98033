"""A plan as people read it: every stage of every bath, who does it, where it stands."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.planning.board import Stay, Taken
from shadewright.core.planning.conflicts import Conflict, conflicts_of
from shadewright.core.planning.day import BLOCK, Day, Stage, WantedBath
from shadewright.core.planning.explaining import why_left_out
from shadewright.core.planning.fitting import pot_of
from shadewright.core.planning.keeping import Change, changes_of, place_of
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

    ``hands_min`` and ``peak_kw`` (by circuit, sources without one left aside) are of
    what is still to come. ``changes`` say what stands otherwise than before,
    ``conflicts`` what is going and cannot go on as it stands. [min, kW]
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
    changes: tuple[Change, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    ticks_per_min: int = 1


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
    conflicts = tuple(conflicts_of(stays, day))
    bound = min(tried.bound, tried.best.end) if conflicts else tried.bound
    return DayPlan(
        baths=tuple(_bath(stay, day) for stay in stays),
        washouts=tuple(_washouts(stays, day)),
        left_out=tuple(
            LeftOut(name=day.baths[n].name, why=why_left_out(tried.best, day, n))
            for n in tried.best.left_out
        ),
        end_min=tried.best.end / day.ticks_per_min,
        bound_min=bound / day.ticks_per_min,
        is_proved=tried.is_proved and not conflicts,
        hands_min=hands / day.ticks_per_min,
        peak_kw=tuple(_peaks(stays, day)),
        orders=tried.orders,
        changes=tuple(changes_of(stays, day, tried.before)),
        conflicts=conflicts,
        ticks_per_min=day.ticks_per_min,
    )


def _bath(stay: Stay, day: Day) -> PlannedBath:
    place = place_of(stay, day)
    return PlannedBath(
        name=day.baths[stay.bath].name,
        pot=place.pot,
        source=place.source,
        stages=tuple(_stages(stay, day)),
        touches=tuple(_touches(stay, day)),
    )


def _stages(stay: Stay, day: Day) -> Iterator[PlannedStage]:
    bath = day.baths[stay.bath]
    fill = place_of(stay, day).start
    yield _stage(Stage.FILL, fill, bath.minutes[Stage.FILL], day, stay.fill)
    for stage, start, length in _block(stay, day):
        yield _stage(stage, start, length, day, _by(stay, stage))
    rinse = _rinse_start(stay, bath)
    is_left = bath.is_overnight and rinse is None
    cool = day.length - stay.checked if is_left else bath.minutes.get(Stage.COOL, 0)
    cool = cool if rinse is None else min(cool, rinse - stay.checked)
    cool = max(0, cool)  # one checked after the day is over
    yield _stage(Stage.COOL, stay.checked, cool, day, None)
    if rinse is not None:
        yield _stage(Stage.RINSE, rinse, bath.minutes[Stage.RINSE], day, stay.rinse)


def _rinse_start(stay: Stay, bath: WantedBath) -> int | None:
    if bath.going is not None and bath.going.rinse_start is not None:
        return bath.going.rinse_start
    return None if stay.rinse is None else stay.rinse.start


def _block(stay: Stay, day: Day) -> Iterator[tuple[Stage, int, int]]:
    # Yields the stages from the heat to the check: when each starts, how long it is.
    # Of a bath that is going, the last ends when it was checked.
    lengths = day.baths[stay.bath].minutes | {
        Stage.HEAT: stay.way.heat,
        Stage.RAMP: stay.way.ramp,
    }
    start, checked = stay.heat, stay.checked
    for stage in BLOCK:
        is_last, left = stage is Stage.CHECK, checked - start
        yield stage, start, left if is_last else min(lengths[stage], left)
        start = min(start + lengths[stage], checked)


def _stage(
    stage: Stage, start: int, length: int, day: Day, by: Taken | None
) -> PlannedStage:
    return PlannedStage(
        stage=stage,
        start_min=start / day.ticks_per_min,
        end_min=(start + length) / day.ticks_per_min,
        person=_name_of(by, day),
    )


def _name_of(by: Taken | None, day: Day) -> str:
    return "" if by is None or by.person is None else day.people[by.person].name


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
            person=_name_of(by, day),
        )


def _washouts(stays: list[Stay], day: Day) -> Iterator[PlannedWashout]:
    for stay in stays:
        if stay.washout is not None:
            yield PlannedWashout(
                pot=pot_of(day, stay.pot).name,
                before=day.baths[stay.bath].name,
                start_min=stay.washout.start / day.ticks_per_min,
                end_min=(stay.washout.start + stay.washout.length) / day.ticks_per_min,
                person=_name_of(stay.washout, day),
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
                if other.heat <= at < other.heat + other.way.power
            )
            for at in {max(stay.heat, day.now) for stay in on}
        ]
        yield circuit.name, max(loads, default=0.0)
