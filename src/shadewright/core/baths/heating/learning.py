"""What timed heat-ups teach: the share of a source that reaches a pot.

A heat-up is a product of shares (the draught, the lid, the line's voltage), so
its logarithm is averaged. Before there are enough to show their own spread,
four heat-ups that lie 5 % apart are imagined beside them: an assumption of
ours, which fades as real ones come in.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import exp, fsum, log, sqrt

from shadewright.core.baths.heating.pace import heating_minutes, share_of
from shadewright.core.quantities import require_above_zero
from shadewright.core.tables.heat import Source
from shadewright.core.tables.student import T_95
from shadewright.errors import MissingError

PRIOR_SPREAD, PRIOR_COUNT = 0.05, 4.0
HELD_BACK_WITHIN = 0.1


@dataclass(frozen=True, kw_only=True)
class HeatUp:
    """A heat-up as it was timed: heat [kWh], power [kW] and time [min]."""

    energy_kwh: float
    power_kw: float
    minutes: float

    @property
    def share(self) -> float:
        """The part of the power that arrived, η = 60 E/(P t) [1]."""
        return 60.0 * self.energy_kwh / (self.power_kw * self.minutes)


@dataclass(frozen=True, kw_only=True)
class LearnedShare:
    """A pot's share on its source: the mean, how far one heat-up strays, how many.

    ``spread`` is relative, that of a single heat-up; ``freedom`` its degrees of
    freedom, the imagined heat-ups counted.
    """

    share: float
    spread: float
    freedom: float
    count: int


@dataclass(frozen=True, kw_only=True)
class MinutesRange:
    """Minutes with their range; ``count`` heat-ups stand behind it, 0 is a guess."""

    minutes: float
    least: float
    most: float
    count: int


def learned_share(heat_ups: Sequence[HeatUp]) -> LearnedShare:
    """Return the share that timed heat-ups of one pot on one source show.

    ln η = mean(ln η_i);  s² = (ν_0 s_0² + Σ(ln η_i − ln η)²)/(ν_0 + n − 1)  (8)

    Parameters
    ----------
    heat_ups : sequence of HeatUp
        At least one, all of the same pot on the same source. [-]

    Returns
    -------
    LearnedShare
        Share, spread of one heat-up, degrees of freedom, count. [-]

    Raises
    ------
    MissingError
        If there is none.
    OutOfRangeError
        If an energy, a power or a time is not above zero.

    Notes
    -----
    s_0 = 5 % with ν_0 = 4 is our assumption, no published figure. A share above
    1 is let stand: then the plate gives more than its name says, or a
    temperature was misread.

    Examples
    --------
    >>> one = HeatUp(energy_kwh=0.372, power_kw=1.8, minutes=17.0)
    >>> round(learned_share([one]).share, 3)
    0.729
    """
    if not heat_ups:
        raise MissingError(
            name="A timed heat-up", advice="Time one first.", argument="heat_ups"
        )
    logs = [log(_checked(each).share) for each in heat_ups]
    mean = fsum(logs) / len(logs)
    freedom = PRIOR_COUNT + len(logs) - 1
    squares = fsum((each - mean) ** 2 for each in logs)
    spread = sqrt((PRIOR_COUNT * PRIOR_SPREAD**2 + squares) / freedom)
    return LearnedShare(
        share=exp(mean), spread=spread, freedom=freedom, count=len(logs)
    )


def predicted_minutes(
    *, energy_kwh: float, power_kw: float, learned: LearnedShare
) -> MinutesRange:
    """Return the minutes of the next heat-up, with the range of 19 in 20.

    t = 60 E/(P η);  t e^(±k),  k = t_95(ν) s √(1 + 1/n)           (9)

    Parameters
    ----------
    energy_kwh : float
        Heat into the pot, E; above zero. [kWh]
    power_kw : float
        Power of the source, P; above zero. [kW]
    learned : LearnedShare
        What this pot's heat-ups on this source show. [-]

    Returns
    -------
    MinutesRange
        Minutes and their range. [min]

    Raises
    ------
    OutOfRangeError
        If energy or power is not above zero.

    Notes
    -----
    At full power; a recipe that rises more slowly takes the recipe's time.

    References
    ----------
    .. [jcgm100] table G.2 for t_95, between its rows by 1/ν (from memory)

    Examples
    --------
    >>> one = HeatUp(energy_kwh=0.372, power_kw=1.8, minutes=17.0)
    >>> found = predicted_minutes(
    ...     energy_kwh=0.372, power_kw=1.8, learned=learned_share([one])
    ... )
    >>> round(found.minutes, 1), round(found.least), round(found.most)
    (17.0, 14, 21)
    """
    asked = _checked(HeatUp(energy_kwh=energy_kwh, power_kw=power_kw, minutes=1.0))
    minutes = asked.share / learned.share
    k = _t_95(learned.freedom) * learned.spread * sqrt(1.0 + 1.0 / learned.count)
    return MinutesRange(
        minutes=minutes,
        least=minutes * exp(-k),
        most=minutes * exp(k),
        count=learned.count,
    )


def guessed_minutes(
    *, energy_kwh: float, power_kw: float, source: Source
) -> MinutesRange:
    """Return the minutes by the usual share of a kind of source: a guess.

    Parameters
    ----------
    energy_kwh : float
        Heat into the pot; zero or more. [kWh]
    power_kw : float
        Power of the source; above zero. [kW]
    source : Source
        Gas, coil or induction. [-]

    Returns
    -------
    MinutesRange
        Minutes, the range of the printed shares, and no heat-up. [min]

    Raises
    ------
    OutOfRangeError
        If the power is out of range, or the source is a steamer.

    References
    ----------
    .. [energystar2021] shares of gas, resistance and induction

    Examples
    --------
    >>> guess = guessed_minutes(energy_kwh=0.372, power_kw=1.8, source=Source.INDUCTION)
    >>> round(guess.minutes, 1)
    14.6
    """
    shares = share_of(source)
    minutes, least, most = (
        heating_minutes(energy_kwh=energy_kwh, power_kw=power_kw, share=share)
        for share in (shares.usual, shares.most, shares.least)
    )
    return MinutesRange(minutes=minutes, least=least, most=most, count=0)


def is_held_back(*, minutes: float, recipe_min: float | None) -> bool:
    """Return whether a heat-up shows the recipe's pace and not the source's.

    Parameters
    ----------
    minutes : float
        What the heat-up took. [min]
    recipe_min : float or None
        Minutes from start to top by the recipe; None where it says none. [min]

    Returns
    -------
    bool
        True within a tenth of the recipe's time: somebody kept the pace by hand,
        so that the source could perhaps do more. [-]

    Notes
    -----
    The tenth is ours: a dyer watches the thermometer to a few minutes.

    Examples
    --------
    >>> is_held_back(minutes=56.0, recipe_min=58.0)
    True
    """
    if recipe_min is None:
        return False
    return abs(minutes - recipe_min) <= HELD_BACK_WITHIN * recipe_min


def _checked(each: HeatUp) -> HeatUp:
    parts = (
        (each.energy_kwh, "kWh", "The heat", "energy_kwh"),
        (each.power_kw, "kW", "Power", "power_kw"),
        (each.minutes, "min", "The time", "minutes"),
    )
    for value, unit, name, argument in parts:
        require_above_zero(value, most=1e6, unit=unit, name=name, argument=argument)
    return each


def _t_95(freedom: float) -> float:
    """Return Student's t between the rows of its table, straight in 1/ν."""
    for (few, t_few), (many, t_many) in pairwise(T_95):
        if freedom <= many:
            part = (1.0 / few - 1.0 / freedom) / (1.0 / few - 1.0 / many)
            return t_few + (t_many - t_few) * part
    return T_95[-1][1]
