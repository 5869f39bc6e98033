"""The pages of sets of swatches."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.web.colours import ColourShown
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip
from shadewright.web.swatch_plans.forms import SetForm
from shadewright.web.swatch_plans.results_form import ResultsForm
from shadewright.web.swatches.colour_fields import ColourCell


@dataclass(frozen=True, kw_only=True)
class KindTab:
    """A kind of set, and the page that plans one."""

    words: str
    address: str
    is_here: bool


@dataclass(frozen=True, kw_only=True)
class FirstShown:
    """A stock to be had first: how, and the page where it is done, filled in."""

    dye: str
    words: str
    key: str
    address: str


@dataclass(frozen=True, kw_only=True)
class DrawShown:
    """A dose: depth, what is measured, from what."""

    dye: str
    depth: str
    amount: str
    beside: str
    stock: str


@dataclass(frozen=True, kw_only=True)
class SwatchShown:
    """A swatch that is planned; ``sure`` is what nine in ten come out within."""

    place: int
    draws: tuple[DrawShown, ...]
    colour: ColourShown | None
    sure: str


@dataclass(frozen=True, kw_only=True)
class Said:
    """A term and what is said of it."""

    term: str
    words: str


@dataclass(frozen=True, kw_only=True)
class PlanShown:
    """What a set takes."""

    head: str
    facts: tuple[Said, ...]
    first: tuple[FirstShown, ...]
    swatches: tuple[SwatchShown, ...]
    troubles: tuple[str, ...]
    advice: str
    has_colours: bool
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, kw_only=True)
class NewSetPage(Page):
    """A set that is planned while it is typed."""

    template: ClassVar[str] = "swatch_plans/new.html"
    place: ClassVar[str] = "Shades"

    form: SetForm
    tabs: tuple[KindTab, ...]
    about: str
    recipe: str
    plan: PlanShown | None
    refusal: Caution | None


@dataclass(frozen=True, kw_only=True)
class NothingToPlanPage(Page):
    """A studio without yarn or dye plans no swatch."""

    template: ClassVar[str] = "swatch_plans/nothing.html"
    place: ClassVar[str] = "Shades"

    missing: str
    way_on: Link


@dataclass(frozen=True, kw_only=True)
class SetSwatchShown:
    """A swatch of a kept set: its doses, its colour, where to go on with it."""

    place: int
    number: str
    doses: str
    draws: tuple[DrawShown, ...]
    colour: ColourShown | None
    told: str
    state: Chip
    links: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class SetPage(Page):
    """A kept set."""

    template: ClassVar[str] = "swatch_plans/set.html"
    place: ClassVar[str] = "Shades"

    facts: tuple[Said, ...]
    cautions: tuple[Caution, ...]
    first: tuple[FirstShown, ...]
    better: str
    keep: str
    give_up: str
    waiting: int
    deed: UUID
    swatches: tuple[SetSwatchShown, ...]
    sheet: str
    tags: str
    results: str
    palette: str
    again: str


@dataclass(frozen=True, kw_only=True)
class ResultShown:
    """A swatch whose colour is asked for; ``card`` leads to what went otherwise."""

    place: int
    number: str
    doses: str
    state: Chip
    card: str
    colour: ColourCell


@dataclass(frozen=True, kw_only=True)
class ResultsPage(Page):
    """The colours of a set, all on one page."""

    template: ClassVar[str] = "swatch_plans/results.html"
    place: ClassVar[str] = "Shades"

    form: ResultsForm
    rows: tuple[ResultShown, ...]
    has_open: bool
    back: str


@dataclass(frozen=True, kw_only=True)
class SetRow:
    """A set in one line."""

    name: str
    address: str
    kind: str
    base: str
    day: str
    swatches: int
    done: str


@dataclass(frozen=True, kw_only=True)
class SetsPage(Page):
    """Every set, the newest first."""

    template: ClassVar[str] = "swatch_plans/sets.html"
    place: ClassVar[str] = "Shades"

    rows: tuple[SetRow, ...]
