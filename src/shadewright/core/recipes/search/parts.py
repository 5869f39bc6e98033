"""Where a larger set begins: at its best part, if the dye it lacks helps there."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.recipes.search.descending import Sought, chunks
from shadewright.core.recipes.search.evaluating import slope_by_ks
from shadewright.core.recipes.search.sets import Rank

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

_IN_USE = 1e-4


@dataclass(frozen=True, kw_only=True, eq=False)
class Recipes:
    """Recipes of sets of one size: ``sets`` and ``amounts`` (size, count), f."""

    sets: "Whole"
    amounts: "Floats"
    values: "Floats"

    def in_use(self) -> "Floats":
        """Return f of the sets that use all their dyes; the others count no twice."""
        import numpy as np

        return np.where((self.amounts > _IN_USE).all(0), self.values, np.inf)


def best_part(below: Recipes, rank: Rank) -> "tuple[Whole, Whole]":
    """Return which dye the best part of each set lacks, and where that part stands.

    Parameters
    ----------
    below : Recipes
        The recipes of the sets one smaller. [%]
    rank : Rank
        The sets. [-]

    Returns
    -------
    tuple of (ndarray, shape (count,); ndarray, shape (count,))
        The place of the dye in the set; the part's place among those below. [-]
    """
    import numpy as np

    base, slot = rank.within[0].copy(), np.zeros(rank.count, dtype=np.int8)
    least = below.values[base]
    for place in range(1, len(rank.within)):
        part = rank.within[place]
        value = below.values[part]
        is_less = value < least
        least, base = np.where(is_less, value, least), np.where(is_less, part, base)
        slot[is_less] = place
    return slot, base


def joined(amounts: "Floats", slot: "Whole", base: "Whole") -> "Floats":
    """Return the recipes of parts with nothing of one dye put in at a slot.

    Parameters
    ----------
    amounts : ndarray, shape (size, parts)
        The recipes of all parts. [%]
    slot : ndarray, shape (count,)
        Where the dye stands in each set. [-]
    base : ndarray, shape (count,)
        Which part each set begins from. [-]

    Returns
    -------
    ndarray, shape (size + 1, count)
        Where each set begins. [%]
    """
    import numpy as np

    found = np.zeros((len(amounts) + 1, len(base)))
    for row, part in enumerate(amounts):
        found[row + (slot <= row), np.arange(len(base))] = part[base]
    return found


def slopes(sought: Sought, recipes: Recipes) -> "Floats":
    """Return how f changes with a little of each dye, at each recipe.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    recipes : Recipes
        Recipes. [%]

    Returns
    -------
    ndarray, shape (n, count)
        d(f/2)/dx of every dye. [1]
    """
    import numpy as np

    found = np.empty((sought.dyes.count, len(recipes.values)))
    for chunk in chunks(len(recipes.values)):
        mixed = sought.dyes.of(recipes.sets[:, chunk])
        added = mixed.added(recipes.amounts[:, chunk])[0]
        found[:, chunk] = sought.dyes.unit @ slope_by_ks(sought.aim, added)
    return found
