"""Alligation: the old rule for mixing a strong and a weak liquid.

Older than chemistry and still taught in pharmacies. *Medial* finds the strength
of a mixture; *alternate* finds the shares that give a wanted strength. It holds
for anything in percent from 0 (water) to 100, dye stock or not.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum

from shadewright.core.quantities import require_between, require_volume
from shadewright.errors import MissingError


@dataclass(frozen=True, kw_only=True)
class Portion:
    """Some liquid: its volume, and its strength in g per 100 ml."""

    volume_ml: float
    strength_percent: float


def _percentage(value: float, argument: str) -> float:
    return require_between(
        value, least=0.0, most=100.0, unit="%", name="Strength", argument=argument
    )


def mixture(portions: Sequence[Portion]) -> Portion:
    """Return what results when portions are poured together (alligation medial).

    V = sum V_i,   c = sum c_i V_i / V                          (10)

    Parameters
    ----------
    portions : sequence of Portion
        What is poured together; at least one, strengths from 0 to 100. [mL, %]

    Returns
    -------
    Portion
        The mixture. [mL, %]

    Raises
    ------
    MissingError
        If there is nothing to pour.
    OutOfRangeError
        If a volume is not above zero or a strength not from 0 to 100 %.

    Notes
    -----
    Volumes are taken to add up, which holds well at the strength of a stock.
    The order of pouring does not matter.

    References
    ----------
    .. [ansel2012] chapter on dilution and alligation (from memory)

    Examples
    --------
    >>> mixture([
    ...     Portion(volume_ml=180.0, strength_percent=1.0),
    ...     Portion(volume_ml=320.0, strength_percent=0.5),
    ... ])
    Portion(volume_ml=500.0, strength_percent=0.68)
    """
    if not portions:
        raise MissingError(
            name="A portion", advice="Name at least one.", argument="portions"
        )
    for portion in portions:
        require_volume(portion.volume_ml, name="Volume", argument="portions")
        _percentage(portion.strength_percent, "portions")
    volume = fsum(portion.volume_ml for portion in portions)
    dye = fsum(portion.volume_ml * portion.strength_percent for portion in portions)
    return Portion(
        volume_ml=require_volume(volume, name="Volume together", argument="portions"),
        # Never beyond the strongest, which the last digit of a sum may be.
        strength_percent=min(dye / volume, max(p.strength_percent for p in portions)),
    )


def first_share(
    *, first_percent: float, second_percent: float, want_percent: float
) -> float:
    """Return the share of the first liquid in a mixture (alligation alternate).

    x = (c − c2)/(c1 − c2)                                      (11)

    Parameters
    ----------
    first_percent : float
        Strength of the first liquid, c1; 0 to 100. [%]
    second_percent : float
        Strength of the second liquid, c2; 0 to 100. [%]
    want_percent : float
        Strength wanted, c; from the one to the other. [%]

    Returns
    -------
    float
        Share of the first liquid by volume, x, from 0 to 1. [-]

    Raises
    ------
    OutOfRangeError
        If the strength wanted does not lie between the two.

    Notes
    -----
    Where both liquids have the strength wanted, the first alone will do.

    References
    ----------
    .. [ansel2012] chapter on dilution and alligation (from memory)

    Examples
    --------
    >>> first_share(first_percent=70.0, second_percent=20.0, want_percent=30.0)
    0.2
    """
    first = _percentage(first_percent, "first_percent")
    second = _percentage(second_percent, "second_percent")
    want = require_between(
        want_percent,
        least=min(first, second),
        most=max(first, second),
        unit="%",
        name="Strength wanted",
        argument="want_percent",
        advice="No mixture of the two is weaker or stronger than both.",
    )
    if first == second:
        return 1.0
    return (want - second) / (first - second)
