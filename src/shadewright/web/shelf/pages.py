"""The shelf as a board and as a table, and the bottles that are gone."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright import drawing
from shadewright.core.solutions.age import AgeClass
from shadewright.web.pages import Page
from shadewright.web.parts import Chip, Measured
from shadewright.web.sorting import Order
from shadewright.workflows.shelf import ShelfBottle


@dataclass(frozen=True, kw_only=True)
class ShelfRow:
    """A bottle, as it stands on the board and in the table."""

    bottle: ShelfBottle
    address: str
    drawn: drawing.Bottle
    strength: Measured
    state: Chip | None
    clarity: str
    time_left: str


@dataclass(frozen=True, kw_only=True)
class ShelfTask:
    """A bottle that asks for something, why, and the one key that leads there."""

    icon: str
    code: str
    dye_name: str
    trouble: str
    why: str
    key: str
    address: str


@dataclass(frozen=True, kw_only=True)
class ShelfPage(Page):
    """Every bottle that stands there."""

    template: ClassVar[str] = "shelf/shelf.html"
    place: ClassVar[str] = "Shelf"

    board: tuple[ShelfRow, ...]
    rows: tuple[ShelfRow, ...]
    order: Order
    ages: tuple[AgeClass, ...]
    tasks: tuple[ShelfTask, ...]
    has_gone: bool


@dataclass(frozen=True, kw_only=True)
class GoneRow:
    """A bottle that stands there no more."""

    bottle: ShelfBottle
    address: str
    strength: Measured


@dataclass(frozen=True, kw_only=True)
class GonePage(Page):
    """Every bottle that was poured away or taken back."""

    template: ClassVar[str] = "shelf/gone.html"
    place: ClassVar[str] = "Shelf"

    rows: tuple[GoneRow, ...]
    order: Order
