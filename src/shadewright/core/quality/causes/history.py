"""A lot of a recipe on one base: its colour, and what it was dyed with."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from shadewright.core.colour import Lab


class Factor(StrEnum):
    """What may differ between two lots of one recipe, in the order of its column."""

    JAR = "jar"
    BOTTLE = "bottle"
    BOTTLE_AGE = "bottle_age_days"
    MILL_LOT = "mill_lot"
    WATER = "water"
    POT = "pot"
    LOAD = "load_g_per_l"
    RAMP = "ramp_c_per_min"
    HOLD = "hold_min"
    ACID_AFTER = "acid_after_min"
    PERSON = "person"


NUMBERS: Final[tuple[Factor, ...]] = (
    Factor.BOTTLE_AGE,
    Factor.LOAD,
    Factor.RAMP,
    Factor.HOLD,
    Factor.ACID_AFTER,
)
"""Factors that are a number; of the others only the name is known."""

NAMES: Final[tuple[Factor, ...]] = tuple(
    factor for factor in Factor if factor not in NUMBERS
)
"""Factors of which it is only known whether they are the same."""


@dataclass(frozen=True, kw_only=True)
class PastLot:
    """A lot and what it was dyed with; None is what nobody wrote down."""

    number: str
    colour: Lab | None = None
    jar: str | None = None
    bottle: str | None = None
    bottle_age_days: float | None = None
    mill_lot: str | None = None
    water: str | None = None
    pot: str | None = None
    load_g_per_l: float | None = None
    ramp_c_per_min: float | None = None
    hold_min: float | None = None
    acid_after_min: float | None = None
    person: str | None = None

    def name(self, factor: Factor) -> str | None:
        """Return the name under which a factor was written down."""
        found = getattr(self, factor)
        return None if found is None else str(found)

    def number_of(self, factor: Factor) -> float | None:
        """Return the number that was written down of a factor."""
        found = getattr(self, factor)
        return None if found is None else float(found)
