"""Minutes on a source, the fastest rise it gives, and whether a rise is kept."""

from dataclasses import dataclass
from enum import StrEnum

from shadewright.core.quantities import require_above_zero
from shadewright.core.tables.heat import SOURCE_SHARES, Share, Source
from shadewright.errors import OutOfRangeError

_MOST_KW = 100.0
OVERSHOOTS_FROM = 1.5
"""Above so many times the wanted rise the source runs ahead unless turned down."""


class Pace(StrEnum):
    """How a source keeps a recipe's rise."""

    TOO_SLOW = "too slow"
    KEPT = "kept"
    RUNS_AHEAD = "runs ahead"


@dataclass(frozen=True, kw_only=True)
class RisePace:
    """Whether a rise is kept, and at what share of the power [1]."""

    pace: Pace
    power_share: float


def share_of(source: Source) -> Share:
    """Return the share of a source's power that reaches a pot.

    Parameters
    ----------
    source : Source
        What the pot stands on. [-]

    Returns
    -------
    Share
        Usual, least and most. [1]

    Raises
    ------
    OutOfRangeError
        If it is a steamer, which no pot stands on.

    References
    ----------
    .. [energystar2021] shares of gas, resistance and induction

    Examples
    --------
    >>> share_of(Source.GAS).usual
    0.32
    """
    if source not in SOURCE_SHARES:
        raise OutOfRangeError(
            name="The source of heat",
            given=str(source),
            allowed=f"{', '.join(SOURCE_SHARES)}",
            advice="How long a steamer takes is not reckoned: time it and give its "
            "minutes.",
            argument="source",
        )
    return SOURCE_SHARES[source]


def heating_minutes(*, energy_kwh: float, power_kw: float, share: float) -> float:
    """Return the minutes in which a source brings heat into a pot.

    t = 60 E/(P η)                                                 (6)

    Parameters
    ----------
    energy_kwh : float
        Heat into the pot, E; zero or more. [kWh]
    power_kw : float
        Power of the source, P; above zero. [kW]
    share : float
        Share of it that reaches the pot, η; above zero to 1. [1]

    Returns
    -------
    float
        Time, t. [min]

    Raises
    ------
    OutOfRangeError
        If power or share is out of range.

    Notes
    -----
    At full power all the way.

    Examples
    --------
    >>> round(heating_minutes(energy_kwh=0.372, power_kw=1.8, share=0.85), 1)
    14.6
    """
    power = require_above_zero(
        power_kw, most=_MOST_KW, unit="kW", name="Power", argument="power_kw"
    )
    part = require_above_zero(
        share, most=1.0, unit="", name="Share that reaches the pot", argument="share"
    )
    return 60.0 * energy_kwh / (power * part)


def fastest_rise_c_per_min(*, start_c: float, top_c: float, minutes: float) -> float:
    """Return the fastest rise that a source can give on the way to the top.

    r = (T_2 − T_1)/t                                              (7)

    Parameters
    ----------
    start_c : float
        Temperature at the start, T_1. [°C]
    top_c : float
        Temperature at the end, T_2; above the start. [°C]
    minutes : float
        Time at full power, t; above zero. [min]

    Returns
    -------
    float
        Rise, r, on average. [°C/min]

    Raises
    ------
    OutOfRangeError
        If the time is not above zero.

    Notes
    -----
    Near the top a pot loses more heat, and its rise is below the average.

    Examples
    --------
    >>> fastest_rise_c_per_min(start_c=20.0, top_c=95.0, minutes=15.0)
    5.0
    """
    took = require_above_zero(
        minutes, most=1e6, unit="min", name="Time to the top", argument="minutes"
    )
    return (top_c - start_c) / took


def rise_pace(*, wanted_c_per_min: float, fastest_c_per_min: float) -> RisePace:
    """Return whether a source keeps a rise, and at what share of its power.

    Parameters
    ----------
    wanted_c_per_min : float
        The recipe's rise; above zero. [°C/min]
    fastest_c_per_min : float
        The fastest rise that the source gives; above zero. [°C/min]

    Returns
    -------
    RisePace
        Too slow, kept, or running ahead; the share is at most 1. [-]

    Raises
    ------
    OutOfRangeError
        If a rise is not above zero.

    Notes
    -----
    A source that could go half as fast again overshoots where nobody turns it
    down; the half is common practice.

    Examples
    --------
    >>> rise_pace(wanted_c_per_min=1.0, fastest_c_per_min=5.0).pace
    <Pace.RUNS_AHEAD: 'runs ahead'>
    """
    wanted = _rise(wanted_c_per_min, "wanted_c_per_min")
    fastest = _rise(fastest_c_per_min, "fastest_c_per_min")
    share = min(wanted / fastest, 1.0)
    if wanted > fastest:
        return RisePace(pace=Pace.TOO_SLOW, power_share=share)
    if fastest >= OVERSHOOTS_FROM * wanted:
        return RisePace(pace=Pace.RUNS_AHEAD, power_share=share)
    return RisePace(pace=Pace.KEPT, power_share=share)


def _rise(value: float, argument: str) -> float:
    return require_above_zero(
        value, most=1e6, unit="°C/min", name="A rise", argument=argument
    )
