"""A recipe on every base, as its page shows it."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.colours import ColourShown
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Chip
from shadewright.workflows.choices import Choice


@dataclass(frozen=True, kw_only=True)
class BaseRow:
    """One base: the colour read there and the one foretold, touching."""

    base: str
    hexes: tuple[str, ...]
    picture: str
    state: Chip
    is_made_for: bool
    read: ColourShown | None
    told: ColourShown | None
    notes: tuple[str, ...]
    key: Link | None


@dataclass(frozen=True, kw_only=True)
class CarriedDose:
    """A dye before and after."""

    dye: str
    before: str
    after: str


@dataclass(frozen=True, kw_only=True)
class CarriedShown:
    """The corrected recipe beside the one that is not."""

    base: str
    base_id: int
    hexes: tuple[str, ...]
    names: tuple[str, ...]
    picture: str
    before: str
    after: str
    expected: str
    colour: ColourShown
    doses: tuple[CarriedDose, ...]
    trials: str
    guessed: str


@dataclass(frozen=True, kw_only=True)
class CarryPage(Page):
    """One recipe on all bases, and carried to one of them."""

    template: ClassVar[str] = "mixes/carry.html"
    place: ClassVar[str] = "Recipes"

    version_id: int
    why_not: str
    rows: tuple[BaseRow, ...]
    bases: tuple[Choice, ...]
    made_for: Choice
    carried: CarriedShown | None
    deed: str
