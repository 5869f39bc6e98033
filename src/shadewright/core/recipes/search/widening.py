"""The search itself: every set of up to four dyes, from one dye upwards.

Each set begins where the best of its parts ended. With v of equation 6 kept at each
end, K · v < 0 says that a further dye would help there; where it would not, the set
has nothing to gain and is not tried. That is a local test, no proof: pairs are scanned
besides and triples begin at the linear solution where that lies within the limits.

Sets of four are tried in the order of their forecast, until the next would end well
above the last of the best already found.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.recipes.search.descending import (
    CHUNK,
    Patience,
    Sought,
    chunks,
    descended,
    descended_in_chunks,
)
from shadewright.core.recipes.search.evaluating import slope_by_ks, value_of
from shadewright.core.recipes.search.forecasting import forecast
from shadewright.core.recipes.search.sets import MOST_DYES, Rank
from shadewright.core.recipes.search.starting import linear_triples, scanned

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

_IN_USE = 1e-4
_MARGIN, _SLACK, _BAR = 1.3, 0.05, 3
_FINE = Patience(steps=12, gain=1e-6, enough=1e-9)


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


def searched(sought: Sought, ranks: tuple[Rank, ...], *, top: int) -> Recipes:
    """Return the best recipes of all sets.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    ranks : tuple of Rank
        The sets, by size. [-]
    top : int
        How many recipes. [-]

    Returns
    -------
    Recipes
        The best, in order; smaller sets are filled up with no dye (place n). Of a
        palette without dyes or sets only the bare yarn. [%]
    """
    levels: list[Recipes] = []
    for size, rank in enumerate(ranks, start=1):
        if size == 1:
            levels.append(_descended(sought, rank.sets, scanned(sought, rank.sets)))
        elif size == 2:
            levels.append(_pairs(sought, rank, levels[-1]))
        elif size == 3:
            levels.append(_triples(sought, rank, levels[-1]))
        else:
            levels.append(_fours(sought, rank, levels, top))
    return _polished(sought, [_bare(sought), *levels], top)


def _bare(sought: Sought) -> Recipes:
    """Return the recipe without any dye."""
    import numpy as np

    nothing = np.zeros((len(sought.aim.ground), 1))
    return Recipes(
        sets=np.zeros((0, 1), dtype=np.intp),
        amounts=np.zeros((0, 1)),
        values=value_of(sought.aim, nothing),
    )


def _descended(
    sought: Sought, sets: "Whole", start: "Floats", bar: float | None = None
) -> Recipes:
    patience = Patience(bar=bar)
    amounts, values = descended_in_chunks(sought, sets, start, patience)
    return Recipes(sets=sets, amounts=amounts, values=values)


def _pairs(sought: Sought, rank: Rank, singles: Recipes) -> Recipes:
    """Return pairs from a scan, or from the better dye where that is nearer."""
    first = _descended(sought, rank.sets, scanned(sought, rank.sets))
    return _or_from_below(sought, rank, singles, first)


def _triples(sought: Sought, rank: Rank, pairs: Recipes) -> Recipes:
    """Return triples from the linear solution, or else from the best pair in each."""
    import numpy as np

    start, is_inside = linear_triples(sought, rank.sets)
    amounts, values = np.zeros(rank.sets.shape), np.full(rank.count, np.inf)
    some = np.flatnonzero(is_inside)
    found = _descended(sought, rank.sets[:, some], start[:, some])
    amounts[:, some], values[some] = found.amounts, found.values
    first = Recipes(sets=rank.sets, amounts=amounts, values=values)
    return _or_from_below(sought, rank, pairs, first)


def _or_from_below(
    sought: Sought, rank: Rank, below: Recipes, first: Recipes
) -> Recipes:
    """Return each set's recipe, or the one from its best part where that is nearer."""
    import numpy as np

    slot, base = _best_part(below, rank)
    which = np.flatnonzero((below.values[base] < first.values) & (first.values > 1e-6))
    slot, base = slot[which], base[which]
    amounts, values = _joined(below.amounts, slot, base), below.values[base]
    helps = np.flatnonzero(_slopes(sought, below)[rank.sets[slot, which], base] < 0.0)
    found = _descended(sought, rank.sets[:, which[helps]], amounts[:, helps])
    amounts[:, helps], values[helps] = found.amounts, found.values
    is_nearer = values < first.values[which]
    better = which[is_nearer]
    first.values[better] = values[is_nearer]
    first.amounts[:, better] = amounts[:, is_nearer]
    return first


def _best_part(below: Recipes, rank: Rank) -> "tuple[Whole, Whole]":
    """Return which dye the best part of each set lacks, and where that part stands."""
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


def _joined(amounts: "Floats", slot: "Whole", base: "Whole") -> "Floats":
    """Return the recipes of parts with nothing of one dye put in at a slot."""
    import numpy as np

    found = np.zeros((len(amounts) + 1, len(base)))
    for row, part in enumerate(amounts):
        found[row + (slot <= row), np.arange(len(base))] = part[base]
    return found


def _slopes(sought: Sought, recipes: Recipes) -> "Floats":
    """Return d(f/2)/dx of every dye at each recipe (n, count)."""
    import numpy as np

    found = np.empty((sought.dyes.count, len(recipes.values)))
    for chunk in chunks(len(recipes.values)):
        mixed = sought.dyes.of(recipes.sets[:, chunk])
        added = mixed.added(recipes.amounts[:, chunk])[0]
        found[:, chunk] = sought.dyes.unit @ slope_by_ks(sought.aim, added)
    return found


def _fours(sought: Sought, rank: Rank, levels: list[Recipes], top: int) -> Recipes:
    """Return the sets of four that are worth it, in the order of their forecast."""
    import numpy as np

    below = levels[-1]
    slot, base = _best_part(below, rank)
    dye = rank.sets[slot, np.arange(rank.count)]
    which = np.flatnonzero(_slopes(sought, below)[dye, base] < 0.0)
    slot, base, dye = slot[which], base[which], dye[which]
    parts, place = np.unique(base, return_inverse=True)
    foretold = forecast(sought, below.sets[:, parts], below.amounts[:, parts])
    hope = foretold[dye, place]
    order = np.argsort(hope)
    found = [
        Recipes(sets=rank.sets[:, :0], amounts=np.zeros((4, 0)), values=np.zeros(0))
    ]
    for first in range(0, len(order), 2 * CHUNK):
        bar = _last_of_the_best([*levels, *found], max(1, top // _BAR))
        now = order[first : first + 2 * CHUNK]
        now = now[hope[now] < (_MARGIN * bar**0.5 + _SLACK) ** 2]
        if not len(now):
            break
        start = _joined(below.amounts, slot[now], base[now])
        sets = rank.sets[:, which[now]]
        found.append(_descended(sought, sets, start, bar + 1e-4))
    return _together(found)


def _together(found: list[Recipes]) -> Recipes:
    import numpy as np

    return Recipes(
        sets=np.concatenate([each.sets for each in found], 1),
        amounts=np.concatenate([each.amounts for each in found], 1),
        values=np.concatenate([each.values for each in found]),
    )


def _last_of_the_best(levels: list[Recipes], top: int) -> float:
    """Return f of the last of the best."""
    import numpy as np

    values = np.concatenate([level.in_use() for level in levels])
    last = min(top, len(values)) - 1
    return float(np.partition(values, last)[last])


def _polished(sought: Sought, levels: list[Recipes], top: int) -> Recipes:
    """Return the best of all levels, brought to their very bottom together."""
    import numpy as np

    values = np.concatenate([level.in_use() for level in levels])
    best = np.argsort(values, kind="stable")[: 2 * top]
    best = best[np.isfinite(values[best])]
    sets = np.full((MOST_DYES, len(best)), sought.dyes.count)
    amounts = np.zeros(sets.shape)
    first = 0
    for level in levels:
        here = np.flatnonzero((best >= first) & (best < first + len(level.values)))
        sets[: len(level.sets), here] = level.sets[:, best[here] - first]
        amounts[: len(level.sets), here] = level.amounts[:, best[here] - first]
        first += len(level.values)
    amounts, values = descended(
        sought.aim, sought.dyes.of(sets), amounts, sought.box_of(sets), _FINE
    )
    order = np.argsort(values, kind="stable")[:top]
    return Recipes(sets=sets[:, order], amounts=amounts[:, order], values=values[order])
