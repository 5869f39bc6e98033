"""How much acid a bath is given, and what is said of one acid for another.

The doses are where a dyer starts, in % of pure acid on weight of fibre, for a
pale, a medium and a deep shade. What they rest on differs and stands beside
each: [broadbent2001]_ gives the acid of each class (Table 13.1, p. 242) and,
for half-milling dyes, the range of 1 to 3 % of acetic acid; 2 to 4 % of an
ammonium salt for milling and 1:2 dyes is as in [lewis1992]_ (from memory).
Splitting a range by depth is common practice. For levelling dyes the book has
sulphuric acid, which is never offered here: citric acid stands in its place.

Where a shade begins to be medium (0.5 %) or deep (above 1.5 %) is common
practice too.
"""

from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from shadewright.core.tables.acids import AMMONIUM_SULPHATE, CITRIC, VINEGAR5, Acid
from shadewright.core.tables.dye_classes import CLASS_FACTS, DyeClass


class AcidHabit(StrEnum):
    """A group of dyes that want acid in one way; named as in the catalogue."""

    LEVELLING = "levelling"
    HALF_MILLING = "half-milling"
    MILLING = "milling"
    SUPER_MILLING = "super-milling"
    METAL_COMPLEX_1_2 = "metal-complex 1:2"


@dataclass(frozen=True, kw_only=True)
class HabitFacts:
    """The pH that dyes of a group want, and the acid that they start with.

    ``takes_time_first`` marks dyes that rush on once acid comes late: they
    get time and temperature before they get more acid.
    """

    ph_from: float
    ph_to: float
    ph_source: str
    acid: Acid
    percent_owf: tuple[float, float, float]
    dose_source: str
    takes_time_first: bool


MEDIUM_FROM_PERCENT: Final = 0.5
DEEP_ABOVE_PERCENT: Final = 1.5

_BROADBENT: Final = "Broadbent 2001, Table 13.1, p. 242 (wool)"
_LEWIS: Final = "2 to 4 % as in Lewis 1992 (from memory); by depth: common practice"


def _facts(
    dye_class: DyeClass,
    *,
    acid: Acid,
    percent_owf: tuple[float, float, float],
    dose_source: str,
    takes_time_first: bool,
) -> HabitFacts:
    """Return the facts of a class whose pH stands in Broadbent's table."""
    return HabitFacts(
        ph_from=CLASS_FACTS[dye_class].ph_from,
        ph_to=CLASS_FACTS[dye_class].ph_to,
        ph_source=_BROADBENT,
        acid=acid,
        percent_owf=percent_owf,
        dose_source=dose_source,
        takes_time_first=takes_time_first,
    )


HABITS: Final = MappingProxyType({
    AcidHabit.LEVELLING: _facts(
        DyeClass.LEVELLING,
        acid=CITRIC,
        percent_owf=(2.0, 3.0, 4.0),
        dose_source=(
            "common practice; printed advice runs from 1 to 8 % of citric acid "
            "(Broadbent 2001, p. 242, has 2 to 4 % of sulphuric acid)"
        ),
        takes_time_first=False,
    ),
    AcidHabit.HALF_MILLING: _facts(
        DyeClass.HALF_MILLING,
        acid=VINEGAR5,
        percent_owf=(1.0, 2.0, 3.0),
        dose_source=(
            "1 to 3 % of acetic acid by Broadbent 2001, Table 13.1, p. 242; by "
            "depth: common practice"
        ),
        takes_time_first=False,
    ),
    AcidHabit.MILLING: _facts(
        DyeClass.MILLING,
        acid=AMMONIUM_SULPHATE,
        percent_owf=(2.0, 3.0, 4.0),
        dose_source=f"the salt by Broadbent 2001, Table 13.1, p. 242; {_LEWIS}",
        takes_time_first=True,
    ),
    AcidHabit.SUPER_MILLING: _facts(
        DyeClass.SUPER_MILLING,
        acid=AMMONIUM_SULPHATE,
        percent_owf=(2.0, 3.0, 4.0),
        dose_source=f"the salt by Broadbent 2001, Table 13.1, p. 242; {_LEWIS}",
        takes_time_first=True,
    ),
    AcidHabit.METAL_COMPLEX_1_2: HabitFacts(
        ph_from=4.5,
        ph_to=7.0,
        ph_source=(
            "Lewis 1992 (from memory): 5 to 7 with one sulphonate or none, about 4.5 "
            "to 6 with two"
        ),
        acid=AMMONIUM_SULPHATE,
        percent_owf=(2.0, 3.0, 4.0),
        dose_source=_LEWIS,
        takes_time_first=True,
    ),
})

CITRIC_SAID_G_PER_100ML_VINEGAR: Final = (5.0, 7.4, 9.1, 10.5, 10.6, 25.0, 30.0)
"""What six pages for hand dyers give for 100 ml of 5 % vinegar, the last of them a
range; common practice, no check of anything."""
