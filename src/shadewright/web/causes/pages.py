"""The pages of causes and drift."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.drawing import DriftShown
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Chip


@dataclass(frozen=True, kw_only=True)
class Beside:
    """Two colours that touch: the lots before at the left, this one at the right."""

    hexes: tuple[str, str]
    said: str


@dataclass(frozen=True, kw_only=True)
class CauseRow:
    """What was different, what that should do, and how likely it is the cause."""

    what: str
    changed: str
    does: str
    chance: str


@dataclass(frozen=True, kw_only=True)
class StrengthShown:
    """A bottle’s strength by a lot’s colour, beside what its ledger says."""

    bottle: str
    words: str
    why_not: str
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class WhyPage(Page):
    """Why a lot does not match."""

    template: ClassVar[str] = "causes/why.html"
    place: ClassVar[str] = "Lots"

    number: str
    verdict: Chip
    words: str
    difference: str
    beside: Beside | None
    next_step: Link | None
    rows: tuple[CauseRow, ...]
    unwritten: str
    test: str
    doses: tuple[str, ...]
    signals: tuple[str, ...]
    notes: tuple[str, ...]
    strength: StrengthShown | None
    may_teach: bool
    teach_deed: UUID
    drift: str
    file: str
    own: str


@dataclass(frozen=True, kw_only=True)
class DriftRow:
    """A lot of the chart in words."""

    number: str
    day: str
    difference: str
    words: str
    news: str


@dataclass(frozen=True, kw_only=True)
class DriftPage(Page):
    """How the lots of a recipe on a base lie."""

    template: ClassVar[str] = "causes/drift.html"
    place: ClassVar[str] = "Lots"

    shown: DriftShown | None
    beside: str
    marks: tuple[tuple[int, str], ...]
    rows: tuple[DriftRow, ...]
    older: int
    noise: str
    signals: tuple[str, ...]
    repeats: str
    newest: str
    file: str
