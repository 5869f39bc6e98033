"""Yarn split over pots that stand side by side, in as few fillings as can be.

A pot that cools overnight is filled once a day. Then the baths of one wish are not
alike but in proportion: a large pot and a small one go on together, each as full as the
other. No pot is filled twice where once will do, and then there are as few baths as can
be, in the largest pots. Skeins are dealt out heaviest first: one to every pot, then
each to the pot that is least full with it (common practice).
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import count
from math import ceil

from shadewright.core.planning.loads import (
    SplitPot,
    pot_loads_g,
    require_few,
)
from shadewright.core.planning.splits import SplitBath
from shadewright.core.quantities import is_more

_ROUNDING = 1e-9


def split_side_by_side(
    *,
    skeins_g: Sequence[float],
    pots: Sequence[SplitPot],
    liquor_ratio: float,
    least_baths: int = 1,
) -> tuple[SplitBath, ...]:
    """Return skeins split in as few fillings of a pot, then as few baths, as can be.

    Parameters
    ----------
    skeins_g : sequence of float
        What each skein weighs. [g]
    pots : sequence of SplitPot
        The pots that may be taken. [-]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn. [L/kg]
    least_baths : int
        At least so many baths, where more are wanted than are needed. [-]

    Returns
    -------
    tuple of SplitBath
        The baths, large pots first; a single one in the smallest pot that holds it. [-]

    Raises
    ------
    MissingError
        If there is no skein or no pot.
    OutOfRangeError
        If a number is out of range, or no pot takes the heaviest skein.

    Examples
    --------
    >>> pots = [
    ...     SplitPot(name="Big", volume_l=30.0),
    ...     SplitPot(name="Mid", volume_l=20.0),
    ... ]
    >>> baths = split_side_by_side(skeins_g=[100.0] * 14, pots=pots, liquor_ratio=30.0)
    >>> [(bath.pot, len(bath.skeins_g)) for bath in baths]
    [('Big', 9), ('Mid', 5)]
    """
    loads = pot_loads_g(pots=pots, liquor_ratio=liquor_ratio, skeins_g=skeins_g)
    require_few(ceil(sum(skeins_g) / max(loads.values()) * (1 - _ROUNDING)))
    least_g = min(skeins_g)
    fit = [name for name in reversed(loads) if not is_more(least_g, than=loads[name])]
    least = min(max(1, least_baths), len(skeins_g))
    dealt = (
        (chosen, _dealt(skeins_g, [loads[name] for name in chosen]))
        for chosen in _choices(fit, least)
    )
    return next(_baths(chosen, had, loads) for chosen, had in dealt if had is not None)


def _choices(names: Sequence[str], least: int) -> Iterator[list[str]]:
    # Large pots first, but what one pot holds goes into the smallest that does.
    if least == 1:
        yield from ([name] for name in reversed(names))
    for turns in count(1):
        every = [name for name in names for _ in range(turns)]
        yield from (every[:baths] for baths in range(least, len(every) + 1))


def _dealt(
    skeins_g: Sequence[float], loads_g: Sequence[float]
) -> list[list[float]] | None:
    """Deal skeins out; None where one finds no room."""
    if is_more(sum(skeins_g), than=sum(loads_g)):
        return None
    dealt: list[list[float]] = [[] for _ in loads_g]
    filled_g = [0.0] * len(loads_g)
    for skein_g in sorted(skeins_g, reverse=True):
        shares = [
            (filled + skein_g) / load
            for filled, load in zip(filled_g, loads_g, strict=True)
        ]
        fit = [at for at, share in enumerate(shares) if not is_more(share, than=1.0)]
        if not fit:
            return None
        pot = min(fit, key=_emptiest(filled_g, shares))
        dealt[pot].append(skein_g)
        filled_g[pot] += skein_g
    return dealt


def _emptiest(
    filled_g: Sequence[float], shares: Sequence[float]
) -> Callable[[int], tuple[bool, float]]:
    return lambda at: (filled_g[at] > 0, shares[at])


def _baths(
    chosen: Sequence[str], dealt: Sequence[Sequence[float]], loads: dict[str, float]
) -> tuple[SplitBath, ...]:
    """Return the baths; a pot that got no skein is not filled."""
    return tuple(
        SplitBath(
            pot=name,
            turn=chosen[: at + 1].count(name),
            skeins_g=tuple(skeins_g),
            load_g=loads[name],
        )
        for at, (name, skeins_g) in enumerate(zip(chosen, dealt, strict=True))
        if skeins_g
    )
