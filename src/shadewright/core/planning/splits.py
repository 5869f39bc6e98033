"""Yarn split into baths: as few as the pots allow, and as alike as can be.

A pot carries its load at a liquor ratio, however often it is filled in a day. So yarn
is split by load, not by how many pots stand there: nine pots dye twenty baths. Baths of
one wish are one batch and separate lots; the nearer they are to each other in weight,
the nearer their colours (common practice).

Skeins are dealt out heaviest first, each to the bath that is lightest so far. That is
Graham's rule, whose heaviest bath is never more than 4/3 − 1/(3 n) times that of the
best way to deal them to n baths [graham1969]_. Where it does not fit, there is one bath
more.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from shadewright.core.baths.liquor import MOST_RATIO, ROOM_TO_SPARE
from shadewright.core.quantities import (
    amount_text,
    is_more,
    number_text,
    require_above_zero,
    require_between,
    require_mass,
)
from shadewright.errors import MissingError, OutOfRangeError

SHORTEST_RATIO = 5.0
"""No shorter liquor is proposed: yarn is hardly covered (common practice). [L/kg]"""
MOST_BATHS = 200
"""No wish is split into more baths: it is a slip of the pen. [1] (our choice)"""
_ROUNDING = 1e-9


@dataclass(frozen=True, kw_only=True)
class SplitPot:
    """A pot that yarn may be split over, in l."""

    name: str
    volume_l: float


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


def pot_load_g(*, volume_l: float, liquor_ratio: float) -> float:
    """Return the yarn that a pot takes at a liquor ratio.

    M = 1000 V / (1.1 L)

    Parameters
    ----------
    volume_l : float
        Volume of the pot to its brim, V; above zero. [L]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn, L; above 0 to 1000. [L/kg]

    Returns
    -------
    float
        Yarn, M. [g]

    Raises
    ------
    OutOfRangeError
        If the volume or the ratio is out of range.

    Notes
    -----
    A tenth of the liquor is left free above it (common practice).

    Examples
    --------
    >>> round(pot_load_g(volume_l=10.0, liquor_ratio=30.0), 1)
    303.0
    """
    require_above_zero(
        volume_l, most=1000.0, unit="l", name="The pot", argument="volume_l"
    )
    require_above_zero(
        liquor_ratio,
        most=MOST_RATIO,
        unit="l/kg",
        name="Liquor ratio",
        argument="liquor_ratio",
    )
    return 1000.0 * volume_l / (ROOM_TO_SPARE * liquor_ratio)


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
    loads = _loads(pots, liquor_ratio)
    most_g = max(loads.values())
    _require_skeins(skeins_g, pots, liquor_ratio)
    least = ceil(sum(skeins_g) / most_g * (1 - _ROUNDING))
    count = max(1, least, min(least_baths, len(skeins_g)))
    _require_few(count)
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
    most_g = max(_loads(pots, liquor_ratio).values())
    count = max(1, least_baths, ceil(fibre_g / most_g * (1 - _ROUNDING)))
    _require_few(count)
    return (fibre_g / count,) * count


def _loads(pots: Sequence[SplitPot], liquor_ratio: float) -> dict[str, float]:
    """Return what each pot takes, the smallest first."""
    if not pots:
        raise MissingError(
            name="A pot",
            advice="Tick one, or add your pots with what they hold.",
            argument="pots",
        )
    return {
        pot.name: pot_load_g(volume_l=pot.volume_l, liquor_ratio=liquor_ratio)
        for pot in sorted(pots, key=lambda pot: pot.volume_l)
    }


def _require_skeins(
    skeins_g: Sequence[float], pots: Sequence[SplitPot], liquor_ratio: float
) -> None:
    if not skeins_g:
        raise MissingError(
            name="The yarn", advice="Say how many skeins there are.", argument="skeins"
        )
    for skein_g in skeins_g:
        require_mass(skein_g, name="A skein", argument="skeins")
    largest = max(pots, key=lambda pot: pot.volume_l)
    most_g = pot_load_g(volume_l=largest.volume_l, liquor_ratio=liquor_ratio)
    if is_more(max(skeins_g), than=most_g):
        raise _too_heavy(max(skeins_g), most_g, largest, liquor_ratio)


def _require_few(count: int) -> None:
    require_between(
        count,
        least=1,
        most=MOST_BATHS,
        unit="baths",
        name="The split",
        argument="pots",
    )


def _too_heavy(
    skein_g: float, most_g: float, pot: SplitPot, liquor_ratio: float
) -> OutOfRangeError:
    ratio = floor(10.0 * liquor_ratio * most_g / skein_g) / 10.0
    shorter = f", dye at 1:{ratio:g}" if ratio >= SHORTEST_RATIO else ""
    return OutOfRangeError(
        name="One skein",
        given=amount_text(skein_g, "g"),
        allowed=f"at most {amount_text(most_g, 'g')}, which {pot.name} takes at "
        f"1:{number_text(liquor_ratio, digits=4)} with a tenth to spare",
        advice=f"Take a larger pot{shorter}, or wind it off into smaller skeins.",
        argument="pots",
    )


def _dealt(skeins_g: Sequence[float], count: int) -> list[list[float]]:
    """Deal skeins out, heaviest first, each to the bath that is lightest so far."""
    baths: list[list[float]] = [[] for _ in range(count)]
    for skein_g in sorted(skeins_g, reverse=True):
        min(baths, key=sum).append(skein_g)
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
