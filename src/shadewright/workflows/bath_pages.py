"""A bath as it stands now: its round with what was ticked, its clocks, its lines."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from uuid import UUID

from shadewright.core.baths.rounds import LOOK_AFTER_MIN, RoundStep, StepKind
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.rounds import round_of
from shadewright.workflows.undo import may_undo

_TICKS = {
    BathAct.STARTED,
    BathAct.DOSED,
    BathAct.MISSED,
    BathAct.ADDED,
    BathAct.HEAT_ON,
    BathAct.AT_TOP,
    BathAct.CHECKED,
    BathAct.HEAT_OFF,
    BathAct.FINISHED,
}


class BathStatus(StrEnum):
    """Where a bath is."""

    PLANNED = "planned"
    GOING = "going"
    COOLING = "cooling"
    FINISHED = "finished"
    GIVEN_UP = "given up"


@dataclass(frozen=True, kw_only=True)
class DoneLine:
    """A line of the bath's ledger as a page shows it."""

    deed: UUID
    act: BathAct
    step: str
    at: datetime
    by: str
    device: str
    value: float | None
    unit: str
    bottle: str
    is_drawn: bool
    note: str
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class StepNow:
    """A step of the round with what was ticked on it."""

    step: RoundStep
    ticks: tuple[DoneLine, ...]

    @property
    def is_done(self) -> bool:
        """Whether it was ticked, or left out on purpose."""
        return bool(self.ticks)

    @property
    def is_double(self) -> bool:
        """Whether it was ticked more than once: by two phones, or twice by one."""
        return len(self.ticks) > 1

    @property
    def is_missed(self) -> bool:
        """Whether it was left out."""
        return any(tick.act == BathAct.MISSED for tick in self.ticks)


@dataclass(frozen=True, kw_only=True)
class Clock:
    """Something that the dyer is called for at a time."""

    bath: str
    key: str
    words: str
    rings_at: datetime


@dataclass(frozen=True, kw_only=True)
class BathNow:
    """A bath as planned and as dyed, side by side."""

    number: str
    recipe_name: str
    version_id: int
    version_number: int
    base_name: str
    mill_lot: str
    pot_name: str
    is_swatch: bool
    dyed_on: date
    fibre_g: float
    skeins: int | None
    liquor_ratio: float
    notes: str
    status: BathStatus
    steps: tuple[StepNow, ...]
    clocks: tuple[Clock, ...]
    lines: tuple[DoneLine, ...]
    has_lot: bool

    @property
    def next_step(self) -> StepNow | None:
        """The first step that is not ticked, or None."""
        return next((step for step in self.steps if not step.is_done), None)

    @property
    def last_dose(self) -> DoneLine | None:
        """The newest dose that stands, to ask for after an interruption."""
        doses = (line for line in self.lines if line.act == BathAct.DOSED)
        return next((line for line in doses if not line.is_undone), None)


def bath_now(number: str) -> BathNow:
    """Return one bath as it stands now."""
    return shaped_bath(recipe_reads.bath_row(number))


def baths_of_day(day: date) -> tuple[BathNow, ...]:
    """Return the baths of a day, oldest first."""
    rows = recipe_reads.bath_rows().filter(dyed_on=day).order_by("id")
    return tuple(shaped_bath(row) for row in rows)


def open_baths() -> tuple[BathNow, ...]:
    """Return the baths that are neither finished nor given up, oldest first."""
    over = (BathAct.FINISHED, BathAct.GIVEN_UP)
    rows = recipe_reads.bath_rows().filter(lot=None).order_by("dyed_on", "id")
    every = (shaped_bath(row) for row in rows)
    return tuple(
        each
        for each in every
        if not any(line.act in over and not line.is_undone for line in each.lines)
    )


def shaped_bath(row: Bath) -> BathNow:
    """Return a row as the bath stands now."""
    lines = tuple(_shaped(line) for line in _newest_first(row))
    steps = tuple(_step(step, lines) for step in round_of(row))
    return BathNow(
        number=row.number,
        recipe_name=row.version.recipe.name,
        version_id=row.version_id,
        version_number=row.version.number,
        base_name=row.base.name,
        mill_lot="" if row.mill_lot is None else row.mill_lot.lot,
        pot_name="" if row.pot is None else row.pot.name,
        is_swatch=row.is_swatch,
        dyed_on=row.dyed_on,
        fibre_g=row.fibre_g,
        skeins=row.skeins,
        liquor_ratio=row.liquor_ratio,
        notes=row.notes,
        status=_status(lines),
        steps=steps,
        clocks=_clocks(row.number, steps),
        lines=lines,
        has_lot=hasattr(row, "lot"),
    )


def _newest_first(row: Bath) -> Sequence[BathLine]:
    lines = row.lines.select_related("by", "bottle", "undone_by")
    return list(lines.order_by("-id"))


def _shaped(line: BathLine) -> DoneLine:
    return DoneLine(
        deed=line.deed,
        act=BathAct(line.act),
        step=line.step,
        at=line.at,
        by="" if line.by is None else line.by.name,
        device=line.device,
        value=line.value,
        unit=line.unit,
        bottle="" if line.bottle is None else line.bottle.code,
        is_drawn=line.drawn_id is not None,
        note=line.note,
        is_undone=hasattr(line, "undone_by") or line.undoes_id is not None,
        may_undo=may_undo(line),
    )


def _step(step: RoundStep, lines: Sequence[DoneLine]) -> StepNow:
    ticks = (
        line
        for line in reversed(lines)
        if line.step == step.key and line.act in _TICKS and not line.is_undone
    )
    return StepNow(step=step, ticks=tuple(ticks))


def _status(lines: Sequence[DoneLine]) -> BathStatus:
    acts = {line.act for line in lines if not line.is_undone}
    reached = (
        (BathAct.GIVEN_UP, BathStatus.GIVEN_UP),
        (BathAct.FINISHED, BathStatus.FINISHED),
        (BathAct.HEAT_OFF, BathStatus.COOLING),
    )
    for act, status in reached:
        if act in acts:
            return status
    return BathStatus.GOING if acts else BathStatus.PLANNED


def _clocks(number: str, steps: Sequence[StepNow]) -> tuple[Clock, ...]:
    """Return what rings: the first look, the top reached, the end of the hold."""
    by_kind = {each.step.kind: each for each in steps}
    heat, look = by_kind[StepKind.HEAT], by_kind[StepKind.LOOK]
    top, hold = by_kind[StepKind.TOP], by_kind[StepKind.HOLD]
    waits = (
        (heat, look, LOOK_AFTER_MIN),
        (heat, top, heat.step.timer_min),
        (top, hold, top.step.timer_min),
    )
    return tuple(
        Clock(
            bath=number,
            key=awaited.step.key,
            words=f"{number}: {awaited.step.title}",
            rings_at=begun.ticks[0].at + timedelta(minutes=minutes),
        )
        for begun, awaited, minutes in waits
        if begun.is_done and not awaited.is_done and minutes is not None
    )
