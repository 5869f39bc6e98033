"""The pages of the recipes."""

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from shadewright.core.baths import Curve
from shadewright.web.acidity.sour import Sour
from shadewright.web.colours import ColourShown
from shadewright.web.levers.known import RecipeKnown
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip
from shadewright.web.recipes.depth_aid import AidForm
from shadewright.web.recipes.forms import NameForm, VersionForm
from shadewright.web.sorting import Order
from shadewright.workflows.recipe_words import Changed
from shadewright.workflows.shades.dye_chips import DyeChip


@dataclass(frozen=True, kw_only=True)
class RecipeRow:
    """A recipe in the list."""

    name: str
    was_named: str
    address: str
    version: int
    doses: str
    tried: str
    state: Chip


@dataclass(frozen=True, kw_only=True)
class RecipesPage(Page):
    """Every recipe in use, or every retired one."""

    template: ClassVar[str] = "recipes/recipes.html"
    place: ClassVar[str] = "Recipes"

    rows: tuple[RecipeRow, ...]
    order: Order
    query: str
    is_retired: bool
    retired_count: int


@dataclass(frozen=True, kw_only=True)
class DoseShown:
    """A dye of the version that is shown; without a depth only words."""

    name: str
    address: str
    chip: DyeChip
    depth: str
    words: str


@dataclass(frozen=True, kw_only=True)
class Said:
    """A term and what the version says to it."""

    term: str
    words: str


@dataclass(frozen=True, kw_only=True)
class VersionShown:
    """A version in the list: when, by whom, from which one, what it changed."""

    number: int
    address: str
    is_shown: bool
    at: datetime
    by: str
    parent: int | None
    why: str
    changed: tuple[str, ...]
    state: Chip


@dataclass(frozen=True, kw_only=True)
class BathRow:
    """A bath that was planned from the recipe."""

    number: str
    address: str
    day: str
    version: int
    base: str
    yarn: str
    state: Chip


@dataclass(frozen=True, kw_only=True)
class FoundShown:
    """For which colour a version was found, and how near it should come."""

    name: str
    base: str
    hexes: tuple[str, ...]
    said: str
    target: ColourShown
    words: str
    find_address: str
    trials_address: str


@dataclass(frozen=True, kw_only=True)
class RecipePage(Page):
    """One version of a recipe in full, and everything around it."""

    template: ClassVar[str] = "recipes/recipe.html"
    place: ClassVar[str] = "Recipes"

    recipe_id: int
    number: int
    plan_address: str
    write_address: str
    newest: Link | None
    missing: str
    doses: tuple[DoseShown, ...]
    total: str
    sour: Sour
    known: RecipeKnown
    found: FoundShown | None
    said: tuple[Said, ...]
    curve: Curve | None
    curve_words: str
    unsaid: str
    as_written: str
    cautions: tuple[Caution, ...]
    tries: tuple[Said, ...]
    versions: tuple[VersionShown, ...]
    baths: tuple[BathRow, ...]
    all_baths: str
    colour_ways: tuple[Link, ...]
    is_retired: bool


@dataclass(frozen=True, kw_only=True)
class ChangesPage(Page):
    """What differs between two versions."""

    template: ClassVar[str] = "recipes/changes.html"
    place: ClassVar[str] = "Recipes"

    before: int
    after: int
    numbers: tuple[int, ...]
    changed: tuple[Changed, ...]


@dataclass(frozen=True, kw_only=True)
class WritePage(Page):
    """The form of a recipe: a first version, or the next one."""

    template: ClassVar[str] = "recipes/write.html"
    place: ClassVar[str] = "Recipes"

    form: VersionForm
    aid: AidForm
    aid_answer: str
    programme_answer: str
    acid_answer: str
    is_new: bool
    has_dyes: bool
    back: str


@dataclass(frozen=True, kw_only=True)
class NamePage(Page):
    """Another name for a recipe."""

    template: ClassVar[str] = "recipes/rename.html"
    place: ClassVar[str] = "Recipes"

    form: NameForm
    was_named: str
    back: str
