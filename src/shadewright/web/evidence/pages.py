"""The pages of evidence: the fits, and what was foretold beside what came out."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.colours import ColourShown
from shadewright.web.evidence.parts import FitShown, OfferedShown, SuspectsShown
from shadewright.web.evidence.standing import BehindShown
from shadewright.web.pages import Page, Part
from shadewright.web.parts import Chip
from shadewright.workflows.shades.fit_pages import FitRow


@dataclass(frozen=True, kw_only=True)
class FitPart(Part):
    """Where the palette stands, alone, for a page that asks every second."""

    template: ClassVar[str] = "evidence/fit_part.html"

    fit: FitShown


@dataclass(frozen=True, kw_only=True)
class FitsPage(Page):
    """Every fit, and what does not teach."""

    template: ClassVar[str] = "evidence/fits.html"
    place: ClassVar[str] = "Shades"

    fit: FitShown
    suspects: SuspectsShown
    offered: OfferedShown
    rows: tuple[FitRow, ...]


@dataclass(frozen=True, kw_only=True)
class OutcomeShown:
    """What was foretold of a bath, and what came out of it if that was read."""

    label: str
    address: str
    mix: str
    base_name: str
    foretold: ColourShown
    read: ColourShown | None
    behind: BehindShown
    state: Chip
    words: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class PredictionsPage(Page):
    """Predictions beside what came out, and how often their bound held."""

    template: ClassVar[str] = "evidence/predictions.html"
    place: ClassVar[str] = "Shades"

    rate: tuple[str, ...]
    rows: tuple[OutcomeShown, ...]
    waiting: tuple[OutcomeShown, ...]
