"""How long the hands take over a pot: medians from the ledgers, else usual values.

What a tick took is the time since the same person's last tick. For a dose and for the
look before the heat goes off that last tick must be of the same bath; for a filling
and a rinse it may be any; the rinses of a bath and its hanging count as one. Longer
gaps than ``_MOST_MIN`` are left out, since nobody knows what was done in them. Cooling
runs from heat off to the first rinse of the same day, so that what is learned is what
this studio waits, not what the yarn needs.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil
from statistics import median

from django.utils import timezone

from shadewright.core.planning import Stage
from shadewright.records import stage_reads
from shadewright.records.models import Bath, BathLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.typed_cards import DEVICE

FEWEST = 5
"""From so many timings on, their median goes before the usual value."""
_LEAST_MIN, _MOST_MIN = 0.2, 30.0
_DOSES = {BathAct.DOSED, BathAct.ADDED}
_RINSES = {BathAct.RINSED, BathAct.HUNG}


@dataclass(frozen=True, kw_only=True)
class StageTime:
    """Minutes of a stage, how many timings they rest on, and whether they count yet."""

    minutes: float
    rests_on: int = 0
    is_learned: bool = False


@dataclass(frozen=True, kw_only=True)
class StageTimes:
    """What hands and cooling take: per litre, per dose, per skein, or as they are."""

    fill_min_per_l: StageTime
    dose_min: StageTime
    check_min: StageTime
    rinse_min_per_skein: StageTime
    cool_min: StageTime

    def of_bath(self, *, liquor_l: float, doses: int, skeins: int) -> dict[Stage, int]:
        """Return whole minutes of the stages of a bath, none of them below one."""
        minutes = {
            Stage.FILL: self.fill_min_per_l.minutes * liquor_l,
            Stage.DOSE: self.dose_min.minutes * doses,
            Stage.CHECK: self.check_min.minutes,
            Stage.COOL: self.cool_min.minutes,
            Stage.RINSE: self.rinse_min_per_skein.minutes * skeins,
        }
        return {stage: max(1, ceil(each - 1e-9)) for stage, each in minutes.items()}


# Common practice all: a kitchen tap gives some 6 l in a minute and the pot is carried;
# a dose is found, measured, rinsed out and stirred; hand-warm takes 2 h and more.
USUAL = StageTimes(
    fill_min_per_l=StageTime(minutes=0.4),
    dose_min=StageTime(minutes=3.0),
    check_min=StageTime(minutes=2.0),
    rinse_min_per_skein=StageTime(minutes=2.0),
    cool_min=StageTime(minutes=120.0),
)


def stage_minutes() -> StageTimes:
    """Return the minutes that this studio takes, its usual ones until it has shown."""
    lines = [line for line in stage_reads.timed_lines() if _is_tapped(line)]
    found: dict[str, list[float]] = defaultdict(list)
    for name, minutes in (*_by_hand(lines), *_cooled(lines)):
        found[name].append(minutes)
    return StageTimes(
        fill_min_per_l=_learned(USUAL.fill_min_per_l, found["fill"]),
        dose_min=_learned(USUAL.dose_min, found["dose"]),
        check_min=_learned(USUAL.check_min, found["check"]),
        rinse_min_per_skein=_learned(USUAL.rinse_min_per_skein, found["rinse"]),
        cool_min=_learned(USUAL.cool_min, found["cool"]),
    )


def _learned(usual: StageTime, timings: Sequence[float]) -> StageTime:
    if len(timings) < FEWEST:
        return StageTime(minutes=usual.minutes, rests_on=len(timings))
    return StageTime(minutes=median(timings), rests_on=len(timings), is_learned=True)


def _is_tapped(line: BathLine) -> bool:
    """Whether somebody ticked it at the pot; the times of a card may be missing."""
    return line.device != DEVICE


def _by_hand(lines: Sequence[BathLine]) -> Iterator[tuple[str, float]]:
    ordered = sorted(lines, key=lambda line: (line.by_id or 0, line.at, line.pk))
    rinsed: dict[Bath, float] = defaultdict(float)
    for before, line in pairwise(ordered):
        minutes = (line.at - before.at).total_seconds() / 60
        if before.by_id != line.by_id or not _LEAST_MIN <= minutes <= _MOST_MIN:
            continue
        if line.act in _RINSES:
            rinsed[line.bath] += minutes
        yield from _timing(before, line, minutes)
    for bath, minutes in rinsed.items():
        if bath.skeins:
            yield "rinse", minutes / bath.skeins


def _timing(
    before: BathLine, line: BathLine, minutes: float
) -> Iterator[tuple[str, float]]:
    is_same = before.bath_id == line.bath_id
    if line.step == "fill" and line.act == BathAct.STARTED:
        yield "fill", minutes / _liquor_l(line)
    elif line.act in _DOSES and is_same and before.act in {BathAct.STARTED, *_DOSES}:
        yield "dose", minutes
    elif line.act == BathAct.HEAT_OFF and is_same and before.act == BathAct.CHECKED:
        yield "check", minutes


def _liquor_l(line: BathLine) -> float:
    return line.bath.liquor_ml / 1000


def _cooled(lines: Sequence[BathLine]) -> Iterator[tuple[str, float]]:
    off = {line.bath_id: line for line in lines if line.act == BathAct.HEAT_OFF}
    seen: set[int] = set()
    for line in lines:
        began = off.get(line.bath_id)
        if line.act != BathAct.RINSED or began is None or line.bath_id in seen:
            continue
        seen.add(line.bath_id)
        if timezone.localdate(began.at) == timezone.localdate(line.at):
            yield "cool", (line.at - began.at).total_seconds() / 60
