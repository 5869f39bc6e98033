"""Demand: how much yarn is to be dyed for orders and for the shelf.

What was ordered and what the shelf should hold, less what is free, and a few skeins
more because some turn out seconds. The rest of a pot is for the shelf.

======  ===============================================  ====
symbol  meaning                                          unit
======  ===============================================  ====
n       skeins that must turn out well                   1
s       share of skeins that turn out seconds            %
x       skeins to dye besides, for the seconds           1
======  ===============================================  ====
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from math import floor

from shadewright.core.quantities import require_between
from shadewright.errors import MissingError

MOST_SECONDS_PERCENT = 50.0
SAME_SKEIN_SHARE = 0.1
"""Skeins are often some % light or heavy; two sizes that sell apart differ by more.

Common practice: 2 to 5 % either way.
"""


@dataclass(frozen=True, kw_only=True)
class LineWanted:
    """What a line of an order still needs, and by when at the latest."""

    line_id: int
    skeins: int
    due_on: date | None = None


@dataclass(frozen=True, kw_only=True)
class StillToDye:
    """What is to be dyed of one colourway on one base, in skeins.

    ``for_lines`` are the lines that are served and with how many, the most urgent
    first; ``for_shelf`` fills the shelf up; ``spare`` makes up for seconds.
    """

    for_lines: tuple[tuple[int, int], ...]
    for_shelf: int
    spare: int
    due_on: date | None

    @property
    def skeins(self) -> int:
        """All of it."""
        return sum(each for _, each in self.for_lines) + self.for_shelf + self.spare


@dataclass(frozen=True, kw_only=True)
class WholePots:
    """Fillings of pots, the largest first, and the skeins that nobody asked for."""

    loads: tuple[tuple[str, int], ...]
    surplus: int


def still_to_dye(
    *,
    wanted: Sequence[LineWanted],
    par_skeins: int,
    free_skeins: int,
    seconds_percent: float,
) -> StillToDye:
    """Return what is still to be dyed once all that is free is given away.

    What is free goes to the most urgent line first, what is left to the shelf.

    Parameters
    ----------
    wanted : Sequence[LineWanted]
        What lines of orders still need.
    par_skeins : int
        What the shelf should hold. [1]
    free_skeins : int
        On the shelf or in planned baths, and not promised to a line. [1]
    seconds_percent : float
        Share that turns out seconds, s; 0 to 50. [%]

    Returns
    -------
    StillToDye
        What to dye, and for whom.

    Raises
    ------
    OutOfRangeError
        If the share of seconds lies outside its range.

    Examples
    --------
    >>> six = LineWanted(line_id=7, skeins=6)
    >>> found = still_to_dye(
    ...     wanted=[six], par_skeins=8, free_skeins=4, seconds_percent=5
    ... )
    >>> found.for_lines, found.for_shelf, found.spare, found.skeins
    (((7, 2),), 8, 1, 11)
    """
    left = max(0, free_skeins)
    for_lines: list[tuple[int, int]] = []
    dues: list[date] = []
    for each in in_order_of_need(wanted):
        given = min(left, each.skeins)
        left -= given
        if each.skeins > given:
            for_lines.append((each.line_id, each.skeins - given))
            dues += [] if each.due_on is None else [each.due_on]
    for_shelf = max(0, par_skeins - left)
    good = sum(skeins for _, skeins in for_lines) + for_shelf
    return StillToDye(
        for_lines=tuple(for_lines),
        for_shelf=for_shelf,
        spare=spare_skeins(skeins=good, seconds_percent=seconds_percent),
        due_on=min(dues, default=None),
    )


def in_order_of_need(wanted: Sequence[LineWanted]) -> list[LineWanted]:
    """Return lines by the day they are due, those without a day last.

    Parameters
    ----------
    wanted : Sequence[LineWanted]
        Lines in any order; of one day, the older line stands first.

    Returns
    -------
    list[LineWanted]
        The most urgent first.
    """
    return sorted(wanted, key=lambda one: (one.due_on or date.max, one.line_id))


def spare_skeins(*, skeins: int, seconds_percent: float) -> int:
    """Return how many skeins to dye besides, because some turn out seconds.

    x = n / (1 − s / 100) − n, rounded to the nearest                    (4)

    Parameters
    ----------
    skeins : int
        Skeins that must turn out well, n. [1]
    seconds_percent : float
        Share that turns out seconds, s; 0 to 50. [%]

    Returns
    -------
    int
        Skeins besides, x. [1]

    Raises
    ------
    OutOfRangeError
        If the share lies outside its range.

    Notes
    -----
    Common practice: 3 to 8 % of what is dyed. Rounded to the nearest and not up, or a
    single skein would always be dyed twice.

    Examples
    --------
    >>> spare_skeins(skeins=38, seconds_percent=5.0)
    2
    >>> spare_skeins(skeins=1, seconds_percent=5.0)
    0
    """
    share = require_between(
        seconds_percent,
        name="Share of seconds",
        least=0.0,
        most=MOST_SECONDS_PERCENT,
        unit="%",
        argument="seconds_percent",
    )
    return floor(skeins / (1.0 - share / 100.0) - skeins + 0.5)


def whole_pots(*, skeins: int, pot_skeins: Mapping[str, int]) -> WholePots:
    """Return the fillings of pots that hold some skeins: few first, then full ones.

    Parameters
    ----------
    skeins : int
        Skeins to dye; zero or more. [1]
    pot_skeins : Mapping[str, int]
        Skeins that each pot takes; it may be filled again. [1]

    Returns
    -------
    WholePots
        How often each pot is filled, the largest first, and the skeins in them that go
        to the shelf.

    Raises
    ------
    MissingError
        If no pot takes a skein.

    Notes
    -----
    From as many of the largest pot as hold all, pots are changed for smaller ones while
    all still fits: a knapsack of what the last ones would have held besides.

    Examples
    --------
    >>> whole_pots(skeins=11, pot_skeins={"Kettle": 6, "Small": 4, "Jar": 1})
    WholePots(loads=(('Kettle', 2),), surplus=1)
    >>> whole_pots(skeins=10, pot_skeins={"Kettle": 6, "Small": 4, "Jar": 1})
    WholePots(loads=(('Kettle', 1), ('Small', 1)), surplus=0)
    """
    most = max(pot_skeins.values(), default=0)
    if most < 1:
        raise MissingError(name="A pot that takes a skein", advice="Add one.")
    largest = next(name for name, each in pot_skeins.items() if each == most)
    count = -(-skeins // most)
    smaller = {n: most - each for n, each in pot_skeins.items() if 0 < each < most}
    fewer = _changed_for(smaller, spare=count * most - skeins, most=count)
    taken = Counter({largest: count - len(fewer)}) + Counter(fewer)
    loads = sorted(taken.items(), key=lambda load: -pot_skeins[load[0]])
    held = sum(pot_skeins[name] * times for name, times in loads)
    return WholePots(loads=tuple(loads), surplus=held - skeins)


def _changed_for(
    smaller: Mapping[str, int], *, spare: int, most: int
) -> tuple[str, ...]:
    """Return the pots, at most so many, that take most of what is spare away."""
    ways: dict[int, tuple[str, ...]] = {0: ()}
    for less in range(1, spare + 1):
        found = [
            (*ways[less - each], name)
            for name, each in smaller.items()
            if len(ways.get(less - each, (None,) * most)) < most
        ]
        if found:
            ways[less] = min(found, key=len)
    return ways[max(ways)]


def is_same_skein(*, skein_g: float, other_g: float) -> bool:
    """Whether two skeins are sold as the same size, each within 10 % of the other.

    Parameters
    ----------
    skein_g : float
        Weight of a skein. [g]
    other_g : float
        Weight of another. [g]

    Returns
    -------
    bool
        Whether one may go for the other.

    Examples
    --------
    >>> is_same_skein(skein_g=100.0, other_g=96.5)
    True
    >>> is_same_skein(skein_g=100.0, other_g=50.0)
    False
    """
    return abs(skein_g - other_g) <= SAME_SKEIN_SHARE * max(skein_g, other_g)
