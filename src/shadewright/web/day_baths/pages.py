"""The pages that put yarn on a day, and say what stock that wants."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.web.day_baths.forms import AddForm
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip, Refusal


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """Something that is still to be dyed, and the way to put it on this day."""

    words: str
    why: str
    trouble: str
    address: str


@dataclass(frozen=True, kw_only=True)
class BathShown:
    """A bath of a split; ``turn`` says that its pot is filled once more.

    ``skeins`` says which skeins it takes, where they differ in weight.
    """

    place: int
    pot: str
    turn: str
    yarn: str
    skeins: str
    liquor: str
    for_whom: str


@dataclass(frozen=True, kw_only=True)
class DyeShown:
    """A dye of a split, and for how many of its baths the bottles do."""

    dye: str
    wanted: str
    state: Chip
    short: str


@dataclass(frozen=True, kw_only=True)
class Listed:
    """A word and what stands under it."""

    term: str
    words: str


@dataclass(frozen=True, kw_only=True)
class ScaleShown:
    """What the size of a bath changes, and what to dye before it."""

    trial: str
    unsure: str
    dyes: tuple[str, ...]
    steps: tuple[Link, ...]
    lists: tuple[Listed, ...]


@dataclass(frozen=True, kw_only=True)
class SplitShown:
    """The baths that a wish becomes."""

    head: str
    batch: str
    turns: str
    room: str
    baths: tuple[BathShown, ...]
    has_orders: bool
    dyes: tuple[DyeShown, ...]
    scale: ScaleShown
    notes: tuple[str, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, kw_only=True)
class AddPage(Page):
    """What is dyed on a day: what waits, the form, and the baths that it becomes."""

    template: ClassVar[str] = "day_baths/add.html"
    place: ClassVar[str] = "Dye days"

    action: str
    waiting: tuple[Waiting, ...]
    form: AddForm
    plan: SplitShown | None
    refusal: Refusal | None
    back: str
    rather: tuple[Link, ...] = ()


@dataclass(frozen=True, kw_only=True)
class PastPage(Page):
    """A day that is over takes no more yarn."""

    template: ClassVar[str] = "day_baths/past.html"
    place: ClassVar[str] = "Dye days"

    today: str
    day_address: str


@dataclass(frozen=True, kw_only=True)
class BottleShown:
    """A bottle that a day draws on."""

    code: str
    address: str
    words: str


@dataclass(frozen=True, kw_only=True)
class NeedShown:
    """What a day wants of one dye, and the one thing to do about it."""

    dye: str
    wanted: str
    enough: Chip
    sentence: str
    bottles: tuple[BottleShown, ...]
    kept_out: str
    make: Link | None
    is_first: bool


@dataclass(frozen=True, kw_only=True)
class StockPage(Page):
    """The stock that a day wants, dye by dye, what is short first."""

    template: ClassVar[str] = "day_baths/stock.html"
    place: ClassVar[str] = "Dye days"

    action: str
    deed: UUID
    head: str
    is_enough: bool
    needs: tuple[NeedShown, ...]
    redraw: str
    cautions: tuple[Caution, ...]
    day_address: str
    add: str
