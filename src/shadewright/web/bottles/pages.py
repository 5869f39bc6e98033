"""A bottle, and the one small page that every act on it has."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright import drawing
from shadewright.web.bottles.forms import BottleForm
from shadewright.web.bottles.ladder_forms import FreshForm, ReadingForm
from shadewright.web.forms import DeedForm
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip
from shadewright.web.sureness import SureStrength
from shadewright.workflows import ledger_pages


@dataclass(frozen=True, kw_only=True)
class ActLink:
    """A way to the page of an act."""

    words: str
    address: str
    icon: str
    css: str


@dataclass(frozen=True, kw_only=True)
class Key:
    """A key at the foot of a form; without a name it simply sends it."""

    words: str
    name: str = ""
    value: str = ""
    icon: str = ""
    css: str = ""


@dataclass(frozen=True, kw_only=True)
class BottlePage(Page):
    """A bottle with its ledger and its acts; ``label`` is empty once it is gone."""

    template: ClassVar[str] = "bottles/bottle.html"
    place: ClassVar[str] = "Shelf"

    about: ledger_pages.BottlePage
    drawn: drawing.Bottle
    strength: SureStrength
    made_with: str
    chips: tuple[Chip, ...]
    keeps: str
    trouble: Caution | None
    acts: tuple[ActLink, ...]
    spoils: tuple[str, ...]
    earlier: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class ActPage(Page):
    """One act on one bottle: a form, what it would come to, and its keys."""

    template: ClassVar[str] = "bottles/act.html"
    place: ClassVar[str] = "Shelf"

    form: BottleForm
    caution: Caution | None
    advice: str
    other_way: Link | None
    outcome: str
    keys: tuple[Key, ...]
    instead: Link | None
    back: str


@dataclass(frozen=True, kw_only=True)
class SkeinShown:
    """A little skein of a strength test, and what it gets."""

    number: int
    share: str
    stock: str
    amount: str


@dataclass(frozen=True, kw_only=True)
class StrengthTestPage(Page):
    """A strength test: what is measured out, and what the old stock looked like."""

    template: ClassVar[str] = "bottles/strength_test.html"
    place: ClassVar[str] = "Shelf"

    beside: FreshForm | None
    thin: str
    skeins: tuple[SkeinShown, ...]
    warnings: tuple[str, ...]
    draws: str
    drawn: DeedForm
    is_drawn: bool
    form: ReadingForm
    here: str
    known: str
    back: str


@dataclass(frozen=True, kw_only=True)
class NoFreshPage(Page):
    """No fresh bottle to test an old one beside."""

    template: ClassVar[str] = "bottles/no_fresh.html"
    place: ClassVar[str] = "Shelf"

    dye_name: str
    make: str
    known: str
