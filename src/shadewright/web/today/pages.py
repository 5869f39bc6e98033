"""The pages of today."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.bench.pages import Pots
from shadewright.web.pages import Page


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """Something that waits: what, why, and the one key that goes on with it."""

    icon: str
    what: str
    why: str
    key: str
    address: str
    is_first: bool = False


@dataclass(frozen=True, kw_only=True)
class TodayPage(Page):
    """What waits in the studio."""

    template: ClassVar[str] = "today/today.html"
    place: ClassVar[str] = "Today"

    pots: Pots
    waiting: tuple[Waiting, ...]
    count_of_bottles: int


@dataclass(frozen=True, kw_only=True)
class OwnStudioPage(Page):
    """Where one's own studio is, and how to open it next time."""

    template: ClassVar[str] = "today/own_studio.html"
    place: ClassVar[str] = "Today"

    address: str
