"""The pages of lots: the finish of a bath, the list, one lot, two lots, a trace."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.colours import ColourShown
from shadewright.web.depths import DepthRow
from shadewright.web.lots.forms import (
    ColourForm,
    CompareForm,
    FinishForm,
    LotForm,
    PhotoForm,
)
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip, TreeNode
from shadewright.web.sorting import Order
from shadewright.workflows.lot_differences import Comparison
from shadewright.workflows.lot_pages import LotNow, LotRow


@dataclass(frozen=True, kw_only=True)
class FinishPage(Page):
    """The last step at the pot: what came out of it."""

    template: ClassVar[str] = "lots/finish.html"
    place: ClassVar[str] = "Lots"
    is_guided: ClassVar[bool] = True

    form: FinishForm
    doubt: Caution | None
    places: tuple[str, ...]
    back: str


@dataclass(frozen=True, kw_only=True)
class Pages:
    """Which page of a long list this is, with the way to its neighbours."""

    page: int
    pages: int
    newer: str
    older: str


@dataclass(frozen=True, kw_only=True)
class LotsPage(Page):
    """The lots as a table."""

    template: ClassVar[str] = "lots/lots.html"
    place: ClassVar[str] = "Lots"

    rows: tuple[LotRow, ...]
    order: Order
    query: str
    pages: Pages


@dataclass(frozen=True, kw_only=True)
class ReadOfLot:
    """The colour that was read of an end of a lot, and whether it teaches."""

    seen: ColourShown
    standing: Chip
    address: str


@dataclass(frozen=True, kw_only=True)
class CheckOfLot:
    """The verdict of a lot’s newest dry check, with the number for it."""

    chip: Chip | None
    words: str


@dataclass(frozen=True, kw_only=True)
class LotPage(Page):
    """One lot: what it is, what it cost, what is written of it."""

    template: ClassVar[str] = "lots/lot.html"
    place: ClassVar[str] = "Lots"

    lot: LotNow
    read: ReadOfLot | None
    check: CheckOfLot | None
    cost: str
    depths: tuple[DepthRow, ...]
    facts: tuple[tuple[str, Link], ...]
    form: LotForm
    colour_form: ColourForm
    photo_form: PhotoForm
    places: tuple[str, ...]
    own: str

    @property
    def is_to_read(self) -> bool:
        """Whether it is a swatch whose colour is the next thing to read."""
        is_swatch = self.lot.bath.is_swatch and not self.lot.is_void
        return is_swatch and self.read is None


@dataclass(frozen=True, kw_only=True)
class ComparePage(Page):
    """Two lots side by side."""

    template: ClassVar[str] = "lots/compare.html"
    place: ClassVar[str] = "Lots"

    form: CompareForm
    found: Comparison | None
    likely: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class TracePage(Page):
    """A trace: what went in, and where it went."""

    template: ClassVar[str] = "lots/trace.html"
    place: ClassVar[str] = "Lots"

    back: TreeNode | None
    onwards: TreeNode | None
    pages: Pages | None
