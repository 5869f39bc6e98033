"""The pages of mixes."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.colours import ColourShown
from shadewright.web.evidence.standing import BehindShown
from shadewright.web.pages import Link, Page, Part
from shadewright.workflows.choices import Choice


@dataclass(frozen=True, kw_only=True)
class NoPalettePage(Page):
    """Nothing can be foretold before a swatch was read."""

    template: ClassVar[str] = "mixes/no_palette.html"
    place: ClassVar[str] = "Shades"

    ways: tuple[Link, ...]


@dataclass(frozen=True, kw_only=True)
class Slider:
    """One dye of the mix: where its slider stands, and what the number field says."""

    id: int
    name: str
    place: int
    depth: str
    hint: str
    fault: str


@dataclass(frozen=True, kw_only=True)
class LightShown:
    """The mix under one light, beside the target where there is one."""

    name: str
    hexes: tuple[str, ...]
    words: str


@dataclass(frozen=True, kw_only=True)
class Kept:
    """A value that goes with the mix when it is saved."""

    name: str
    value: str


@dataclass(frozen=True, kw_only=True)
class Told:
    """What is foretold of the mix as its sliders stand.

    ``hexes`` touch each other, the target first; ``said`` is read out once nobody
    moves a slider; ``own`` is the address of the page as it stands.
    """

    why_not: str
    colour: ColourShown | None
    target: ColourShown | None
    hexes: tuple[str, ...]
    picture: str
    mark: str
    words: str
    difference: str
    lights: tuple[LightShown, ...]
    keys: tuple[Link, ...]
    kept: tuple[Kept, ...]
    said: str
    own: str


@dataclass(frozen=True, kw_only=True)
class ToldPart(Part):
    """The colour alone, in answer to a slider."""

    template: ClassVar[str] = "mixes/told_part.html"

    told: Told


@dataclass(frozen=True, kw_only=True)
class DoseRow:
    """A dose that can be measured."""

    dye: str
    depth: str
    draw: str
    tool: str
    bottle: Link | None


@dataclass(frozen=True, kw_only=True)
class DosesShown:
    """The doses of the mix for the yarn at hand, and what its colour rests on."""

    yarn: str
    rows: tuple[DoseRow, ...]
    notes: tuple[str, ...]
    behind: BehindShown


@dataclass(frozen=True, kw_only=True)
class DosesPart(Part):
    """The doses alone, once the sliders rest."""

    template: ClassVar[str] = "mixes/doses_part.html"

    doses: DosesShown


@dataclass(frozen=True, kw_only=True)
class MixPage(Page):
    """A mix by sliders, with the colour that it should give."""

    template: ClassVar[str] = "mixes/mix.html"
    place: ClassVar[str] = "Shades"

    base: Choice
    bases: tuple[Choice, ...]
    sliders: tuple[Slider, ...]
    addable: tuple[Choice, ...]
    wanted: tuple[Kept, ...]
    yarn: str
    yarn_fault: str
    steps: int
    least: float
    most: float
    told: Told
    doses: DosesShown
    deed: str
    name: str
    name_fault: str
