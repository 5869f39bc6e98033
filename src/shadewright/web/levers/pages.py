"""The page of what would help most."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.pages import Link, Page


@dataclass(frozen=True, kw_only=True)
class HelpRow:
    """A habit or a tool: what it does to the spreads, and where to act on it.

    ``field`` is where its price is typed, empty for a habit.
    """

    name: str
    after: str
    narrows: str
    worth: str
    key: Link | None
    field: str
    price: str
    fault: str


@dataclass(frozen=True, kw_only=True)
class KeepRow:
    """The strengths of a dye: kept now, worth keeping, and one to make."""

    dye: str
    kept: str
    keep: str
    now: str
    then: str
    keys: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class WholeShelfPage(Page):
    """Which tool or habit narrows the recipes most, and which strengths to keep."""

    template: ClassVar[str] = "levers/whole_shelf.html"
    place: ClassVar[str] = "Shelf"

    first: str
    habits: tuple[HelpRow, ...]
    tools: tuple[HelpRow, ...]
    silent: str
    keep: tuple[KeepRow, ...]
    kept_well: str
    unserved: str
    worst: str


@dataclass(frozen=True, kw_only=True)
class NothingKnownPage(Page):
    """Nothing can be compared before there is a recipe, a bottle and a tool."""

    template: ClassVar[str] = "levers/nothing_known.html"
    place: ClassVar[str] = "Shelf"

    missing: tuple[Link, ...]
