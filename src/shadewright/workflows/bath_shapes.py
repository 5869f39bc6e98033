"""A bath as frozen values: its steps with what was ticked, its clocks, its lines.

A line belongs to a step by the step's key. Three endings say more than a tick:
``dose-1/part`` is a share of a dose that came from one bottle, ``look/heard`` an
alarm that somebody heard, ``hold/more`` minutes added to a clock.
"""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from math import isclose
from uuid import UUID

from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.solutions.keeping import Purpose
from shadewright.records.models.baths import BathAct
from shadewright.workflows.dosing import HowSure
from shadewright.workflows.heating import BathHeat

PART, HEARD, MORE = "/part", "/heard", "/more"
RINSE, RACK = "rinse", "rack"
AFTER = {RINSE, RACK}
"""What is written between heat off and the lot, which are no steps of the round."""

ACT_OF_STEP = {
    StepKind.FILL: BathAct.STARTED,
    StepKind.DOSE: BathAct.DOSED,
    StepKind.ADD: BathAct.ADDED,
    StepKind.YARN: BathAct.STARTED,
    StepKind.HEAT: BathAct.HEAT_ON,
    StepKind.LOOK: BathAct.CHECKED,
    StepKind.TOP: BathAct.AT_TOP,
    StepKind.HOLD: BathAct.CHECKED,
    StepKind.OFF: BathAct.HEAT_OFF,
    StepKind.FINISH: BathAct.FINISHED,
}
"""What is written when a step is done as planned."""

NOTHING_LEFT = 0.01
"""A dose is in once less than this share of its dye is still to come."""


def called(number: str, recipe_name: str) -> str:
    """Return what a bath is called at the pot: its short number and its recipe.

    >>> called("261125-B2", "Low Tide")
    'B2 Low Tide'
    """
    return f"{number.rpartition('-')[2]} {recipe_name}"


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
    dye: str = ""
    is_drawn: bool
    note: str
    is_undone: bool
    may_undo: bool
    has_photo: bool = False


@dataclass(frozen=True, kw_only=True)
class DoseNow:
    """A dose as planned, in grams of dye, and how much of it is in the bath.

    ``factor`` is what the plan was multiplied by after an earlier dose went over.
    ``tool`` is what it is measured with; where that is a scale, ``step_g`` its step.
    """

    dye_id: int
    dye_name: str
    dye_g: float
    depth_percent: float
    strength_percent: float | None
    given_g: float
    how_sure: HowSure
    tool: str = ""
    step_g: float | None = None
    factor: float = 1.0

    @property
    def is_rescaled(self) -> bool:
        """Whether it is another one than was planned."""
        return not isclose(self.factor, 1.0)

    @property
    def rest_g(self) -> float:
        """Dye still to come; nothing when all of it, or more, is in."""
        rest_g = self.dye_g - self.given_g
        return rest_g if rest_g > NOTHING_LEFT * self.dye_g else 0.0


@dataclass(frozen=True, kw_only=True)
class StepNow:
    """A step of the round with what was ticked on it."""

    step: RoundStep
    ticks: tuple[DoneLine, ...]
    parts: tuple[DoneLine, ...] = ()
    dose: DoseNow | None = None

    @property
    def is_done(self) -> bool:
        """Whether it was ticked, left out on purpose, or is in part by part."""
        is_in = self.dose is not None and bool(self.parts) and not self.dose.rest_g
        return bool(self.ticks) or is_in

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
    """Something that the dyer is called for at a time.

    One with ``every`` begins anew with any tap at any pot, and is silent till it rings.
    """

    bath: str
    key: str
    words: str
    rings_at: datetime
    is_heard: bool = False
    every: timedelta | None = None


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
    water_id: int | None
    is_swatch: bool
    purpose: Purpose
    dyed_on: date
    fibre_g: float
    skeins: int | None
    liquor_ratio: float
    is_by_weight: bool
    notes: str
    status: BathStatus
    steps: tuple[StepNow, ...]
    clocks: tuple[Clock, ...]
    lines: tuple[DoneLine, ...]
    has_lot: bool
    source_name: str
    heat: BathHeat | None
    top_caution: str

    @property
    def called(self) -> str:
        """What the bath is called at the pot: ``B2 Low Tide``."""
        return called(self.number, self.recipe_name)

    @property
    def next_step(self) -> StepNow | None:
        """The first step that is not ticked, or None."""
        return next((step for step in self.steps if not step.is_done), None)

    @property
    def standing(self) -> tuple[DoneLine, ...]:
        """The lines that nobody took back, newest first."""
        return tuple(line for line in self.lines if not line.is_undone)
