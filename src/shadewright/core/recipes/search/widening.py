"""The search itself: every set of up to four dyes, from one dye upwards.

Each set begins where the best of its parts ended. With v of equation 6 kept at each
end, K · v < 0 says that a further dye would help there; where it would not, the set
has nothing to gain and is not tried. That is a local test, no proof: pairs are scanned
besides and triples begin at the linear solution where that lies within the limits.

Sets of four are tried in the order of their forecast, until the next would end well
above the last of the best already found.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.recipes.search.descending import (
    CHUNK,
    Patience,
    Sought,
    descended,
    descended_in_chunks,
)
from shadewright.core.recipes.search.evaluating import value_of
from shadewright.core.recipes.search.forecasting import forecast
from shadewright.core.recipes.search.parts import Recipes, best_part, joined, slopes
from shadewright.core.recipes.search.sets import MOST_DYES, Rank
from shadewright.core.recipes.search.starting import linear_triples, scanned

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

_MARGIN, _SLACK, _BAR = 1.3, 0.05, 3
_FINE = Patience(steps=12, gain=1e-6, enough=1e-9)


@dataclass(frozen=True, kw_only=True, eq=False)
class Widened:
    """How far a search is: the share of it that is done, and recipes by size."""

    share: float
    levels: tuple[Recipes, ...]


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
    *_, last = widening(sought, ranks, top=top)
    return best_of(sought, last, top=top)


def widening(sought: Sought, ranks: tuple[Rank, ...], *, top: int) -> Iterator[Widened]:
    """Search the sets of one dye, of two, and so on, and say each time how far it is.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    ranks : tuple of Rank
        The sets, by size. [-]
    top : int
        How many recipes are asked for. [-]

    Yields
    ------
    Widened
        All that was found so far. Who asks no further stops the search. [%]
    """
    levels: tuple[Recipes, ...] = ()
    yield Widened(share=0.0, levels=levels)
    for size, rank in enumerate(ranks, start=1):
        if size == MOST_DYES:
            yield from _fours(sought, rank, levels, top)
        else:
            levels = (*levels, _RULES[size](sought, rank, levels))
            yield Widened(share=size / len(ranks), levels=levels)


def best_of(sought: Sought, found: Widened, *, top: int) -> Recipes:
    """Return the best of all that was found, brought to their very bottom.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    found : Widened
        Recipes of sets of each size. [%]
    top : int
        How many recipes. [-]

    Returns
    -------
    Recipes
        The best, in order. [%]
    """
    return _polished(sought, [_bare(sought), *found.levels], top)


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


def _singles(sought: Sought, rank: Rank, _below: tuple[Recipes, ...]) -> Recipes:
    """Return each dye by itself, from a scan."""
    return _descended(sought, rank.sets, scanned(sought, rank.sets))


def _pairs(sought: Sought, rank: Rank, below: tuple[Recipes, ...]) -> Recipes:
    """Return pairs from a scan, or from the better dye where that is nearer."""
    first = _descended(sought, rank.sets, scanned(sought, rank.sets))
    return _or_from_below(sought, rank, below[-1], first)


def _triples(sought: Sought, rank: Rank, below: tuple[Recipes, ...]) -> Recipes:
    """Return triples from the linear solution, or else from the best pair in each."""
    import numpy as np

    start, is_inside = linear_triples(sought, rank.sets)
    amounts, values = np.zeros(rank.sets.shape), np.full(rank.count, np.inf)
    some = np.flatnonzero(is_inside)
    found = _descended(sought, rank.sets[:, some], start[:, some])
    amounts[:, some], values[some] = found.amounts, found.values
    first = Recipes(sets=rank.sets, amounts=amounts, values=values)
    return _or_from_below(sought, rank, below[-1], first)


def _or_from_below(
    sought: Sought, rank: Rank, below: Recipes, first: Recipes
) -> Recipes:
    """Return each set's recipe, or the one from its best part where that is nearer."""
    import numpy as np

    slot, base = best_part(below, rank)
    which = np.flatnonzero((below.values[base] < first.values) & (first.values > 1e-6))
    slot, base = slot[which], base[which]
    amounts, values = joined(below.amounts, slot, base), below.values[base]
    helps = np.flatnonzero(slopes(sought, below)[rank.sets[slot, which], base] < 0.0)
    found = _descended(sought, rank.sets[:, which[helps]], amounts[:, helps])
    amounts[:, helps], values[helps] = found.amounts, found.values
    is_nearer = values < first.values[which]
    better = which[is_nearer]
    first.values[better] = values[is_nearer]
    first.amounts[:, better] = amounts[:, is_nearer]
    return first


_RULES = {1: _singles, 2: _pairs, 3: _triples}


@dataclass(frozen=True, kw_only=True, eq=False)
class _Hopes:
    """Sets of four in the order of their forecast, the best part and what it lacks."""

    sets: "Whole"
    slot: "Whole"
    base: "Whole"
    hope: "NDArray[np.float32]"


def _fours(
    sought: Sought, rank: Rank, levels: tuple[Recipes, ...], top: int
) -> Iterator[Widened]:
    hoped = _hoped_for(sought, rank, levels[-1])
    fours: tuple[Recipes, ...] = ()
    for first in range(0, len(hoped.hope), 2 * CHUNK):
        bar = _last_of_the_best([*levels, *fours], max(1, top // _BAR))
        now = slice(first, first + 2 * CHUNK)
        near = hoped.hope[now] < (_MARGIN * bar**0.5 + _SLACK) ** 2
        if not near.any():
            break
        start = joined(levels[-1].amounts, hoped.slot[now][near], hoped.base[now][near])
        found = _descended(sought, hoped.sets[:, now][:, near], start, bar + 1e-4)
        fours = (*fours, found)
        share = min(1.0, now.stop / len(hoped.hope))
        whole = (MOST_DYES - 1 + share) / MOST_DYES
        yield Widened(share=whole, levels=(*levels, *fours))
    yield Widened(share=1.0, levels=(*levels, *fours))


def _hoped_for(sought: Sought, rank: Rank, below: Recipes) -> _Hopes:
    """Return the sets of four that a further dye helps, by what it should gain."""
    import numpy as np

    slot, base = best_part(below, rank)
    dye = rank.sets[slot, np.arange(rank.count)]
    which = np.flatnonzero(slopes(sought, below)[dye, base] < 0.0)
    parts, place = np.unique(base[which], return_inverse=True)
    foretold = forecast(sought, below.sets[:, parts], below.amounts[:, parts])
    hope = foretold[dye[which], place]
    order = np.argsort(hope)
    which = which[order]
    return _Hopes(
        sets=rank.sets[:, which], slot=slot[which], base=base[which], hope=hope[order]
    )


def _last_of_the_best(levels: Sequence[Recipes], top: int) -> float:
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
