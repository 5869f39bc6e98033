"""The pages of Shades: a palette on one base, and where none is yet."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.drawing import DyeStrip, ReachShown
from shadewright.web.evidence.parts import FitShown, OfferedShown, SuspectsShown
from shadewright.web.pages import Link, Page


@dataclass(frozen=True, kw_only=True)
class NoPalettePage(Page):
    """Where the palette would stand; ``swatches`` counts those that there are."""

    template: ClassVar[str] = "palettes/none.html"
    place: ClassVar[str] = "Shades"

    fit: FitShown
    swatches: int
    files: str
    links: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class BaseTab:
    """A base in the row of bases."""

    name: str
    address: str
    is_here: bool


@dataclass(frozen=True, kw_only=True)
class StripRow:
    """A dye’s strip with its words; ``place`` keeps its drawings apart."""

    place: int
    name: str
    address: str
    sure: str
    counted: str
    drawn: DyeStrip
    measured: str
    swatches: tuple[Link, ...]
    at_one: str
    remarks: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class ReachRow:
    """How far the reach goes at one lightness, in words."""

    lightness: str
    kind: str
    reddest: str
    greenest: str
    yellowest: str
    bluest: str
    is_empty: bool


@dataclass(frozen=True, kw_only=True)
class WantedRow:
    """A wanted colour on the map: its number there, its name, what must be said."""

    number: int
    name: str
    address: str
    words: str


@dataclass(frozen=True, kw_only=True)
class ReachPart:
    """The reach as a picture and as a table."""

    shown: ReachShown
    rows: tuple[ReachRow, ...]
    wanted: tuple[WantedRow, ...]


@dataclass(frozen=True, kw_only=True)
class HelpRow:
    """A swatch worth dyeing, and what it would do."""

    doses: str
    now: str
    then: str


@dataclass(frozen=True, kw_only=True)
class MissedRow:
    """A wanted colour out of reach: how far, which way, and the nearest."""

    name: str
    far: str
    nearest: str


@dataclass(frozen=True, kw_only=True)
class Closer:
    """What takes a moment to reckon; ``waiting`` counts swatches that are planned."""

    helps: tuple[HelpRow, ...]
    waiting: int
    is_little: bool
    missed: tuple[MissedRow, ...]
    is_asked: bool


@dataclass(frozen=True, kw_only=True)
class PalettePage(Page):
    """A palette on one base."""

    template: ClassVar[str] = "palettes/palette.html"
    place: ClassVar[str] = "Shades"

    own: str
    find: str
    plan: str
    tabs: tuple[BaseTab, ...]
    untried: tuple[Link, ...]
    links: tuple[Link, ...]
    notes: tuple[str, ...]
    strips: tuple[StripRow, ...]
    legend: str
    reach: ReachPart
    closer: Closer | None
    fit: FitShown
    suspects: SuspectsShown
    offered: OfferedShown

    @property
    def is_fit_first(self) -> bool:
        """Whether the fit asks for somebody’s eye, and so stands first."""
        fit = self.fit
        is_amiss = bool(fit.fault) or fit.is_other_light
        return fit.is_running or fit.is_stale or is_amiss


@dataclass(frozen=True, kw_only=True)
class UnknownBasePage(Page):
    """A base of which the palette knows nothing yet.

    ``swatches`` counts its own, which the next fit will take.
    """

    template: ClassVar[str] = "palettes/unknown.html"
    place: ClassVar[str] = "Shades"

    base: str
    swatches: int
    enter: str
    tabs: tuple[BaseTab, ...]
    untried: tuple[Link, ...]
    links: tuple[Link, ...]
    fit: FitShown
