"""The kinds of the catalogue: how each is called, listed and edited."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from shadewright.core.quantities import amount_text
from shadewright.records.models import (
    Auxiliary,
    Base,
    Circuit,
    Dye,
    HeatSource,
    MeasuringTool,
    Meter,
    Pot,
    Water,
)
from shadewright.records.models.catalogue import CatalogueItem
from shadewright.web.catalogue.dye_form import DyeForm
from shadewright.web.catalogue.forms import AcidForm, YarnForm
from shadewright.web.catalogue.item_form import ItemForm
from shadewright.web.catalogue.meter_form import MeterForm
from shadewright.web.catalogue.pot_form import PotForm
from shadewright.web.catalogue.source_form import CircuitForm, SourceForm
from shadewright.web.catalogue.tool_form import ToolForm
from shadewright.web.catalogue.tool_words import along, in_a_word
from shadewright.web.catalogue.water_form import WaterForm
from shadewright.workflows.tools import shaped_tool, unit_of

Item = Any
"""A row of whichever kind; its columns know which."""


@dataclass(frozen=True, kw_only=True)
class Column:
    """A column of a list: its head, what it says, what it sorts by."""

    key: str
    head: str
    says: Callable[[Item], str]
    sorts: Callable[[Item], Any]
    css: str = ""


@dataclass(frozen=True, kw_only=True)
class Kind:
    """Dyes, bases, acids, waters, pots, burners, circuits, tools or meters."""

    slug: str
    noun: str
    here: str
    title: str
    fact: str
    would_be: str
    model: type[CatalogueItem]
    form: type[ItemForm]
    columns: tuple[Column, ...]


def _or_dash(value: float | None, unit: str) -> str:
    return "–" if value is None else amount_text(value, unit)


def _text(key: str, head: str, css: str = "") -> Column:
    def says(item: Item) -> str:
        return str(getattr(item, key) or "–")

    return Column(
        key=key,
        head=head,
        css=css,
        says=says,
        sorts=lambda item: str(getattr(item, key)).casefold() or None,
    )


def _choice(key: str, head: str, css: str = "") -> Column:
    def says(item: Item) -> str:
        return str(getattr(item, f"get_{key}_display")())

    return Column(key=key, head=head, css=css, says=says, sorts=says)


def _number(key: str, head: str, unit: str, css: str = "n") -> Column:
    return Column(
        key=key,
        head=head,
        css=css,
        says=lambda item: _or_dash(getattr(item, key), unit),
        sorts=lambda item: getattr(item, key),
    )


def _solubility(item: Dye) -> str:
    found = _or_dash(item.solubility_g_per_l, "g/l")
    at = item.solubility_at_c
    return found if at is None else f"{found} at {amount_text(at, '°C')}"


def _of_tool(key: str, head: str, css: str) -> Column:
    return Column(
        key=key,
        head=head,
        css=css,
        says=lambda item: _or_dash(getattr(item, key), unit_of(item.kind)),
        sorts=lambda item: getattr(item, key),
    )


def _worth(item: MeasuringTool) -> float | None:
    points = along(shaped_tool(item))
    return points[0].share if points else None


DYES = Kind(
    slug="dyes",
    noun="dye",
    here="Dyes",
    title="Dyes",
    fact="What the studio colours with, under your own names.",
    would_be="Your dyes, each with its class and its safety data sheet.",
    model=Dye,
    form=DyeForm,
    columns=(
        _choice("dye_class", "Class"),
        _text("ci_name", "C.I. name", "desk"),
        Column(
            key="solubility",
            head="Dissolves",
            css="desk",
            says=_solubility,
            sorts=lambda item: item.solubility_g_per_l,
        ),
    ),
)
BASES = Kind(
    slug="bases",
    noun="base",
    here="Bases",
    title="Bases",
    fact="The bare yarns, and the mill lots they came in.",
    would_be="Your yarns, each with its fibres and the mill lots that you have of it.",
    model=Base,
    form=YarnForm,
    columns=(
        _text("fibres", "Fibres"),
        _number("skein_g", "Skein", "g", "n desk"),
        _number("metres_per_100_g", "Length of 100 g", "m", "n desk"),
    ),
)
ACIDS = Kind(
    slug="acids",
    noun="acid",
    here="Acids",
    title="Acids and helpers",
    fact="What goes into a bath beside dye: only what stands on your own shelf.",
    would_be="Vinegar, citric acid, Glauber’s salt: what your baths take.",
    model=Auxiliary,
    form=AcidForm,
    columns=(
        _choice("kind", "What it is for"),
        _number("strength_g_per_100_ml", "Strength", "g/100 ml"),
        _text("hazard_words", "Hazard words", "desk"),
    ),
)
WATERS = Kind(
    slug="waters",
    noun="water",
    here="Waters",
    title="Waters",
    fact="What baths are filled with: its alkalinity takes up acid.",
    would_be="Your tap, your rain butt: each with its alkalinity, from the supplier’s "
    "report or a test strip.",
    model=Water,
    form=WaterForm,
    columns=(
        _number("alkalinity_mg_per_l", "Alkalinity", "mg/l"),
        _number("hardness_mg_per_l", "Hardness", "mg/l", "n desk"),
        _number("ph", "pH", "", "n desk"),
    ),
)
POTS = Kind(
    slug="pots",
    noun="pot",
    here="Pots",
    title="Pots",
    fact="What yarn is dyed in: how much each holds says how much yarn it takes.",
    would_be="Your pots, each with what it holds and what it is made of.",
    model=Pot,
    form=PotForm,
    columns=(
        _number("volume_l", "Holds", "l"),
        _number("mass_kg", "Weighs", "kg", "n desk"),
        _choice("material", "Made of", "desk"),
    ),
)
BURNERS = Kind(
    slug="burners",
    noun="burner",
    here="Burners",
    title="Burners and plates",
    fact="What a pot stands on: its power says how long the way to the top is.",
    would_be="Your rings, plates and burners, each with its power.",
    model=HeatSource,
    form=SourceForm,
    columns=(
        _choice("kind", "What it is"),
        _number("power_kw", "Power", "kW"),
        _text("circuit", "Circuit", "desk"),
    ),
)
CIRCUITS = Kind(
    slug="circuits",
    noun="circuit",
    here="Circuits",
    title="Circuits",
    fact="Burners behind one fuse, and what it bears: a plan never asks for more.",
    would_be="Your fuses, each with what it bears; a burner then says on which it is.",
    model=Circuit,
    form=CircuitForm,
    columns=(_number("limit_kw", "Bears", "kW"),),
)
TOOLS = Kind(
    slug="tools",
    noun="tool",
    here="Tools",
    title="Measuring tools",
    fact="What your numbers are read from: how sure they are begins here.",
    would_be="Your scale, your cylinder, your syringes, and how far each may be off.",
    model=MeasuringTool,
    form=ToolForm,
    columns=(
        _choice("kind", "Kind", "desk"),
        _of_tool("size", "Largest", "n desk"),
        _of_tool("readability", "Smallest step", "n desk"),
        Column(
            key="worth",
            head="May be off by",
            css="n",
            says=lambda item: in_a_word(shaped_tool(item)),
            sorts=_worth,
        ),
    ),
)
METERS = Kind(
    slug="meters",
    noun="meter",
    here="Meters",
    title="Meters for colour",
    fact="What colours are read with: the light and the eye are asked once, here.",
    would_be="Your meter, with the light and the field of view that it is set to.",
    model=Meter,
    form=MeterForm,
    columns=(
        _choice("light", "Light"),
        _choice("observer", "Field"),
        _text("geometry", "Geometry", "desk"),
        _number("spread", "Spread of one reading", "ΔE"),
    ),
)
