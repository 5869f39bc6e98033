"""The pages of how a day went, of all off, and of the rack."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.web.day_papers.forms import OffForm, ReadForm
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip


@dataclass(frozen=True, kw_only=True)
class SideRow:
    """Something of a bath, planned and real; ``differs`` is in words."""

    what: str
    planned: str
    real: str
    differs: str


@dataclass(frozen=True, kw_only=True)
class BathSide:
    """A bath as it went; ``card`` is where its card is typed back, while it is open."""

    address: str
    called: str
    state: Chip
    in_short: str
    rows: tuple[SideRow, ...]
    differs: tuple[str, ...]
    card: str


@dataclass(frozen=True, kw_only=True)
class FigureRow:
    """A figure with what it rests on."""

    what: str
    much: str
    rests_on: str


@dataclass(frozen=True, kw_only=True)
class SpentRow:
    """A bath that is spent: how much of it, and what was read of it."""

    called: str
    address: str
    litres: str
    ph: str
    left: str


@dataclass(frozen=True, kw_only=True)
class EntryRow:
    """A line of the day's own ledger."""

    deed: UUID
    at: str
    words: str
    by: str
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class HungRow:
    """Yarn on the rack; ``key`` is the deed of taking it off."""

    number: str
    called: str
    address: str
    base: str
    skeins: str
    hung: str
    dry: str
    state: Chip
    key: UUID


@dataclass(frozen=True, kw_only=True)
class DryingRow:
    """Yarn of the day that still hangs."""

    called: str
    address: str
    skeins: str
    dry: str


@dataclass(frozen=True, kw_only=True)
class AfterPage(Page):
    """A day planned and real, what it took, and what it teaches."""

    template: ClassVar[str] = "day_papers/after.html"
    place: ClassVar[str] = "Dye days"

    papers: tuple[Link, ...]
    baths: tuple[BathSide, ...]
    times: tuple[FigureRow, ...]
    hung: tuple[DryingRow, ...]
    figures: tuple[FigureRow, ...]
    spent: tuple[SpentRow, ...]
    cautions: tuple[Caution, ...]
    form: ReadForm
    entries: tuple[EntryRow, ...]
    off: Chip
    off_address: str


@dataclass(frozen=True, kw_only=True)
class SourceRow:
    """A burner to look at, with what the ledgers say of it."""

    name: str
    said: str
    state: Chip


@dataclass(frozen=True, kw_only=True)
class OffPage(Page):
    """Is everything off? Each burner to look at, and one key."""

    template: ClassVar[str] = "day_papers/off.html"
    place: ClassVar[str] = "Dye days"

    form: OffForm
    sources: tuple[SourceRow, ...]
    hot: tuple[Link, ...]
    overnight: tuple[str, ...]
    cautions: tuple[Caution, ...]
    said: str


@dataclass(frozen=True, kw_only=True)
class RackPage(Page):
    """What hangs, and when it should be dry."""

    template: ClassVar[str] = "day_papers/rack.html"
    place: ClassVar[str] = "Dye days"

    hung: tuple[HungRow, ...]
    waiting: tuple[Link, ...]
    dries_in: str
