"""The pages of tags and tests."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.paper.skein_tags import SkeinTag
from shadewright.web.pages import Page
from shadewright.web.parts import Caution
from shadewright.web.tags.forms import (
    MakerForm,
    PrintForm,
    RegionForm,
    TestForm,
    YarnForm,
)
from shadewright.workflows.judging.fastness import FastnessNow
from shadewright.workflows.tags.texts import Region


@dataclass(frozen=True, kw_only=True)
class TagWordsPage(Page):
    """What every tag says, and what regions ask."""

    template: ClassVar[str] = "tags/words.html"
    place: ClassVar[str] = "Lots"

    form: MakerForm
    regions: tuple[Region, ...]
    starters: tuple[Region, ...]
    check_locally: str


@dataclass(frozen=True, kw_only=True)
class RegionPage(Page):
    """One region's list."""

    template: ClassVar[str] = "tags/region.html"
    place: ClassVar[str] = "Lots"

    form: RegionForm
    own: str
    check_locally: str


@dataclass(frozen=True, kw_only=True)
class LotTagsPage(Page):
    """The tags of one lot."""

    template: ClassVar[str] = "tags/lot.html"
    place: ClassVar[str] = "Lots"

    number: str
    tag: SkeinTag | None
    trouble: Caution | None
    lacks: str
    form: PrintForm | None
    yarn_form: YarnForm | None
    regions: tuple[Region, ...]
    check_locally: str
    own: str


@dataclass(frozen=True, kw_only=True)
class TestRow:
    """A test in words."""

    __test__ = False

    test: FastnessNow
    kind: str
    words: str
    how: str


@dataclass(frozen=True, kw_only=True)
class LotTestsPage(Page):
    """The bleed and rub tests of one lot."""

    template: ClassVar[str] = "tags/tests.html"
    place: ClassVar[str] = "Lots"

    number: str
    rows: tuple[TestRow, ...]
    form: TestForm
    steps: tuple[tuple[str, str], ...]
    own: str
