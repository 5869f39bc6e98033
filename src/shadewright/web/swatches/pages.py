"""What the pages of the swatches show."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import ClassVar
from uuid import UUID

from shadewright.web.colours import ColourShown
from shadewright.web.depths import DepthRow
from shadewright.web.lots.pages import Pages
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Chip
from shadewright.web.sorting import Order
from shadewright.web.swatches.new_form import NewForm
from shadewright.web.swatches.read_form import ReadForm
from shadewright.web.swatches.start_form import StartForm


@dataclass(frozen=True, kw_only=True)
class BeginPage(Page):
    """From nothing to a palette: one yarn, and a row for each swatch."""

    template: ClassVar[str] = "swatches/start.html"
    place: ClassVar[str] = "Shades"

    form: StartForm
    dye_names: tuple[str, ...]
    base_names: tuple[str, ...]
    usual_fibres: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class ListRow:
    """A swatch in the table."""

    address: str
    title: str
    doses: str
    base_name: str
    dyed_on: date | None
    seen: ColourShown | None
    kind: Chip | None
    standing: Chip


@dataclass(frozen=True, kw_only=True)
class SwatchesPage(Page):
    """The swatches as a table."""

    template: ClassVar[str] = "swatches/swatches.html"
    place: ClassVar[str] = "Shades"

    rows: tuple[ListRow, ...]
    order: Order
    query: str
    pages: Pages


@dataclass(frozen=True, kw_only=True)
class ReadingRow:
    """A reading in a swatch’s ledger."""

    seen: ColourShown
    kind: Chip
    at: datetime
    by: str
    how: str
    odd: str
    is_wet: bool
    is_undone: bool
    may_undo: bool
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class ForetoldPart:
    """What the palette foretells of a swatch, beside what was read."""

    seen: ColourShown
    pair: tuple[str, str]
    pair_name: str
    head: str
    says: str
    more: str


@dataclass(frozen=True, kw_only=True)
class Key:
    """One tap that changes whether a swatch teaches."""

    words: str
    address: str


@dataclass(frozen=True, kw_only=True)
class SwatchPage(Page):
    """One swatch: its colour, its readings, what it teaches."""

    template: ClassVar[str] = "swatches/swatch.html"
    place: ClassVar[str] = "Shades"

    seen: ColourShown | None
    standing: Chip
    why: str
    palette_address: str
    keys: tuple[Key, ...]
    key_deed: UUID
    facts: tuple[tuple[str, Link], ...]
    note: str
    depths: tuple[DepthRow, ...]
    foretold: ForetoldPart | None
    readings: tuple[ReadingRow, ...]
    read_address: str
    find_address: str
    own: str


@dataclass(frozen=True, kw_only=True)
class ReadPage(Page):
    """The form for one colour."""

    template: ClassVar[str] = "swatches/read.html"
    place: ClassVar[str] = "Shades"
    is_guided: ClassVar[bool] = True

    form: ReadForm
    back: str


@dataclass(frozen=True, kw_only=True)
class NewPage(Page):
    """A swatch that no bath of the studio tells of, or bare yarn."""

    template: ClassVar[str] = "swatches/new.html"
    place: ClassVar[str] = "Shades"

    form: NewForm
    dye_names: tuple[str, ...]
    base_names: tuple[str, ...]
    usual_fibres: tuple[str, ...]
