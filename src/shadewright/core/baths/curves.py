"""Temperature programmes as curves: a start, and legs that rise and hold."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from shadewright.core.quantities import amount_text, require_above_zero, require_between
from shadewright.errors import OutOfRangeError

MOST_LEGS = 6
_LEAST_RISE, _MOST_RISE = 0.05, 20.0


@dataclass(frozen=True, kw_only=True)
class Leg:
    """One leg: to a temperature [°C], at a rise [°C/min], then held [min]."""

    to_c: float
    rise_c_per_min: float
    hold_min: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Curve:
    """A whole programme; no leg ends below the one before it.

    ``legs`` holds at least one; the last one is the way to the top.
    """

    start_c: float
    legs: tuple[Leg, ...]

    def __post_init__(self) -> None:
        """Refuse what no pot can follow."""
        _check(self)

    @property
    def top_c(self) -> float:
        """The temperature of the last hold [°C]."""
        return self.legs[-1].to_c

    @property
    def rise_min(self) -> float:
        """Minutes from the start to the top, stops on the way counted [min]."""
        return self.total_min - self.legs[-1].hold_min

    @property
    def total_min(self) -> float:
        """Minutes from heat on to the end of the last hold [min]."""
        return curve_points(self)[-1].minute


@dataclass(frozen=True, kw_only=True)
class CurvePoint:
    """A corner of the curve: when, and how warm."""

    minute: float
    temperature_c: float


def curve_points(curve: Curve) -> tuple[CurvePoint, ...]:
    """Return the corners of a curve, for a picture and for the clock.

    t_i = t_(i−1) + (T_i − T_(i−1))/r_i + hold_i

    Parameters
    ----------
    curve : Curve
        Start [°C] and legs [°C, °C/min, min]. [-]

    Returns
    -------
    tuple of CurvePoint
        The start, and the end of each rise and of each hold. [-]

    Notes
    -----
    Arithmetic by definition.

    Examples
    --------
    >>> curve = Curve(
    ...     start_c=40.0, legs=(Leg(to_c=98.0, rise_c_per_min=1.0, hold_min=45.0),)
    ... )
    >>> [(point.minute, point.temperature_c) for point in curve_points(curve)]
    [(0.0, 40.0), (58.0, 98.0), (103.0, 98.0)]
    """
    return tuple(_points(curve))


def minute_at(*, curve: Curve, temperature_c: float) -> float:
    """Return when a curve first reaches a temperature.

    Parameters
    ----------
    curve : Curve
        Start [°C] and legs [°C, °C/min, min]. [-]
    temperature_c : float
        The temperature that is waited for, at most the top. [°C]

    Returns
    -------
    float
        Minutes after the heat is on; zero for a bath that starts warmer. [min]

    Raises
    ------
    OutOfRangeError
        If the temperature is above the top.

    Notes
    -----
    Arithmetic by definition: on the first rise that passes it, in proportion.

    Examples
    --------
    >>> curve = Curve(start_c=40.0, legs=(Leg(to_c=90.0, rise_c_per_min=1.0),))
    >>> minute_at(curve=curve, temperature_c=65.0)
    25.0
    """
    if temperature_c > curve.top_c:
        raise OutOfRangeError(
            name="A temperature on the way",
            given=amount_text(temperature_c, "°C"),
            allowed=f"at most the top, {amount_text(curve.top_c, '°C')}",
            argument="temperature_c",
        )
    if temperature_c <= curve.start_c:
        return 0.0
    corners = pairwise(curve_points(curve))
    low, high = next(x for x in corners if x[1].temperature_c >= temperature_c)
    risen = (temperature_c - low.temperature_c) / (
        high.temperature_c - low.temperature_c
    )
    return low.minute + risen * (high.minute - low.minute)


def minutes_to_top(*, curve: Curve, fastest_c_per_min: float) -> float:
    """Return the minutes to the top where a source cannot rise faster.

    t = Σ (T_i − T_(i−1))/min(r_i, r_max) + the holds on the way

    Parameters
    ----------
    curve : Curve
        Start [°C] and legs [°C, °C/min, min]. [-]
    fastest_c_per_min : float
        The fastest rise that the source gives, r_max; above zero. [°C/min]

    Returns
    -------
    float
        Minutes from heat on to the top, with the recipe's pace where it can be
        kept. [min]

    Raises
    ------
    OutOfRangeError
        If the rise is not above zero.

    Notes
    -----
    Arithmetic by definition; r_max is taken as the same all the way.

    Examples
    --------
    >>> curve = Curve(start_c=40.0, legs=(Leg(to_c=90.0, rise_c_per_min=1.0),))
    >>> minutes_to_top(curve=curve, fastest_c_per_min=5.0)
    50.0
    >>> minutes_to_top(curve=curve, fastest_c_per_min=0.5)
    100.0
    """
    most = require_above_zero(
        fastest_c_per_min,
        most=1e6,
        unit="°C/min",
        name="A rise",
        argument="fastest_c_per_min",
    )
    slowed = tuple(
        replace(leg, rise_c_per_min=min(leg.rise_c_per_min, max(most, _LEAST_RISE)))
        for leg in curve.legs
    )
    return replace(curve, legs=slowed).rise_min


def _points(curve: Curve) -> Iterator[CurvePoint]:
    minute, now_c = 0.0, curve.start_c
    yield CurvePoint(minute=minute, temperature_c=now_c)
    for leg in curve.legs:
        if leg.to_c > now_c:
            minute += (leg.to_c - now_c) / leg.rise_c_per_min
            now_c = leg.to_c
            yield CurvePoint(minute=minute, temperature_c=now_c)
        if leg.hold_min:
            minute += leg.hold_min
            yield CurvePoint(minute=minute, temperature_c=now_c)


def _check(curve: Curve) -> None:
    require_between(
        len(curve.legs),
        least=1,
        most=MOST_LEGS,
        unit="",
        name="The number of legs",
        argument="curve",
    )
    _bounded(curve.start_c, 0.0, 100.0, "°C", "The start")
    for leg in curve.legs:
        _bounded(leg.to_c, 0.0, 105.0, "°C", "A temperature of the curve")
        _bounded(leg.rise_c_per_min, _LEAST_RISE, _MOST_RISE, "°C/min", "A rise")
        _bounded(leg.hold_min, 0.0, 600.0, "min", "A hold")
    for before, after in pairwise([curve.start_c, *(leg.to_c for leg in curve.legs)]):
        if after < before:
            raise OutOfRangeError(
                name="Each temperature of the curve",
                given=amount_text(after, "°C"),
                allowed=f"at least the one before it, {amount_text(before, '°C')}",
                argument="curve",
            )


def _bounded(value: float, least: float, most: float, unit: str, name: str) -> None:
    require_between(
        value, least=least, most=most, unit=unit, name=name, argument="curve"
    )
