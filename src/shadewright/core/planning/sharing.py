"""Whole pots, and whose skeins: what a split is rounded to, and for whom it is dyed."""

from collections.abc import Sequence
from dataclasses import replace
from math import floor, inf

from shadewright.core.planning.splits import SplitBath
from shadewright.core.quantities import require_mass

_ROUNDING = 1e-9


def filled_up(
    *, baths: Sequence[SplitBath], skein_g: float, most_g: float = inf
) -> tuple[tuple[SplitBath, ...], int]:
    """Return baths with their pots filled up with more skeins, and how many those are.

    Parameters
    ----------
    baths : sequence of SplitBath
        A split. [-]
    skein_g : float
        What a further skein weighs; above zero. [g]
    most_g : float
        No bath is filled beyond this, so that baths stay alike. [g]

    Returns
    -------
    tuple of tuple of SplitBath and int
        The same baths, each as full as its pot allows, and the skeins that came in. [1]

    Raises
    ------
    OutOfRangeError
        If the weight is out of range.

    Examples
    --------
    >>> bath = SplitBath(pot="P1", turn=1, skeins_g=(100.0,), load_g=303.0)
    >>> whole, more = filled_up(baths=[bath], skein_g=100.0)
    >>> whole[0].fibre_g, more
    (300.0, 2)
    """
    require_mass(skein_g, name="A skein", argument="skein_g")
    whole = tuple(_filled(bath, skein_g, min(bath.load_g, most_g)) for bath in baths)
    more = sum(len(bath.skeins_g) for bath in whole)
    return whole, more - sum(len(bath.skeins_g) for bath in baths)


def allotted(
    *, places: Sequence[int], wanted: Sequence[int]
) -> tuple[tuple[int, ...], ...]:
    """Return how many skeins of each bath are for each wish, whole wishes first.

    Parameters
    ----------
    places : sequence of int
        Skeins of each bath. [1]
    wanted : sequence of int
        Skeins that each wish wants. [1]

    Returns
    -------
    tuple of tuple of int
        A row a wish, in their order: skeins of each bath. [1]

    Notes
    -----
    Skeins for one jumper come from one lot where one bath holds them: the largest
    wish is served first, from the bath that it leaves least room in, and only what no
    bath holds whole is shared out, the roomiest bath first (common practice).

    Examples
    --------
    >>> allotted(places=[4, 3], wanted=[2, 4])
    ((0, 2), (4, 0))
    """
    left = list(places)
    rows = [[0] * len(left) for _ in wanted]
    for wish in sorted(range(len(wanted)), key=lambda at: -wanted[at]):
        want = wanted[wish]
        while want and any(left):
            bath = _serving(left, want)
            taken = min(want, left[bath])
            rows[wish][bath] += taken
            left[bath] -= taken
            want -= taken
    return tuple(map(tuple, rows))


def _serving(left: Sequence[int], want: int) -> int:
    """Return the bath that holds a wish with least to spare, else the roomiest."""
    whole = [bath for bath, room in enumerate(left) if room >= want]
    if whole:
        return min(whole, key=lambda bath: left[bath])
    return max(range(len(left)), key=lambda bath: left[bath])


def _filled(bath: SplitBath, skein_g: float, room_g: float) -> SplitBath:
    more = max(0, floor((room_g - bath.fibre_g) / skein_g * (1 + _ROUNDING)))
    return replace(bath, skeins_g=bath.skeins_g + (skein_g,) * more)
