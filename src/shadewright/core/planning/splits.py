"""Yarn split into baths: as few as the pots allow, and as alike as can be.

Baths of one wish are one batch and separate lots; the nearer they are to each other in
weight, the nearer their colours (common practice).

Skeins are dealt out heaviest first, each to the bath that is lightest so far. That is
Graham's rule, whose heaviest bath is never more than 4/3 − 1/(3 n) times that of the
best way to deal them to n baths [graham1969]_. Where it does not fit, there is one bath
more.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from shadewright.core.planning.loads import (
    SplitPot,
    loads_g,
    pot_loads_g,
    require_few,
)
from shadewright.core.quantities import is_more, require_mass

_ROUNDING = 1e-9


@dataclass(frozen=True, kw_only=True)
class SplitBath:
    """A bath of a split: its pot, which filling of it, its skeins, what the pot takes.

    ``turn`` counts the baths of this split in one pot, from 1.
    """

    pot: str
    turn: int
    skeins_g: tuple[float, ...]
    load_g: float

    @property
    def fibre_g(self) -> float:
        """All its yarn, in g."""
        return sum(self.skeins_g)


def split_skeins(
    *,
    skeins_g: Sequence[float],
    pots: Sequence[SplitPot],
    liquor_ratio: float,
    least_baths: int = 1,
) -> tuple[SplitBath, ...]:
    """Return skeins split into baths, the heaviest bath first.

    Parameters
    ----------
    skeins_g : sequence of float
        What each skein weighs. [g]
    pots : sequence of SplitPot
        The pots that may be taken, each as often as it likes. [-]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn. [L/kg]
    least_baths : int
        At least so many baths, where more are wanted than are needed. [-]

    Returns
    -------
    tuple of SplitBath
        As few baths as fit; each in a pot that holds it, by turns, small pots first.

    Raises
    ------
    MissingError
        If there is no skein or no pot.
    OutOfRangeError
        If a number is out of range, or no pot takes the heaviest skein.

    Examples
    --------
    >>> pots = [SplitPot(name="P1", volume_l=10.0), SplitPot(name="P2", volume_l=10.0)]
    >>> baths = split_skeins(skeins_g=[100.0] * 8, pots=pots, liquor_ratio=30.0)
    >>> [(bath.pot, bath.turn, bath.fibre_g) for bath in baths]
    [('P1', 1, 300.0), ('P2', 1, 300.0), ('P1', 2, 200.0)]
    """
    loads = pot_loads_g(pots=pots, liquor_ratio=liquor_ratio, skeins_g=skeins_g)
    most_g = max(loads.values())
    least = ceil(sum(skeins_g) / most_g * (1 - _ROUNDING))
    count = max(1, least, min(least_baths, len(skeins_g)))
    require_few(count)
    dealt = _dealt(skeins_g, count)
    while is_more(max(map(sum, dealt)), than=most_g):
        count += 1
        dealt = _dealt(skeins_g, count)
    return _in_pots(dealt, loads)


def even_parts_g(
    *,
    fibre_g: float,
    pots: Sequence[SplitPot],
    liquor_ratio: float,
    least_baths: int = 1,
) -> tuple[float, ...]:
    """Return loose yarn, or yarn on a cone, in as few equal parts as pots take.

    Parameters
    ----------
    fibre_g : float
        All the yarn; above zero. [g]
    pots : sequence of SplitPot
        The pots that may be taken. [-]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn. [L/kg]
    least_baths : int
        At least so many parts. [-]

    Returns
    -------
    tuple of float
        One part a bath, to be split as if each were a skein. [g]

    Raises
    ------
    MissingError
        If there is no pot.
    OutOfRangeError
        If a number is out of range.

    Examples
    --------
    >>> even_parts_g(
    ...     fibre_g=750.0,
    ...     pots=[SplitPot(name="P1", volume_l=10.0)],
    ...     liquor_ratio=30.0,
    ... )
    (250.0, 250.0, 250.0)
    """
    require_mass(fibre_g, name="The weight of the yarn", argument="fibre_g")
    most_g = max(loads_g(pots=pots, liquor_ratio=liquor_ratio).values())
    count = max(1, least_baths, ceil(fibre_g / most_g * (1 - _ROUNDING)))
    require_few(count)
    return (fibre_g / count,) * count


def _dealt(skeins_g: Sequence[float], count: int) -> list[list[float]]:
    """Deal skeins out, heaviest first, each to the bath that is lightest so far."""
    baths: list[list[float]] = [[] for _ in range(count)]
    filled_g = [0.0] * count
    for skein_g in sorted(skeins_g, reverse=True):
        lightest = filled_g.index(min(filled_g))
        baths[lightest].append(skein_g)
        filled_g[lightest] += skein_g
    return sorted(baths, key=sum, reverse=True)


def _in_pots(
    dealt: Sequence[Sequence[float]], loads: dict[str, float]
) -> tuple[SplitBath, ...]:
    """Put each bath into the pot that holds it and had the fewest, small ones first."""
    turns = dict.fromkeys(loads, 0)
    baths = []
    for skeins_g in dealt:
        fit = [name for name in loads if not is_more(sum(skeins_g), than=loads[name])]
        pot = min(fit, key=lambda name: turns[name])
        turns[pot] += 1
        baths.append(
            SplitBath(
                pot=pot,
                turn=turns[pot],
                skeins_g=tuple(skeins_g),
                load_g=loads[pot],
            )
        )
    return tuple(baths)
