"""All sets of dyes, smaller ones before larger, and where each set's parts stand.

A set of four holds four sets of three. The best recipe of one of them is where the
search for the four begins.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Whole = NDArray[np.signedinteger]

MOST_DYES = 4


@dataclass(frozen=True, kw_only=True, eq=False)
class Rank:
    """All sets of one size: ``sets`` (size, count), each in order.

    ``within`` (size, count) says where, among the sets one smaller, the set stands
    that is left when that place is taken out.
    """

    sets: "Whole"
    within: "Whole"

    @property
    def count(self) -> int:
        """How many sets."""
        return int(self.sets.shape[1])


def ranks_of(
    dyes: int, *, most_dyes: int = MOST_DYES, wanted: tuple[int, ...] = ()
) -> tuple[Rank, ...]:
    """Return all sets of up to so many dyes.

    Parameters
    ----------
    dyes : int
        How many dyes there are. [-]
    most_dyes : int
        Dyes in a recipe, 1 to 4. [-]
    wanted : tuple of int
        Dyes that are in every recipe, whether or not a set names them. [-]

    Returns
    -------
    tuple of Rank
        Sets of one, of two, and so on; none that would hold more than so many dyes
        once the wanted ones are in it. [-]
    """
    import numpy as np

    is_wanted = np.isin(np.arange(dyes), wanted)
    ranks: list[Rank] = []
    sets = np.arange(dyes, dtype=np.int16)[None]
    places = np.zeros((), dtype=np.int32)
    for size in range(1, min(most_dyes, dyes) + 1):
        if size > 1:
            sets = _one_more(sets, dyes)
        others = (~is_wanted[sets]).sum(0)
        sets = sets[:, others + is_wanted.sum() <= most_dyes]
        within = np.empty(sets.shape, dtype=np.int32)
        for slot in range(size):
            within[slot] = places[_without(sets, slot)]
        ranks.append(Rank(sets=sets, within=within))
        if size < most_dyes:
            places = np.zeros((dyes,) * size, dtype=np.int32)
            places[tuple(sets)] = np.arange(sets.shape[1])
    return tuple(ranks)


def _one_more(sets: "Whole", dyes: int) -> "Whole":
    """Return each set with each later dye, in order."""
    import numpy as np

    more = dyes - 1 - sets[-1]
    whole = np.repeat(sets, more, axis=1)
    first = np.repeat(np.cumsum(more) - more, more)
    last = whole[-1] + 1 + np.arange(whole.shape[1]) - first
    return np.concatenate([whole, last[None].astype(whole.dtype)])


def _without(sets: "Whole", slot: int) -> "tuple[Whole, ...]":
    return tuple(row for place, row in enumerate(sets) if place != slot)
