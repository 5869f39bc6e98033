"""The jars as a list, one jar, and a jar that comes in."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.web.jars.forms import ReceiveForm, WeighForm
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution
from shadewright.web.sorting import Order
from shadewright.workflows.jars import ShelfJar
from shadewright.workflows.ledger_pages import LedgerEntry


@dataclass(frozen=True, kw_only=True)
class JarRow:
    """A jar and how full it is."""

    jar: ShelfJar
    full: float
    bar: str


@dataclass(frozen=True, kw_only=True)
class JarsPage(Page):
    """Every jar in use."""

    template: ClassVar[str] = "jars/jars.html"
    place: ClassVar[str] = "Shelf"

    rows: tuple[JarRow, ...]
    order: Order
    query: str
    gone: tuple[ShelfJar, ...]


@dataclass(frozen=True, kw_only=True)
class ReceivePage(Page):
    """A jar comes in."""

    template: ClassVar[str] = "jars/receive.html"
    place: ClassVar[str] = "Shelf"

    form: ReceiveForm
    powder: Caution


@dataclass(frozen=True, kw_only=True)
class JarPage(Page):
    """One jar with its ledger."""

    template: ClassVar[str] = "jars/jar.html"
    place: ClassVar[str] = "Shelf"

    jar: ShelfJar
    full: float
    bar: str
    bottles: tuple[Link, ...]
    entries: tuple[LedgerEntry, ...]
    form: WeighForm
    powder: Caution
    hand_in_deed: UUID
    fate: str
