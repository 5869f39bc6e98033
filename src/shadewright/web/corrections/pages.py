"""The pages of corrections."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.corrections.forms import (
    AimForm,
    KeepForm,
    PriceForm,
    RestockForm,
)
from shadewright.web.pages import Link, Page
from shadewright.web.pairs import Pair
from shadewright.web.parts import Caution
from shadewright.workflows.correcting.restock import NearLot, Restock


@dataclass(frozen=True, kw_only=True)
class SmallShown:
    """A dose that is too small to measure: what it is, and the ways on."""

    words: str
    stock: str
    ways: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class AdditionRow:
    """A dye to add: how deep, and what is drawn for what goes in first."""

    name: str
    whole: str
    first: str
    draws: tuple[str, ...]
    missing: str
    make: str
    small: SmallShown | None = None


@dataclass(frozen=True, kw_only=True)
class CorrectPage(Page):
    """What to add to a lot, or what stands in the way."""

    template: ClassVar[str] = "corrections/correct.html"
    place: ClassVar[str] = "Lots"

    number: str
    trouble: Caution | None
    way: Link | None
    asks_colour: bool
    aim_form: AimForm
    colour: str
    now: Pair | None
    after: Pair | None
    verdicts: tuple[Caution, ...]
    rows: tuple[AdditionRow, ...]
    left_out: str
    back: str
    share: str
    form: KeepForm | None
    prices: PriceForm
    is_priced: bool
    money: tuple[str, ...]
    own: str


@dataclass(frozen=True, kw_only=True)
class SisterCard:
    """A deeper colourway that a lot can become."""

    name: str
    pair: Pair
    rows: tuple[AdditionRow, ...]
    becomes: int
    address: str


@dataclass(frozen=True, kw_only=True)
class OverdyePage(Page):
    """The deeper colourways that a lot can become."""

    template: ClassVar[str] = "corrections/overdye.html"
    place: ClassVar[str] = "Lots"

    number: str
    trouble: Caution | None
    way: Link
    cards: tuple[SisterCard, ...]
    form: KeepForm | None
    chosen: str
    own: str


@dataclass(frozen=True, kw_only=True)
class RestockPage(Page):
    """An old lot, what has changed since, and what to dye now."""

    template: ClassVar[str] = "corrections/restock.html"
    place: ClassVar[str] = "Lots"

    form: RestockForm
    near: tuple[NearLot, ...]
    found: Restock | None
    pair: Pair | None
    then: str
    now: str
    ways: tuple[Link, ...]
    nothing: str
    own: str
