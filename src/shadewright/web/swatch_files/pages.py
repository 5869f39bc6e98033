"""What the pages of a file show."""

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from django.forms import BoundField

from shadewright.web.colours import ColourShown
from shadewright.web.pages import Page
from shadewright.web.parts import Chip
from shadewright.web.swatch_files.forms import FileForm, LinesForm


@dataclass(frozen=True, kw_only=True)
class FilePage(Page):
    """Choose a file, or paste its text."""

    template: ClassVar[str] = "swatch_files/file.html"
    place: ClassVar[str] = "Shades"

    form: FileForm
    has_swatches: bool


@dataclass(frozen=True, kw_only=True)
class BadRow:
    """A line that cannot be used: what stands there, and why."""

    line: int
    words: str
    why: str


@dataclass(frozen=True, kw_only=True)
class GoodRow:
    """A line that can be kept."""

    line: int
    base: str
    doses: str
    seen: ColourShown
    kind: Chip
    dyed_on: date | None
    is_known: bool


@dataclass(frozen=True, kw_only=True)
class SampleRow:
    """A sample, and the field for its doses."""

    seen: ColourShown
    doses: BoundField


@dataclass(frozen=True, kw_only=True)
class NameRow:
    """A name that is new here, and what is asked of it."""

    meant: BoundField
    fibres: BoundField | None


@dataclass(frozen=True, kw_only=True)
class LinesPage(Page):
    """Every line of a file, before one is kept."""

    template: ClassVar[str] = "swatch_files/lines.html"
    place: ClassVar[str] = "Shades"

    form: LinesForm
    bad: tuple[BadRow, ...]
    bad_title: str
    bad_not_drawn: str
    can_mend: bool
    good: tuple[GoodRow, ...]
    good_title: str
    not_drawn: str
    names: tuple[NameRow, ...]
    samples: tuple[SampleRow, ...]
    yarn: tuple[BoundField, ...]
    base_names: tuple[str, ...]
    key: str
