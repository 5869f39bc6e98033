"""The pages of checks, standards and sharing."""

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar
from uuid import UUID

from shadewright.web.checks.forms import (
    CheckForm,
    DecideForm,
    LotStandardForm,
    PieceForm,
    SnipForm,
    TolerancesForm,
    ToneForm,
    WantedForm,
)
from shadewright.web.colours import ColourShown
from shadewright.web.pages import Link, Page
from shadewright.web.pairs import Pair
from shadewright.web.parts import Caution, Chip
from shadewright.workflows.judging.sharing import LotGroup, SharingLot
from shadewright.workflows.judging.snips import Snip
from shadewright.workflows.judging.standards import OfWhat, StandardNow


@dataclass(frozen=True, kw_only=True)
class SpotRow:
    """The spots of one skein."""

    skein: int
    spots: tuple[ColourShown, ...]


@dataclass(frozen=True, kw_only=True)
class CheckShown:
    """A check that stands; without a standard it has its own colour alone."""

    chip: Chip | None
    says: str
    pair: Pair | None
    own: ColourShown
    how: str
    evenness: str
    spots: tuple[SpotRow, ...]
    at: datetime
    by: str
    deed: UUID
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class DecideKey:
    """One thing to decide."""

    value: str
    words: str
    is_first: bool


@dataclass(frozen=True, kw_only=True)
class CheckPage(Page):
    """A lot held against its standard, dry."""

    template: ClassVar[str] = "checks/check.html"
    place: ClassVar[str] = "Lots"

    number: str
    what: OfWhat
    has_standard: bool
    shown: CheckShown | None
    decided: str
    is_decided_since: bool
    keys_to_decide: tuple[DecideKey, ...]
    decide_form: DecideForm
    snip: Snip | None
    form: CheckForm
    is_reading_next: bool
    own: str


@dataclass(frozen=True, kw_only=True)
class SnipPage(Page):
    """A snip dries."""

    template: ClassVar[str] = "checks/snip.html"
    place: ClassVar[str] = "Lots"

    number: str
    snip: Snip | None
    now_ms: int
    until_ms: int | None
    form: SnipForm
    own: str


@dataclass(frozen=True, kw_only=True)
class StandardRow:
    """A standard with its colour."""

    standard: StandardNow
    seen: ColourShown | None


@dataclass(frozen=True, kw_only=True)
class StandardsPage(Page):
    """The standards that hold."""

    template: ClassVar[str] = "checks/standards.html"
    place: ClassVar[str] = "Lots"

    rows: tuple[StandardRow, ...]
    without: tuple[OfWhat, ...]


@dataclass(frozen=True, kw_only=True)
class StandardPage(Page):
    """The standard of a recipe on a base, and what it replaced."""

    template: ClassVar[str] = "checks/standard.html"
    place: ClassVar[str] = "Lots"

    what: OfWhat
    now: StandardRow | None
    trail: tuple[StandardRow, ...]
    form: PieceForm
    tone_form: ToneForm
    own: str


@dataclass(frozen=True, kw_only=True)
class LotStandardPage(Page):
    """A lot becomes the standard."""

    template: ClassVar[str] = "checks/lot_standard.html"
    place: ClassVar[str] = "Lots"

    number: str
    replaces: StandardRow | None
    form: LotStandardForm
    own: str


@dataclass(frozen=True, kw_only=True)
class TolerancesPage(Page):
    """How far a lot may be off."""

    template: ClassVar[str] = "checks/tolerances.html"
    place: ClassVar[str] = "Lots"

    form: TolerancesForm


@dataclass(frozen=True, kw_only=True)
class OrderRow:
    """An order and where it comes from, in words; ``key`` sets that aside."""

    name: str
    address: str
    words: str
    chip: Chip
    key: str
    aside: str


@dataclass(frozen=True, kw_only=True)
class SharingPage(Page):
    """Lots that may share a sweater."""

    template: ClassVar[str] = "checks/sharing.html"
    place: ClassVar[str] = "Lots"

    choices: tuple[Link, ...]
    what: OfWhat | None
    rule: str
    groups: tuple[LotGroup, ...]
    unsure: tuple[SharingLot, ...]
    unread: tuple[SharingLot, ...]
    orders: tuple[OrderRow, ...]
    form: WantedForm
    none: Caution | None
