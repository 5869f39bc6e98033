"""The pages of evidence: the fits, and what was foretold beside what came out."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.evidence.parts import FitShown, OfferShown, SuspectsShown
from shadewright.web.pages import Page, Part
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
    offered: tuple[OfferShown, ...]
    rows: tuple[FitRow, ...]
