"""The pages of the baths."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import ClassVar
from uuid import UUID

from shadewright.web.acidity.sour import Sour
from shadewright.web.baths.advising import AdviceShown
from shadewright.web.baths.dosing import ToolChoice
from shadewright.web.baths.forms import BottleForm, GiveUpForm, PlanForm
from shadewright.web.baths.heating import HeatShown
from shadewright.web.depths import DepthRow, Sureness
from shadewright.web.lots.pages import Pages
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip, Key, Measured, Refusal


@dataclass(frozen=True, kw_only=True)
class BathRow:
    """A bath in a list."""

    number: str
    address: str
    day: str
    recipe: str
    base: str
    yarn: str
    skeins: str
    pot: str
    state: Chip


@dataclass(frozen=True, kw_only=True)
class DayRows:
    """The baths of one day."""

    day: date
    words: str
    rows: tuple[BathRow, ...]


@dataclass(frozen=True, kw_only=True)
class BathsPage(Page):
    """The dye days: today's and coming baths, then those that were."""

    template: ClassVar[str] = "baths/baths.html"
    place: ClassVar[str] = "Dye days"

    coming: tuple[DayRows, ...]
    past: tuple[BathRow, ...]
    pages: Pages
    query: str
    cards: str
    tags: str


@dataclass(frozen=True, kw_only=True)
class ShareShown:
    """What is drawn from one bottle for one dose."""

    code: str
    address: str
    amount: str
    beside: str


@dataclass(frozen=True, kw_only=True)
class DoseShown:
    """A dose of the plan; what no bottle covers comes with a way on."""

    dye: str
    sureness: Sureness
    tool: ToolChoice
    dye_g: str
    shares: tuple[ShareShown, ...]
    missing: str
    stock_address: str
    advice: str


@dataclass(frozen=True, kw_only=True)
class Said:
    """A term and its words."""

    term: str
    words: str


@dataclass(frozen=True, kw_only=True)
class ShownPlan:
    """What a bath takes."""

    doses: tuple[DoseShown, ...]
    has_tools: bool
    water: Measured
    sour: Sour
    facts: tuple[Said, ...]
    heat: HeatShown
    troubles: tuple[str, ...]
    notes: tuple[str, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, kw_only=True)
class PlanPage(Page):
    """Which recipe on which yarn; and what that takes."""

    template: ClassVar[str] = "baths/plan.html"
    place: ClassVar[str] = "Dye days"

    form: PlanForm
    plan: ShownPlan | None
    advice: tuple[AdviceShown, ...]
    refusal: Refusal | None


@dataclass(frozen=True, kw_only=True)
class NoRecipePage(Page):
    """A bath cannot be planned before there is a recipe and a base."""

    template: ClassVar[str] = "baths/no_recipe.html"
    place: ClassVar[str] = "Dye days"

    missing: str
    way_on: Link


@dataclass(frozen=True, kw_only=True)
class StepRow:
    """A step as planned and as dyed; ``differs`` says what went differently."""

    title: str
    code: str
    planned: str
    dyed: tuple[str, ...]
    differs: tuple[str, ...]
    state: Chip | None
    change_address: str


@dataclass(frozen=True, kw_only=True)
class Entry:
    """A line of the bath's ledger."""

    deed: UUID
    at: datetime
    words: str
    by: str
    note: str
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class BathPage(Page):
    """A bath as planned and as dyed, side by side."""

    template: ClassVar[str] = "baths/bath.html"
    place: ClassVar[str] = "Dye days"

    state: Chip
    keys: tuple[Key, ...]
    more: tuple[Key, ...]
    steps: tuple[StepRow, ...]
    entries: tuple[Entry, ...]
    recipe: Link
    facts: tuple[Said, ...]
    depths: tuple[DepthRow, ...]
    heat: HeatShown
    sour: Sour
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, kw_only=True)
class BottlePage(Page):
    """Which bottle a dose is taken from instead."""

    template: ClassVar[str] = "baths/bottle.html"
    place: ClassVar[str] = "Dye days"

    form: BottleForm
    has_bottles: bool
    stock_address: str
    back: str


@dataclass(frozen=True, kw_only=True)
class GiveUpPage(Page):
    """Asks once before a bath ends without a lot."""

    template: ClassVar[str] = "baths/give_up.html"
    place: ClassVar[str] = "Dye days"

    form: GiveUpForm
    poured: str
    back: str
