"""The heat of a bath as its pages show it: on what, how long, how to set the knob."""

from collections.abc import Iterator
from dataclasses import dataclass

from django.urls import reverse

from shadewright.core.quantities import amount_text
from shadewright.web.pages import Link
from shadewright.web.parts import Caution
from shadewright.workflows.choices import sources_in_use
from shadewright.workflows.heat_words import (
    full_words,
    notes_of,
    pace_words,
    way_words,
)
from shadewright.workflows.heating import BathHeat


@dataclass(frozen=True, kw_only=True)
class HeatTerm:
    """A term and its words."""

    term: str
    words: str


@dataclass(frozen=True, kw_only=True)
class HeatShown:
    """What is known of a bath's heat; without a burner, how to say one."""

    terms: tuple[HeatTerm, ...]
    notes: tuple[str, ...]
    missing: str
    way_on: Link | None
    caution: Caution | None


def shown_heat(heat: BathHeat | None, *, top_caution: str) -> HeatShown:
    """Return the heat of a bath as its pages show it."""
    has_sources = bool(sources_in_use())
    return HeatShown(
        terms=() if heat is None else tuple(_terms(heat)),
        notes=() if heat is None else notes_of(heat),
        missing="" if heat is not None else _missing(has_sources=has_sources),
        way_on=None
        if has_sources
        else Link(words="Add a burner", address=reverse("add-burner")),
        caution=Caution(title="The boil comes first", text=top_caution)
        if top_caution
        else None,
    )


def _terms(heat: BathHeat) -> Iterator[HeatTerm]:
    yield HeatTerm(term="On", words=heat.source_name)
    yield HeatTerm(term="To the top", words=way_words(heat))
    if said := full_words(heat):
        yield HeatTerm(term="At full power", words=said)
    if said := pace_words(heat):
        yield HeatTerm(term="The knob", words=said)
    yield HeatTerm(term="It uses", words=amount_text(heat.input_kwh, "kWh"))


def _missing(*, has_sources: bool) -> str:
    if has_sources:
        return (
            "Say in which pot and on which burner, and in the recipe how hot: then the "
            "minutes to the top stand here. Those of a steamer are not reckoned: time "
            "it."
        )
    return "Once your burners are on the shelf, the minutes to the top stand here."
