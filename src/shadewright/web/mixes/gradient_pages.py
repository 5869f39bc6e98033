"""A row whose steps look equal, as its page shows it."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.colours import ColourShown
from shadewright.web.mixes.gradient_form import GradientForm
from shadewright.web.mixes.pages import Kept
from shadewright.web.pages import Page


@dataclass(frozen=True, kw_only=True)
class StepRow:
    """One skein of the row."""

    place: int
    colour: ColourShown
    doses: str
    draws: tuple[str, ...]
    step: str


@dataclass(frozen=True, kw_only=True)
class GradientPage(Page):
    """A row of skeins from one mix paler and paler, or to another mix."""

    template: ClassVar[str] = "mixes/gradient.html"
    place: ClassVar[str] = "Shades"

    form: GradientForm
    why_not: str
    hexes: tuple[str, ...]
    picture: str
    rows: tuple[StepRow, ...]
    yarn: str
    whole: tuple[str, ...]
    too_vivid: str
    caution: str
    kept: tuple[Kept, ...]
    deed: str
    name: str
    name_fault: str
