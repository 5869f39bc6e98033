"""Sets of swatches as they are laid out by hand: ladders, and mixes in parts.

A **ladder** halves the depth from rung to rung, for a dye's colour follows the
logarithm of its depth: 2, 1, 0.5, 0.25 %. **Mixes** share one depth among two or three
dyes in n parts: from all of the one to all of the other, in a triangle for three.
"""

from collections.abc import Sequence
from itertools import combinations, pairwise
from math import comb

from shadewright.core.mixing.swatches import MOST_DEPTH_PERCENT, Doses
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.errors import OutOfRangeError

MOST_RUNGS = 10
MOST_PARTS = 10
_DYES_OF_A_MIX = (2, 3)


def ladder_depths(*, top_percent: float, rungs: int) -> tuple[float, ...]:
    """Return the depths of a ladder, the deepest first.

    d_k = d_1 / 2^(k − 1)                                            (4)

    Parameters
    ----------
    top_percent : float
        Deepest rung, d_1; above 0 to 20. [%]
    rungs : int
        How many; 1 to 10. [-]

    Returns
    -------
    tuple of float
        Depths, each half of the one before. [%]

    Raises
    ------
    OutOfRangeError
        If a number is out of range.

    Notes
    -----
    Halving is common practice.

    Examples
    --------
    >>> ladder_depths(top_percent=4.0, rungs=4)
    (4.0, 2.0, 1.0, 0.5)
    """
    require_above_zero(
        top_percent,
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name="Deepest rung",
        argument="top_percent",
    )
    require_between(
        rungs, least=1, most=MOST_RUNGS, unit="", name="Rungs", argument="rungs"
    )
    return tuple(top_percent / 2**rung for rung in range(rungs))


def mixes_in_parts(
    *, dyes: Sequence[str], total_percent: float, parts: int
) -> tuple[Doses, ...]:
    """Return every mix of two or three dyes whose parts add up.

    Of three dyes in n parts there are (n + 1)(n + 2)/2                (5)

    Parameters
    ----------
    dyes : sequence of str
        Two dyes or three. [-]
    total_percent : float
        Depth of all dyes together; above 0 to 20. [%]
    parts : int
        Parts that are shared out, n; 1 to 10. [-]

    Returns
    -------
    tuple of tuple
        Doses of each mix, from all of the first dye to all of the last. [%]

    Raises
    ------
    OutOfRangeError
        If there are fewer dyes or more, or a number is out of range.

    Notes
    -----
    A dye with no part of a mix is left out of it, so that the corners are dyes alone.
    Source: counting.

    Examples
    --------
    >>> mixes_in_parts(dyes=["Gorse", "Sloe"], total_percent=1.0, parts=2)
    ((('Gorse', 1.0),), (('Gorse', 0.5), ('Sloe', 0.5)), (('Sloe', 1.0),))
    """
    if len(dyes) not in _DYES_OF_A_MIX:
        raise OutOfRangeError(
            name="Dyes to mix", given=str(len(dyes)), allowed="2 or 3", argument="dyes"
        )
    require_above_zero(
        total_percent,
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name="Depth together",
        argument="total_percent",
    )
    require_between(
        parts, least=1, most=MOST_PARTS, unit="", name="Parts", argument="parts"
    )
    return tuple(
        tuple(
            (dye, total_percent * share / parts)
            for dye, share in zip(dyes, shares, strict=True)
            if share
        )
        for shares in _shared_out(parts, among=len(dyes))
    )


def mixes_count(*, dyes: int, parts: int) -> int:
    """Return how many mixes of some dyes there are in n parts.

    Parameters
    ----------
    dyes : int
        How many dyes, k. [-]
    parts : int
        Parts that are shared out, n. [-]

    Returns
    -------
    int
        (n + k − 1 over k − 1), corners and all. [-]

    Examples
    --------
    >>> mixes_count(dyes=3, parts=4), mixes_count(dyes=3, parts=10)
    (15, 66)
    """
    return comb(parts + dyes - 1, dyes - 1)


def _shared_out(parts: int, *, among: int) -> list[tuple[int, ...]]:
    """Return every way to share parts out, the most for the first one first.

    Bars stand between the dyes: their places among the parts say who has how many.
    """
    places = parts + among - 1
    edges = ((-1, *bars, places) for bars in combinations(range(places), among - 1))
    found = (tuple(b - a - 1 for a, b in pairwise(each)) for each in edges)
    return sorted(found, reverse=True)
