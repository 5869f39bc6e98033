"""The page where the bottles that stand on the shelf are entered, one by one."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.web.pages import Page
from shadewright.web.parts import Measured
from shadewright.web.shelf.forms import EnterForm
from shadewright.workflows.shelf import ShelfBottle


@dataclass(frozen=True, kw_only=True)
class EnteredRow:
    """A bottle that was entered today."""

    bottle: ShelfBottle
    address: str
    strength: Measured
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class EnterPage(Page):
    """The form, the code to write on the bottle, and what was entered today."""

    template: ClassVar[str] = "shelf/enter.html"
    place: ClassVar[str] = "Shelf"

    form: EnterForm
    dye_names: tuple[str, ...]
    newest: EnteredRow | None
    entered: tuple[EnteredRow, ...]
