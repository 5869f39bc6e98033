"""One acid for another, and a spent bath."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.acidity.forms import AcidForAcidForm
from shadewright.web.pages import Page
from shadewright.web.parts import Caution


@dataclass(frozen=True, kw_only=True)
class BasisRow:
    """What stands for the acid on one basis."""

    basis: str
    cells: tuple[str, ...]
    is_chosen: bool


@dataclass(frozen=True, kw_only=True)
class Answered:
    """The answer on every basis, and what is commonly said."""

    instead_of: str
    heads: tuple[str, ...]
    rows: tuple[BasisRow, ...]
    said: str
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, kw_only=True)
class AcidForAcidPage(Page):
    """Vinegar for citric acid, and the other way."""

    template: ClassVar[str] = "acidity/acid_for_acid.html"
    place: ClassVar[str] = "Shelf"

    form: AcidForAcidForm
    answered: Answered | None


@dataclass(frozen=True, kw_only=True)
class PourAwayPage(Page):
    """How a spent bath is made neutral before it is poured away."""

    template: ClassVar[str] = "acidity/pour_away.html"
    place: ClassVar[str] = "Dye days"

    bicarbonate: str
    why_not: str
    steps: tuple[str, ...]
    cautions: tuple[Caution, ...]
    back: str
