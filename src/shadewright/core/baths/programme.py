"""The heating of a bath as its round tells it: a programme, and where heat hurts."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shadewright.core.baths.curves import Curve, Leg, minute_at
from shadewright.core.quantities import NO_BREAK, amount_text, number_text

HEAVY_KG = 10.0
HOT_LIFT = (
    "Pot and bath are heavy: do not carry them hot and alone; let them cool "
    "where they stand."
)
HOT_BATH = "Hot bath and steam: heat gloves, open a window, nothing left unwatched."


@dataclass(frozen=True, kw_only=True)
class Programme:
    """How a bath is heated; what the recipe does not say is None.

    ``stops`` are the legs before the last one, which is the way to the top.
    """

    start_c: float | None = None
    rise_c_per_min: float | None = None
    top_c: float | None = None
    hold_min: float | None = None
    stops: Sequence[Leg] = ()

    @property
    def curve(self) -> Curve | None:
        """The whole of it as a curve, if the recipe says enough."""
        if self.start_c is None or self.top_c is None or not self.rise_c_per_min:
            return None
        last = Leg(
            to_c=self.top_c,
            rise_c_per_min=self.rise_c_per_min,
            hold_min=self.hold_min or 0.0,
        )
        return Curve(start_c=self.start_c, legs=(*self.stops, last))

    @property
    def rise_min(self) -> float | None:
        """Minutes from the start to the top, if the recipe says enough."""
        if self.start_c is None or self.top_c is None or not self.rise_c_per_min:
            return None
        if self.stops and self.curve is not None:
            return self.curve.rise_min
        return max(self.top_c - self.start_c, 0.0) / self.rise_c_per_min


def heat_text(programme: Programme, *, heating: str = "") -> str:
    """Return what the step of the heat says: the rise, the stops, the minutes.

    Parameters
    ----------
    programme : Programme
        How the bath is heated. [-]
    heating : str
        How long it takes on its source, in words; empty where that is not known. [-]

    Returns
    -------
    str
        Whole sentences, or nothing. [-]

    Notes
    -----
    For people only; no source.

    Examples
    --------
    >>> slow = Programme(start_c=40.0, rise_c_per_min=1.0, top_c=90.0)
    >>> heat_text(slow).replace(chr(160), " ")
    'Rise by 1 °C a minute. About 50 min to the top.'
    """
    minutes = programme.rise_min
    about = "" if minutes is None else f"About {_minutes(minutes)} to the top."
    said = (_rise(programme), heating or about)
    return " ".join(part for part in said if part)


def on_the_way_min(programme: Programme, *, at_c: float | None) -> float | None:
    """Return when a temperature is reached on the way up, by the recipe's pace.

    Parameters
    ----------
    programme : Programme
        How the bath is heated. [-]
    at_c : float or None
        The temperature that is waited for; None where none is. [°C]

    Returns
    -------
    float or None
        Minutes after the heat is on, at most those to the top; None where the
        recipe does not say enough. [min]

    Notes
    -----
    Arithmetic by definition.

    Examples
    --------
    >>> slow = Programme(start_c=40.0, rise_c_per_min=1.0, top_c=90.0)
    >>> on_the_way_min(slow, at_c=60.0)
    20.0
    """
    curve = programme.curve
    if curve is None or at_c is None:
        return None
    return minute_at(curve=curve, temperature_c=min(at_c, curve.top_c))


def _rise(programme: Programme) -> str:
    pace = programme.rise_c_per_min
    if not pace:
        return ""
    if not programme.stops:
        return f"Rise by {_pace(pace)}."
    legs = "; ".join(_legs(programme, pace))
    return f"{legs[:1].upper()}{legs[1:]}."


def _legs(programme: Programme, pace: float) -> Iterator[str]:
    now_c = programme.start_c
    for leg in programme.stops:
        held = _minutes(leg.hold_min)
        if leg.to_c == now_c:
            yield f"{held} at {amount_text(leg.to_c, '°C')}"
            continue
        rise = f"{_degrees(leg.to_c)} by {_short(leg.rise_c_per_min)}"
        yield f"{rise}, hold {held}" if leg.hold_min else rise
        now_c = leg.to_c
    yield f"{_degrees(programme.top_c or 0.0)} by {_short(pace)}"


def _degrees(value_c: float) -> str:
    return f"to {amount_text(value_c, '°C')}"


def _pace(value: float) -> str:
    return f"{number_text(value, digits=2)} °C a minute"


def _short(value: float) -> str:
    return f"{number_text(value, digits=2)}{NO_BREAK}°C/min"


def _minutes(value: float) -> str:
    return amount_text(value, "min")
