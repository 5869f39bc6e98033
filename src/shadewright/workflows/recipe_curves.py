"""A recipe's heating as a curve: what is stored, and what is reckoned from it.

The four fields (start, rise, top, hold) are the way to the top and stand for
the whole where there is no stop. With stops on the way the column ``curve``
holds every leg in order, the last one being that of the four fields.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Protocol

from shadewright.core.baths import Curve, Leg
from shadewright.core.baths.programme import Programme
from shadewright.errors import MissingError


class Heated(Protocol):
    """What says how it is heated: a version's row or its text."""

    @property
    def start_c(self) -> float | None:
        """Where the heat begins. [°C]."""

    @property
    def rise_c_per_min(self) -> float | None:
        """How fast it rises to the top. [°C/min]."""

    @property
    def top_c(self) -> float | None:
        """The temperature that is held. [°C]."""

    @property
    def hold_min(self) -> float | None:
        """How long it is held. [min]."""


def programme_of(said: Heated, stops: Sequence[Leg]) -> Programme:
    """Return the heating of a version."""
    return Programme(
        start_c=said.start_c,
        rise_c_per_min=said.rise_c_per_min,
        top_c=said.top_c,
        hold_min=said.hold_min,
        stops=tuple(stops),
    )


def stops_of(stored: Iterable[Mapping[str, Any]]) -> tuple[Leg, ...]:
    """Return the stops on the way from what is stored: all legs but the last."""
    legs = tuple(Leg(**{name: float(each[name]) for name in _NAMES}) for each in stored)
    return legs[:-1]


def stored_curve(said: Heated, stops: Sequence[Leg]) -> list[dict[str, float]]:
    """Return every leg of a curve with stops as it is stored; else nothing."""
    curve = programme_of(said, stops).curve
    if not stops or curve is None:
        return []
    return [{name: getattr(leg, name) for name in _NAMES} for leg in curve.legs]


def check_curve(said: Heated, stops: Sequence[Leg]) -> Curve | None:
    """Return the curve; refuse stops without a way to the top, or out of order."""
    programme = programme_of(said, stops)
    lacks = {
        "start_c": programme.start_c is None,
        "rise_c_per_min": not programme.rise_c_per_min,
        "top_c": programme.top_c is None,
    }
    missing = next((name for name, is_so in lacks.items() if is_so), "")
    if stops and missing:
        raise MissingError(
            name=_WORDS[missing],
            advice="With a stop on the way, start, rise and top are needed too.",
            argument=missing,
        )
    return programme.curve if stops else None


_NAMES = ("to_c", "rise_c_per_min", "hold_min")
_WORDS = {"start_c": "The start", "rise_c_per_min": "The rise", "top_c": "The top"}
