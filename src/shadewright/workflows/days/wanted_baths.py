"""The baths of a day as the planner wants them: their stages, touches, wishes.

A bath of this house is filled, gets its doses and its yarn, and only then the heat: so
``fill`` holds all that the hands do up to *Heat on*, ``ramp`` the whole way to the top,
and the stages ``heat`` and ``dose`` between them take no time of their own.

A swatch shares a water bath with others and takes no source of its own, so that it is
left aside, unless somebody pins it to a pot or a source.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from shadewright.core.baths.rounds import LOOK_AFTER_MIN, RoundStep, StepKind
from shadewright.core.planning import Pin, Stage, Touch, WantedBath
from shadewright.records import day_reads
from shadewright.records.models import Bath, Pot
from shadewright.records.models.baths import BathAct
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.bath_facts import (
    Place,
    depth_of,
    family_of,
    place_of,
    planned_places,
    skeins_of,
)
from shadewright.workflows.days.day_clock import DayClock
from shadewright.workflows.days.day_now import DayNow, WishNow, status_of_row, wish_of
from shadewright.workflows.days.going import (
    going_of,
    in_order,
    ticks_of,
    with_what_it_took,
)
from shadewright.workflows.days.heat_minutes import HeatKnown
from shadewright.workflows.days.overnight import overnight_of
from shadewright.workflows.days.stage_times import StageTimes
from shadewright.workflows.rounds import round_of

LOOK_MIN = 2
"""What a look at the pot in the middle of the rise takes (common practice). [min]"""
_HOLD_MIN = 30.0  # where the recipe says none: a guess
_STEAM_UP_MIN = 15  # until steam stands about the yarn: a guess, until it is timed
_RINSED = {BathAct.RINSED, BathAct.FINISHED}
_HEATED = {BathAct.HEAT_ON, BathAct.AT_TOP, BathAct.HEAT_OFF, BathAct.RINSED}
_SHARED = (
    "Swatches share a water bath and are not in the plan. Pin one to a pot or a burner "
    "to have it planned."
)


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """The baths for the planner, and those left aside, each with why."""

    baths: tuple[WantedBath, ...]
    aside: tuple[tuple[str, str], ...]


@dataclass(frozen=True, kw_only=True)
class _Usual:
    """What every bath of a day is reckoned with."""

    clock: DayClock
    times: StageTimes
    overnight: set[str]
    now: int
    planned: Mapping[str, Place]


def wanted_baths(
    day: DayNow,
    clock: DayClock,
    known: HeatKnown,
    times: StageTimes,
    *,
    pots: Sequence[Pot],
    now: int,
) -> Wanted:
    """Return the baths of a day as the planner wants them."""
    planned = planned_places(day)
    rows = [x for x in day_reads.baths_of_day(day.day) if _is_planned(x, planned)]
    aside = {row.number: why for row in rows if (why := _aside(row, planned))}
    kept = [row for row in rows if row.number not in aside]
    usual = _Usual(
        clock=clock,
        times=times,
        overnight=overnight_of(kept, is_habit=day.room.cools_overnight, pots=pots),
        now=now,
        planned=planned,
    )
    baths = tuple(_wanted(row, usual, known.minutes(row)) for row in kept)
    return Wanted(baths=baths, aside=tuple(aside.items()))


def _is_planned(row: Bath, planned: Mapping[str, Place]) -> bool:
    """Whether the planner may hear of a bath; of one that is through, if it can."""
    status = status_of_row(row)
    if status is BathStatus.FINISHED:
        return all(place_of(row, planned))
    return status is not BathStatus.GIVEN_UP


def _aside(row: Bath, planned: Mapping[str, Place]) -> str:
    """Say why the planner is not asked about a bath; nothing where it is."""
    wish = wish_of(row)
    is_pinned = wish.pot_id is not None or wish.source_id is not None
    if row.is_swatch and not is_pinned:
        return _SHARED
    if status_of_row(row) is BathStatus.PLANNED:
        return ""
    pot, source = place_of(row, planned)
    if not pot and not wish.is_steamed:
        return "It has begun, and nobody said in which pot."
    acts = {line.act for line in standing_lines(row.lines.all())}
    is_hot = bool(acts & _HEATED)
    return (
        "It is hot, and nobody said on which burner." if is_hot and not source else ""
    )


def _wanted(row: Bath, usual: _Usual, ramps: Mapping[Place, int]) -> WantedBath:
    wish = wish_of(row)
    ticks = in_order(ticks_of(row, usual.clock), now=usual.now)
    steps = round_of(row)
    is_left = row.number in usual.overnight and not ticks.keys() & _RINSED
    minutes = _minutes(row, steps, usual, wish)
    if is_left:
        minutes[Stage.RINSE] = 0
    pot, source = place_of(row, usual.planned)
    bath = WantedBath(
        name=row.number,
        family=family_of(row),
        depth_percent=depth_of(row),
        fibre_g=row.fibre_g,
        skeins=skeins_of(row),
        liquor_ratio=row.liquor_ratio,
        minutes=minutes,
        due=None if wish.due_at is None else usual.clock.minutes(wish.due_at),
        touches=tuple(_touches(steps, ramps, usual.times, minutes)),
        cools_on_source=wish.cools_on_source,
        is_overnight=is_left,
        pin=_pin(wish, usual),
        is_steamed=wish.is_steamed,
        minutes_by_place={place: (0, minute) for place, minute in ramps.items()},
        going=going_of(
            ticks,
            pot=pot,
            source=source,
            rinse_min=minutes[Stage.RINSE],
            is_steamed=wish.is_steamed,
        ),
    )
    return with_what_it_took(bath, ticks, now=usual.now)


def _minutes(
    row: Bath, steps: Sequence[RoundStep], usual: _Usual, wish: WishNow
) -> dict[Stage, int]:
    hold = row.version.hold_min
    found = usual.times.of_bath(
        liquor_l=row.liquor_ml / 1000.0,
        doses=_hands_before_heat(steps),
        skeins=skeins_of(row),
    )
    found[Stage.FILL] += found[Stage.DOSE]
    found |= {Stage.HEAT: 0, Stage.DOSE: 0}
    found[Stage.HOLD] = max(1, round(_HOLD_MIN if hold is None else hold))
    if wish.is_steamed:
        found[Stage.RAMP] = _STEAM_UP_MIN
    return found


def _hands_before_heat(steps: Sequence[RoundStep]) -> int:
    """Return how many doses, helpers and yarns go in before the heat."""
    kinds = [step.kind for step in steps]
    before = kinds[: kinds.index(StepKind.HEAT)]
    return sum(kind in {StepKind.DOSE, StepKind.ADD, StepKind.YARN} for kind in before)


def _touches(
    steps: Sequence[RoundStep],
    ramps: Mapping[Place, int],
    times: StageTimes,
    minutes: Mapping[Stage, int],
) -> Iterator[Touch]:
    # Looks and acid on the way up, then what goes in at the top; none ends later
    # than its stage does.
    kinds = [step.kind for step in steps]
    heat, top = kinds.index(StepKind.HEAT), kinds.index(StepKind.TOP)
    dose = max(1, round(times.dose_min.minutes))
    usual = round(median(ramps.values())) if ramps else 0
    ramp = minutes.get(Stage.RAMP, usual)
    for step in steps[heat + 1 : top]:
        at = _at(step, ramp)
        if step.kind is StepKind.ADD:
            took = min(dose, ramp) if Stage.RAMP in minutes else dose
            at = min(at, ramp - took) if Stage.RAMP in minutes else at
            yield Touch(stage=Stage.RAMP, at=at, minutes=took)
        elif step.kind is StepKind.LOOK and at + LOOK_MIN < ramp:
            yield Touch(stage=Stage.RAMP, at=at, minutes=LOOK_MIN)
    added = sum(step.kind is StepKind.ADD for step in steps[top + 1 :])
    if added:
        took = min(dose * added, minutes[Stage.HOLD])
        yield Touch(stage=Stage.HOLD, at=0, minutes=took)


def _at(step: RoundStep, ramp: int) -> int:
    """Return when a step on the way up is due; half way where nobody can say."""
    if step.kind is StepKind.LOOK:
        return round(LOOK_AFTER_MIN)
    known = step.heated_min
    return ramp // 2 if known is None else round(known)


def _pin(wish: WishNow, usual: _Usual) -> Pin | None:
    """Return what is settled of a bath; a start that is past binds no more."""
    start = None if wish.starts_at is None else usual.clock.minutes(wish.starts_at)
    start = None if start is None or start < usual.now else start
    if not (wish.pot_name or wish.source_name or start is not None):
        return None
    return Pin(pot=wish.pot_name, source=wish.source_name, start=start)
