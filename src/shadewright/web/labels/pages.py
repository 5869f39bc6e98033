"""The pages of labels."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.labels.forms import CodeForm, LabelsForm, PhotoForm
from shadewright.web.pages import Page


@dataclass(frozen=True, kw_only=True)
class LabelsPage(Page):
    """Choose bottles and paper."""

    template: ClassVar[str] = "labels/labels.html"
    place: ClassVar[str] = "Shelf"

    form: LabelsForm
    preview: str
    has_bottles: bool


@dataclass(frozen=True, kw_only=True)
class FindPage(Page):
    """Type the code, or take a photo."""

    template: ClassVar[str] = "labels/find.html"
    place: ClassVar[str] = "Shelf"

    code: CodeForm
    photo: PhotoForm
