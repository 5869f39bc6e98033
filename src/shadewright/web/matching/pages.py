"""The pages on which a recipe is found, and the list of wanted colours."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.drawing import Difference
from shadewright.web.baths.pages import ShareShown
from shadewright.web.colours import ColourShown
from shadewright.web.matching.forms import FindForm
from shadewright.web.pages import Link, Page, Part
from shadewright.web.parts import Caution, Chip, Measured
from shadewright.workflows.shades.dye_chips import DyeChip


@dataclass(frozen=True, kw_only=True)
class LightShown:
    """Target beside prediction under one light; ``note`` where one is a guess."""

    name: str
    hexes: tuple[str, ...]
    said: str
    words: str
    note: str


@dataclass(frozen=True, kw_only=True)
class DoseShown:
    """A dye of an answer: its depth with its spread, what is drawn of which bottle."""

    name: str
    address: str
    chip: DyeChip
    depth: Measured
    shares: tuple[ShareShown, ...]
    missing: str


@dataclass(frozen=True, kw_only=True)
class Trouble:
    """What stands in the way of an answer, and the ways out."""

    words: str
    ways: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class AnswerShown:
    """A recipe that was found, as the page shows it.

    ``mind`` says of a closed answer how many ``troubles`` it holds.
    """

    number: int
    title: str
    also: str
    cost: str
    hexes: tuple[str, ...]
    said: str
    too_vivid: str
    words: str
    difference: str
    spread: str
    bar: Difference
    chance: str
    passes: str
    lights: tuple[LightShown, ...]
    doses: tuple[DoseShown, ...]
    troubles: tuple[Trouble, ...]
    mind: Chip | None
    colour: ColourShown
    behind: tuple[Link, ...]
    mix: str
    deed: UUID
    ways: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class FoundShown:
    """All answers: what is said first, and where they are saved.

    ``powder`` is the caution where any of them has dye weighed dry.
    """

    batch: str
    searched: str
    out_of_reach: Caution | None
    reach_way: Link | None
    powder: str
    answers: tuple[AnswerShown, ...]
    save_address: str
    save_words: str


@dataclass(frozen=True, kw_only=True)
class SearchShown:
    """A search under way: how far it is, in per cent, and where to look again."""

    percent: int
    look_address: str
    again_address: str
    stop_address: str


@dataclass(frozen=True, kw_only=True)
class AnswersPart(Part):
    """What was found so far, sent alone while a search runs."""

    template: ClassVar[str] = "matching/answers_part.html"

    found: FoundShown | None = None
    search: SearchShown | None = None
    refusal: Caution | None = None


@dataclass(frozen=True, kw_only=True)
class FindPage(Page):
    """The target, and the recipes for it."""

    template: ClassVar[str] = "matching/find.html"
    place: ClassVar[str] = "Shades"

    form: FindForm
    target: ColourShown | None
    target_note: str
    filters: str
    keep_address: str
    found: FoundShown | None
    search: SearchShown | None
    refusal: Caution | None
    is_stopped: bool
    from_recipe: Link | None


@dataclass(frozen=True, kw_only=True)
class WantedRow:
    """A colour that is kept, with its keys."""

    id: int
    name: str
    colour: ColourShown
    base: str
    recipes: tuple[Link, ...]
    find_address: str


@dataclass(frozen=True, kw_only=True)
class WantedPage(Page):
    """The colours that somebody wants."""

    template: ClassVar[str] = "matching/wanted.html"
    place: ClassVar[str] = "Shades"

    rows: tuple[WantedRow, ...]
    is_retired: bool
    retired_count: int
