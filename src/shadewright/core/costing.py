"""Costing: what a bath cost, from what really went into it.

Plain arithmetic in the studio's own money. A price that nobody wrote down stays
unknown: the sum is then made without that part and says so by name, for a cost
that leaves something out in silence is worse than none.

==========================  ==============================================
symbol                      meaning
==========================  ==============================================
m                           dye of standard strength in the bath [g]
s                           strength of the powder against its standard [%]
p                           price of the whole jar [money]
M                           powder that the jar held when it came [g]
==========================  ==============================================
"""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from math import fsum
from typing import TypeVar

from shadewright.core.quantities import (
    require_between,
    require_mass,
    require_powder_strength,
)

Key = TypeVar("Key", bound=Hashable)

_MOST_MONEY = 1e9
_MOST_MINUTES = 100_000.0


@dataclass(frozen=True, kw_only=True)
class CostPart:
    """One part of a cost; ``money`` is None where ``why`` says what is not known."""

    name: str
    money: float | None
    why: str = ""


@dataclass(frozen=True, kw_only=True)
class Cost:
    """A cost as far as it is known, part by part.

    ``money`` is None where no part is known at all.
    """

    parts: tuple[CostPart, ...]
    money: float | None
    missing: tuple[CostPart, ...]


def dye_cost(
    *,
    dye_g: float,
    powder_strength_percent: float,
    jar_price: float,
    jar_powder_g: float,
) -> float:
    """Return what some dye cost, from the price of its jar.

    cost = (100 m / s) p / M                                     (1)

    Parameters
    ----------
    dye_g : float
        Dye of standard strength, m; zero or more. [g]
    powder_strength_percent : float
        Strength of the jar's powder against the standard, s; above zero. [%]
    jar_price : float
        Price of the whole jar, p; zero or more. [money]
    jar_powder_g : float
        Powder in the jar when it came, M; above zero. [g]

    Returns
    -------
    float
        Cost of the dye. [money]

    Raises
    ------
    OutOfRangeError
        If a number lies outside its range.

    Notes
    -----
    Arithmetic; no published example used. What was spilled or thrown away is
    not in it.

    Examples
    --------
    >>> dye_cost(
    ...     dye_g=5.5, powder_strength_percent=110.0, jar_price=20.0, jar_powder_g=100.0
    ... )
    1.0
    """
    require_mass(jar_powder_g, name="Powder in the jar", argument="jar_powder_g")
    strength = require_powder_strength(powder_strength_percent)
    price = _money(jar_price, name="Price of the jar", argument="jar_price")
    return 100.0 * dye_g / strength * price / jar_powder_g


def weight_cost(*, mass_g: float, price_per_kg: float) -> float:
    """Return what a weight of yarn, acid or salt cost.

    Parameters
    ----------
    mass_g : float
        Weight that was used; zero or more. [g]
    price_per_kg : float
        Price of a kilogram; zero or more. [money/kg]

    Returns
    -------
    float
        Its cost. [money]

    Raises
    ------
    OutOfRangeError
        If the price is below zero.

    Notes
    -----
    Arithmetic; no published example used.

    Examples
    --------
    >>> weight_cost(mass_g=400.0, price_per_kg=60.0)
    24.0
    """
    price = _money(price_per_kg, name="Price of 1 kg", argument="price_per_kg")
    return mass_g * price / 1000.0


def time_cost(*, minutes: float, rate_per_hour: float) -> float:
    """Return what hands-on time cost.

    Parameters
    ----------
    minutes : float
        Time of the hands, not of the pot; zero or more. [min]
    rate_per_hour : float
        What an hour is worth; zero or more. [money/h]

    Returns
    -------
    float
        Its cost. [money]

    Raises
    ------
    OutOfRangeError
        If the time or the rate is below zero.

    Notes
    -----
    Arithmetic; no published example used.

    Examples
    --------
    >>> time_cost(minutes=40.0, rate_per_hour=18.0)
    12.0
    """
    spent = require_between(
        minutes,
        least=0.0,
        most=_MOST_MINUTES,
        unit="min",
        name="Minutes",
        argument="minutes",
    )
    rate = _money(rate_per_hour, name="Rate", argument="rate_per_hour")
    return spent * rate / 60.0


def total_cost(parts: Sequence[CostPart]) -> Cost:
    """Return the sum of what is known, and the parts that are not.

    Parameters
    ----------
    parts : sequence of CostPart
        Every part of the cost, known or not. [money]

    Returns
    -------
    Cost
        Sum, parts, and what is missing. [money]

    Notes
    -----
    Arithmetic; no published example used.

    Examples
    --------
    >>> yarn = CostPart(name="yarn", money=24.0)
    >>> acid = CostPart(name="acid", money=None, why="no price for it")
    >>> total_cost([yarn, acid]).money
    24.0
    """
    known = [part.money for part in parts if part.money is not None]
    return Cost(
        parts=tuple(parts),
        money=fsum(known) if known else None,
        missing=tuple(part for part in parts if part.money is None),
    )


def mixed_shares(
    portions: Sequence[tuple[float, Mapping[Key, float]]],
) -> dict[Key, float]:
    """Return where the dye of a mixed stock comes from, as shares of one.

    Parameters
    ----------
    portions : sequence of (float, mapping)
        Dye in each portion [g], and the shares of its own sources. [g, 1]

    Returns
    -------
    dict
        Share of the dye by source; empty without dye. [1]

    Notes
    -----
    Conservation of mass: each source keeps its grams; no published example
    used. What is drawn later takes every source in the same share, since a
    stock is one liquid.

    Examples
    --------
    >>> mixed_shares([(3.0, {"J1": 1.0}), (1.0, {"J1": 0.5, "J2": 0.5})])
    {'J1': 0.875, 'J2': 0.125}
    """
    whole_g = fsum(dye_g for dye_g, _shares in portions)
    if whole_g <= 0:
        return {}
    mixed: dict[Key, float] = {}
    for dye_g, shares in portions:
        for source, share in shares.items():
            mixed[source] = mixed.get(source, 0.0) + dye_g * share / whole_g
    return mixed


def _money(value: float, *, name: str, argument: str) -> float:
    return require_between(
        value, least=0.0, most=_MOST_MONEY, unit="", name=name, argument=argument
    )
