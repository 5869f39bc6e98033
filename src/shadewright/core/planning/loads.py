"""What pots take, and what is too heavy for any of them.

A pot carries its load at a liquor ratio, however often it is filled in a day. So yarn
is split by load, not by how many pots stand there: nine pots dye twenty baths.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

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


@dataclass(frozen=True, kw_only=True)
class SplitPot:
    """A pot that yarn may be split over, in l."""

    name: str
    volume_l: float


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


def loads_g(*, pots: Sequence[SplitPot], liquor_ratio: float) -> dict[str, float]:
    """Return what each pot takes, the smallest first.

    Parameters
    ----------
    pots : sequence of SplitPot
        The pots. [-]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn. [L/kg]

    Returns
    -------
    dict of str to float
        The load by the name of the pot. [g]

    Raises
    ------
    MissingError
        If there is no pot.
    OutOfRangeError
        If a number is out of range.

    Examples
    --------
    >>> pot = SplitPot(name="P1", volume_l=11.0)
    >>> round(loads_g(pots=[pot], liquor_ratio=25.0)["P1"])
    400
    """
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


def pot_loads_g(
    *, pots: Sequence[SplitPot], liquor_ratio: float, skeins_g: Sequence[float]
) -> dict[str, float]:
    """Return the same, and refuse skeins of which the heaviest fits no pot.

    Parameters
    ----------
    pots : sequence of SplitPot
        The pots. [-]
    liquor_ratio : float
        Litres of bath to a kilogram of yarn. [L/kg]
    skeins_g : sequence of float
        What each skein weighs. [g]

    Returns
    -------
    dict of str to float
        The load by the name of the pot. [g]

    Raises
    ------
    MissingError
        If there is no skein or no pot.
    OutOfRangeError
        If a number is out of range, or no pot takes the heaviest skein.

    Examples
    --------
    >>> pot = SplitPot(name="P1", volume_l=11.0)
    >>> list(pot_loads_g(pots=[pot], liquor_ratio=25.0, skeins_g=[100.0]))
    ['P1']
    """
    loads = loads_g(pots=pots, liquor_ratio=liquor_ratio)
    if not skeins_g:
        raise MissingError(
            name="The yarn", advice="Say how many skeins there are.", argument="skeins"
        )
    for skein_g in skeins_g:
        require_mass(skein_g, name="A skein", argument="skeins")
    largest, most_g = list(loads.items())[-1]
    if is_more(max(skeins_g), than=most_g):
        raise _too_heavy(max(skeins_g), most_g, largest, liquor_ratio)
    return loads


def require_few(count: int) -> None:
    """Refuse a split into more baths than anybody means.

    Parameters
    ----------
    count : int
        Baths. [1]

    Raises
    ------
    OutOfRangeError
        If there are too many.

    Examples
    --------
    >>> require_few(12)
    """
    require_between(
        count,
        least=1,
        most=MOST_BATHS,
        unit="baths",
        name="The split",
        argument="pots",
    )


def _too_heavy(
    skein_g: float, most_g: float, pot: str, liquor_ratio: float
) -> OutOfRangeError:
    ratio = floor(10.0 * liquor_ratio * most_g / skein_g) / 10.0
    shorter = f", dye at 1:{ratio:g}" if ratio >= SHORTEST_RATIO else ""
    return OutOfRangeError(
        name="One skein",
        given=amount_text(skein_g, "g"),
        allowed=f"at most {amount_text(most_g, 'g')}, which {pot} takes at "
        f"1:{number_text(liquor_ratio, digits=4)} with a tenth to spare",
        advice=f"Take a larger pot{shorter}, or wind it off into smaller skeins.",
        argument="pots",
    )
