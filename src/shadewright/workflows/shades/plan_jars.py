"""How many jars a set of swatches takes, and how often a pot is filled with them."""

from dataclasses import dataclass
from math import ceil, floor

from shadewright.core.baths.liquor import ROOM_TO_SPARE
from shadewright.records.models import Pot

JAR_SIZES_ML = (250.0, 350.0, 500.0, 750.0, 1000.0, 1500.0)
"""Sizes of preserving jars (common practice). [mL]"""
SHARE_OF_POT = 0.5
"""How much of a pot its jars fill, with water around them (our choice). [1]"""


@dataclass(frozen=True, kw_only=True)
class JarCount:
    """Jars of one size; ``per_pot`` of them stand in the largest pot, if one is known.

    ``loads`` is how often that pot is filled.
    """

    jars: int
    jar_ml: float
    pot_name: str = ""
    per_pot: int = 0
    loads: int = 0


def jars_for(count: int, *, liquor_ml: float) -> JarCount:
    """Return the jars for so many baths, and the loads of the largest pot."""
    least_ml = ROOM_TO_SPARE * liquor_ml
    jar_ml = next((each for each in JAR_SIZES_ML if each >= least_ml), least_ml)
    pot = Pot.objects.filter(is_retired=False).order_by("-volume_l").first()
    per_pot = 0 if pot is None else floor(SHARE_OF_POT * 1000 * pot.volume_l / jar_ml)
    if pot is None or not per_pot:
        return JarCount(jars=count, jar_ml=jar_ml)
    return JarCount(
        jars=count,
        jar_ml=jar_ml,
        pot_name=pot.name,
        per_pot=per_pot,
        loads=ceil(count / per_pot),
    )
