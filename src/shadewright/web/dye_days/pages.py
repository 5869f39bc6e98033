"""The pages of the dye days."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.pages import Page
from shadewright.web.parts import Caution, Chip


@dataclass(frozen=True, kw_only=True)
class DayLink:
    """A day in a list."""

    address: str
    words: str
    baths: str
    yarn: str
    state: Chip


@dataclass(frozen=True, kw_only=True)
class DaysPage(Page):
    """Today and the days that come, then those that were."""

    template: ClassVar[str] = "dye_days/days.html"
    place: ClassVar[str] = "Dye days"

    coming: tuple[DayLink, ...]
    were: tuple[DayLink, ...]
    today: str


@dataclass(frozen=True, kw_only=True)
class BathRow:
    """A bath of the day."""

    number: str
    address: str
    called: str
    yarn: str
    liquor: str
    place: str
    state: Chip


@dataclass(frozen=True, kw_only=True)
class WayOn:
    """Something that is missing, or in the way, and the one thing to do about it."""

    note: Caution
    key: str = ""
    address: str = ""


@dataclass(frozen=True, kw_only=True)
class DayPage(Page):
    """A day: its baths, its plan, what is in its way."""

    template: ClassVar[str] = "dye_days/day.html"
    place: ClassVar[str] = "Dye days"

    add: str
    stock: str
    is_past: bool
    ways_on: tuple[WayOn, ...]
    rows: tuple[BathRow, ...]
