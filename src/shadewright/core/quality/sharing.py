"""Lots that may share a sweater: alike to each other, not only to the standard.

Two lots may each lie within 1 of the standard and 2 from one another, on either side of
it. So every pair of a group is looked at.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations
from typing import Final

from shadewright.core.colour import Lab, ciede2000
from shadewright.errors import OutOfRangeError

MOST_LOTS: Final = 100
"""More lots than so many are not held against each other at once. [-]"""

Neighbours = Mapping[str, frozenset[str]]


@dataclass(frozen=True, kw_only=True)
class SharingGroup:
    """Lots every two of which are alike; ``widest`` is the largest distance."""

    lots: tuple[str, ...]
    widest: float


def sharing_groups(
    lots: Mapping[str, Lab], *, tolerance: float
) -> tuple[SharingGroup, ...]:
    """Return every group of lots that may be worked up together.

    ΔE(i, j) ≤ tolerance for all i, j of a group                   (4)

    Parameters
    ----------
    lots : mapping of str to Lab
        Colour by lot number. [1]
    tolerance : float
        The largest CIEDE2000 that may stand side by side. [1]

    Returns
    -------
    tuple of SharingGroup
        Groups to which no further lot could be added, the largest first; a lot may
        stand in several, and a lot that goes with no other stands alone. [-]

    Raises
    ------
    OutOfRangeError
        If there are more than a hundred lots.

    References
    ----------
    .. [bron1973] version 2, all cliques of a graph

    Examples
    --------
    >>> lots = {"A": Lab(50, 0, 0), "B": Lab(50.8, 0, 0), "C": Lab(51.6, 0, 0)}
    >>> [group.lots for group in sharing_groups(lots, tolerance=1.0)]
    [('A', 'B'), ('B', 'C')]
    """
    if len(lots) > MOST_LOTS:
        raise OutOfRangeError(
            name="The number of lots",
            given=f"{len(lots)}",
            allowed=f"at most {MOST_LOTS}",
            advice="Take the lots of one colourway and base.",
            argument="lots",
        )
    apart = {
        frozenset(pair): ciede2000(lots[pair[0]], lots[pair[1]])
        for pair in combinations(lots, 2)
    }
    near: Neighbours = {
        lot: frozenset(
            other
            for other in lots
            if other != lot and apart[frozenset((lot, other))] <= tolerance
        )
        for lot in lots
    }
    groups = [sorted(each) for each in _cliques(near, frozenset(), frozenset(lots))]
    groups.sort(key=lambda names: (-len(names), names))
    return tuple(
        SharingGroup(
            lots=tuple(names),
            widest=max(
                (apart[frozenset(pair)] for pair in combinations(names, 2)), default=0.0
            ),
        )
        for names in groups
    )


def _cliques(
    near: Neighbours,
    group: frozenset[str],
    open_: frozenset[str],
    done: frozenset[str] = frozenset(),
) -> Iterator[frozenset[str]]:
    """Return all groups that hold this one and cannot grow.

    Yields
    ------
    frozenset of str
        A group; ``open_`` may join it, ``done`` was tried before.
    """
    if not open_ | done:
        if group:
            yield group
        return
    pivot = max(sorted(open_ | done), key=lambda lot: len(near[lot] & open_))
    for lot in sorted(open_ - near[pivot]):
        yield from _cliques(near, group | {lot}, open_ & near[lot], done & near[lot])
        open_ -= {lot}
        done |= {lot}
