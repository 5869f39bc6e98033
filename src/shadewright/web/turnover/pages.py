"""The page of what to mix and what to pour away."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.pages import Page
from shadewright.web.parts import Caution, Measured
from shadewright.workflows.shelf import ShelfBottle


@dataclass(frozen=True, kw_only=True)
class MixRow:
    """A dye of which a fresh stock is wanted."""

    dye: str
    wanted: str
    why: str
    address: str


@dataclass(frozen=True, kw_only=True)
class GoingRow:
    """A bottle that is better let go, what its dye cost, and what can be done."""

    bottle: ShelfBottle
    address: str
    strength: Measured
    why: str
    cost: str
    cost_why: str
    test: str
    pour: str


@dataclass(frozen=True, kw_only=True)
class TurnoverPage(Page):
    """What to mix, what to pour away, and the money that goes with it."""

    template: ClassVar[str] = "turnover/turnover.html"
    place: ClassVar[str] = "Shelf"

    to_mix: tuple[MixRow, ...]
    going: tuple[GoingRow, ...]
    lost: str
    cautions: tuple[Caution, ...]
