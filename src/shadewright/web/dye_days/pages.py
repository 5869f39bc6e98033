"""The pages of the dye days."""

from dataclasses import dataclass
from datetime import date
from typing import ClassVar
from uuid import UUID

from shadewright.web.dye_days.forms import ClosedForm, HoursForm, OutForm, WishForm
from shadewright.web.dye_days.plan_part import PlanShown
from shadewright.web.dye_days.room_form import RoomForm
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip, Key


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
    wish_address: str
    called: str
    yarn: str
    liquor: str
    place: str
    pins: str
    state: Chip
    late: Chip | None


@dataclass(frozen=True, kw_only=True)
class WayOn:
    """Something that is missing, or in the way, and the one thing to do about it."""

    note: Caution
    key: str = ""
    address: str = ""


@dataclass(frozen=True, kw_only=True)
class SearchShown:
    """A better plan that is looked for, or what came of it."""

    is_over: bool
    said: str


@dataclass(frozen=True, kw_only=True)
class DayPage(Page):
    """A day: its baths, its plan, what is in its way."""

    template: ClassVar[str] = "dye_days/day.html"
    place: ClassVar[str] = "Dye days"

    day: date
    is_past: bool
    is_today: bool
    can_plan: bool
    deed: UUID
    held: str
    keys: tuple[Key, ...]
    ways_on: tuple[WayOn, ...]
    rows: tuple[BathRow, ...]
    plan: PlanShown | None
    unplanned: tuple[str, ...]
    search: SearchShown | None
    facts: tuple[tuple[str, str], ...]
    links: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class BathOfDayPage(Page):
    """What is wished of a bath within its day."""

    template: ClassVar[str] = "dye_days/bath.html"
    place: ClassVar[str] = "Dye days"

    form: WishForm
    stands: str
    bath: str
    day: date


@dataclass(frozen=True, kw_only=True)
class OutRow:
    """Something that is out."""

    id: int
    words: str


@dataclass(frozen=True, kw_only=True)
class ReplanPage(Page):
    """Planning anew from what is on the heat, and what is out."""

    template: ClassVar[str] = "dye_days/replan.html"
    place: ClassVar[str] = "Dye days"

    day: date
    deed: UUID
    held: str
    going: tuple[str, ...]
    outs: tuple[OutRow, ...]
    form: OutForm


@dataclass(frozen=True, kw_only=True)
class HoursPage(Page):
    """When a day opens, and who is in."""

    template: ClassVar[str] = "dye_days/hours.html"
    place: ClassVar[str] = "Dye days"

    form: HoursForm


@dataclass(frozen=True, kw_only=True)
class ClosedRow:
    """Closed days, why, and the address that opens them again."""

    words: str
    why: str
    address: str


@dataclass(frozen=True, kw_only=True)
class ClosedPage(Page):
    """The days on which nobody works."""

    template: ClassVar[str] = "dye_days/closed.html"
    place: ClassVar[str] = "Dye days"

    form: ClosedForm
    rows: tuple[ClosedRow, ...]


@dataclass(frozen=True, kw_only=True)
class RoomPage(Page):
    """The dye room and its habits."""

    template: ClassVar[str] = "dye_days/room.html"
    place: ClassVar[str] = "Dye days"

    form: RoomForm
