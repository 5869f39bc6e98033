"""What the pages of making a stock hold."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Measured, Step
from shadewright.web.stocks.forms import (
    FillByWeightForm,
    FillForm,
    LabelForm,
    MadeForm,
    PlanForm,
    StepForm,
    WeighForm,
)
from shadewright.web.sureness import SureStrength


@dataclass(frozen=True, kw_only=True)
class Quick:
    """A usual value, one tap away."""

    words: str
    values: str
    is_chosen: bool


@dataclass(frozen=True, kw_only=True)
class ShownPlan:
    """What a stock takes, in amounts and warnings."""

    powder: Measured
    paste: str
    hot: str
    final: str
    factor: str
    jar: str
    hazard_words: str
    data_sheet: str
    warnings: tuple[Caution, ...]
    sheet: str
    strength: SureStrength
    by_weight: str
    advice: str


@dataclass(frozen=True, kw_only=True)
class Refusal:
    """Why a stock cannot be made so, and what can be made instead."""

    note: Caution
    instead: Link | None
    takes_focus: bool


@dataclass(frozen=True, kw_only=True)
class PlanPage(Page):
    """What stock, how strong, how much; and what that takes."""

    template: ClassVar[str] = "stocks/plan.html"
    place: ClassVar[str] = "Shelf"

    form: PlanForm
    made: MadeForm
    is_made_open: bool
    strengths: tuple[Quick, ...]
    volumes: tuple[Quick, ...]
    plan: ShownPlan | None
    refusal: Refusal | None


@dataclass(frozen=True, kw_only=True)
class NoDyePage(Page):
    """A stock cannot be planned before there is a dye."""

    template: ClassVar[str] = "stocks/no_dye.html"
    place: ClassVar[str] = "Shelf"


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What the label will say, and what that means."""

    lead: str
    strength: SureStrength | None
    sentence: str


@dataclass(frozen=True, kw_only=True)
class StepPage(Page):
    """One step of the making."""

    template: ClassVar[str] = "stocks/step.html"
    place: ClassVar[str] = "Shelf"
    is_guided: ClassVar[bool] = True

    form: StepForm
    number: int
    count: int
    step_title: str
    text: str
    caution: Caution
    warnings: tuple[Caution, ...]
    steps: tuple[Step, ...]
    so_far: tuple[str, ...]
    done_words: str
    data_sheet: str
    sheet: str
    give_up: str


@dataclass(frozen=True, kw_only=True)
class WeighPage(StepPage):
    """The powder that is asked for, and what the scale really shows."""

    template: ClassVar[str] = "stocks/weigh.html"

    form: WeighForm
    asked: Measured
    whence: str
    outcome: Outcome


@dataclass(frozen=True, kw_only=True)
class FillPage(StepPage):
    """The mark that is asked for, and what the cold stock really came to."""

    template: ClassVar[str] = "stocks/fill.html"

    form: FillForm
    asked: Measured
    quick: tuple[Link, ...]
    outcome: Outcome


@dataclass(frozen=True, kw_only=True)
class FillByWeightPage(StepPage):
    """The weight that is asked for, and what the scale really shows."""

    template: ClassVar[str] = "stocks/fill_by_weight.html"

    form: FillByWeightForm
    asked: Measured
    scale: str
    outcome: Outcome


@dataclass(frozen=True, kw_only=True)
class LabelPage(StepPage):
    """What goes on the label."""

    template: ClassVar[str] = "stocks/label.html"

    form: LabelForm
    weighed: str
    filled: str
    strength: SureStrength


@dataclass(frozen=True, kw_only=True)
class FinishedPage(Page):
    """The bottle stands on the shelf; ``waiting`` leads back to what waits for it."""

    template: ClassVar[str] = "stocks/finished.html"
    place: ClassVar[str] = "Shelf"

    waiting: tuple[Link, ...]
    code: str
    strength: SureStrength
    volume: str
    label: str
    bottle: str


@dataclass(frozen=True, kw_only=True)
class GivenUpPage(Page):
    """A stock that nobody goes on with."""

    template: ClassVar[str] = "stocks/given_up.html"
    place: ClassVar[str] = "Shelf"


@dataclass(frozen=True, kw_only=True)
class GiveUpPage(Page):
    """Asks once before a stock in the making is given up."""

    template: ClassVar[str] = "stocks/give_up.html"
    place: ClassVar[str] = "Shelf"

    powder: str
    jar: str
    note: Caution
    back: str
