"""Pale before dark, one family of colours at a time: how often a day turns back.

Spoons, gloves, sink and thermometer carry dye from one bath to the next, whichever pot
they are in. So a day goes by families, from yellow over red and blue to black, and
within each from pale to dark (common practice). Each step that goes against this is a
turn. Between plans of one end, that with fewer pots washed out is taken, then that with
fewer turns.
"""

from collections.abc import Iterable
from itertools import pairwise

from shadewright.core.planning.day import WantedBath

FAMILIES = (
    "yellow",
    "orange",
    "red",
    "pink",
    "violet",
    "blue",
    "green",
    "brown",
    "grey",
    "black",
)
"""Colours in the order in which they are dyed; others have no place in it. [-]"""


def turns_of(baths: Iterable[WantedBath]) -> int:
    """Return how many steps of a day go back: paler, darker family first, or again.

    Parameters
    ----------
    baths : iterable of WantedBath
        In the order of their filling. [%]

    Returns
    -------
    int
        Steps within a family to a paler bath, to a family that was left before, or to
        one that is dyed earlier. [-]
    """
    turns, left = 0, set[str]()
    for one, other in pairwise(baths):
        if one.family == other.family:
            turns += other.depth_percent < one.depth_percent
            continue
        left.add(one.family)
        turns += other.family in left or _is_back(one.family, other.family)
    return turns


def _is_back(one: str, other: str) -> bool:
    if one not in FAMILIES or other not in FAMILIES:
        return False
    return FAMILIES.index(other) < FAMILIES.index(one)
