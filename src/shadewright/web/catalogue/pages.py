"""The pages of the catalogue: a list, an item, a form, what is retired."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.catalogue.item_form import RowForm
from shadewright.web.catalogue.life_part import LifePart
from shadewright.web.catalogue.saying import Change
from shadewright.web.catalogue.tool_part import ToolPart
from shadewright.web.pages import Page
from shadewright.web.parts import Caution, Chip
from shadewright.web.sorting import Order


@dataclass(frozen=True, kw_only=True)
class Head:
    """The head of a column."""

    key: str
    words: str
    css: str


@dataclass(frozen=True, kw_only=True)
class Cell:
    """A cell of the list."""

    words: str
    css: str


@dataclass(frozen=True, kw_only=True)
class ListRow:
    """An item of the list."""

    name: str
    address: str
    has_colour: bool
    hex: str
    cells: tuple[Cell, ...]
    chips: tuple[Chip, ...]


@dataclass(frozen=True, kw_only=True)
class ListPage(Page):
    """Everything of one kind that is in use."""

    template: ClassVar[str] = "catalogue/list.html"
    place: ClassVar[str] = "Shelf"

    here: str
    noun: str
    would_be: str
    heads: tuple[Head, ...]
    rows: tuple[ListRow, ...]
    order: Order
    query: str
    add_address: str
    retired_address: str
    retired_count: int


@dataclass(frozen=True, kw_only=True)
class RetiredRow:
    """An item that is no longer used, and the way back."""

    name: str
    address: str
    back_address: str


@dataclass(frozen=True, kw_only=True)
class RetiredPage(Page):
    """Everything of one kind that is no longer used."""

    template: ClassVar[str] = "catalogue/retired.html"
    place: ClassVar[str] = "Shelf"

    here: str
    rows: tuple[RetiredRow, ...]


@dataclass(frozen=True, kw_only=True)
class SideTerm:
    """A word that the form uses, and what it means."""

    term: str
    meaning: str


@dataclass(frozen=True, kw_only=True)
class FormPage(Page):
    """A new item, or an edit of one."""

    template: ClassVar[str] = "catalogue/form.html"
    place: ClassVar[str] = "Shelf"

    form: RowForm
    side_title: str
    side: tuple[SideTerm, ...]
    cautions: tuple[Caution, ...]
    away: str


@dataclass(frozen=True, kw_only=True)
class Fact:
    """A line about an item."""

    label: str
    words: str
    address: str = ""
    is_colour: bool = False


@dataclass(frozen=True, kw_only=True)
class Related:
    """A jar or a mill lot of the item."""

    name: str
    address: str
    words: str


@dataclass(frozen=True, kw_only=True)
class UseWater:
    """Whether baths are filled with this water, and the key that makes it so."""

    is_usual: bool
    address: str


@dataclass(frozen=True, kw_only=True)
class ItemPage(Page):
    """An item with what is known of it and how that changed."""

    template: ClassVar[str] = "catalogue/item.html"
    place: ClassVar[str] = "Shelf"

    facts: tuple[Fact, ...]
    unsaid: str
    begun: str
    cautions: tuple[Caution, ...]
    related_title: str
    related: tuple[Related, ...]
    related_add: str
    related_key: str
    changes: tuple[Change, ...]
    is_retired: bool
    edit_address: str
    fate_address: str
    use_water: UseWater | None
    tool: ToolPart | None
    life: LifePart | None
