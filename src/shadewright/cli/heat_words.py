"""How a pot, a source and a height are written: ``2kg:stainless``, ``gas``."""

from dataclasses import dataclass
from typing import Final

from shadewright.cli.words import one_of
from shadewright.core.quantities import (
    mass_g,
    require_between,
    require_mass,
)
from shadewright.core.quantities.reading import Asked, read_amount
from shadewright.core.tables.heat import VESSEL_CP, Material, Source

_OFFERED: Final = tuple(each for each in Material if each is not Material.GLASS)
_VESSEL: Final = (
    f"WEIGHT:MATERIAL, such as 2kg:stainless; materials: {', '.join(_OFFERED)}"
)
_METRES: Final = {"m": 1.0, "metres": 1.0, "km": 1000.0, "ft": 0.3048, "feet": 0.3048}
_FURTHEST_M: Final = 6000.0


@dataclass(frozen=True, kw_only=True)
class Vessel:
    """A pot by its weight [kg] and what it is made of."""

    mass_kg: float
    material: Material


def vessel_from_words(text: str, *, name: str, argument: str) -> Vessel:
    """Return the pot that was written."""
    asked = Asked(name=name, example=_VESSEL, argument=argument)
    weight, sign, material = text.partition(":")
    word = material.strip().casefold()
    if not sign or word not in set(VESSEL_CP):
        raise asked.refusal(text)
    weighed_g = mass_g(
        weight, name=f"{name}’s weight", argument=argument, guard=require_mass
    )
    return Vessel(mass_kg=weighed_g / 1000, material=Material(word))


def source_from_words(text: str, *, name: str, argument: str) -> Source:
    """Return the kind of heat source that was written."""
    return one_of(Source, text, name=name, argument=argument)


def altitude_from_words(text: str, *, name: str, argument: str) -> float:
    """Return an altitude in metres; the core says which can be."""
    asked = Asked(
        name=name, example="a height such as 1600 m or 5200 ft", argument=argument
    )
    value_m = read_amount(text, asked=asked, worth=_METRES, default_unit=None)
    return require_between(
        value_m,
        least=-430.0,
        most=_FURTHEST_M,
        unit="m",
        name=name,
        argument=argument,
    )
