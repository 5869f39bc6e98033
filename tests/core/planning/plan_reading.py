"""A day and a plan as JSON, read for the checker: who, when, what is over."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

Doc = dict[str, Any]
NEAR = 1e-6


@dataclass(frozen=True)
class Held:
    """A broken rule that a bath on the heat may break, if the plan says so.

    ``who`` are the baths that it is about.
    """

    said: str
    who: frozenset[str]

    @classmethod
    def of(cls, said: str, who: Iterable[str]) -> "Held":
        """Return the sentence with its baths."""
        return cls(said, frozenset(who))


Fault = str | Held


def stages_of(bath: Doc) -> Doc:
    """Return the stages of a planned bath by their names."""
    return {each["stage"]: each for each in bath["stages"]}


def is_night(bath: Doc) -> bool:
    """Return whether a bath cools in its pot to the end of the day."""
    return bool(bath.get("overnight"))


def is_on(bath: Doc) -> bool:
    """Return whether the heat of a bath was put on before now."""
    going = bath.get("going") or {}
    return bool({"heat_start_min", "checked_min", "rinse_start_min"} & set(going))


def minutes_after_midnight(text: str) -> float:
    """Return a time of day in minutes."""
    hours, minutes = text.split(":")
    return 60.0 * int(hours) + int(minutes)


def after_start(day: Doc, text: str) -> float:
    """Return a time of day in minutes after the day's start."""
    return minutes_after_midnight(text) - minutes_after_midnight(day["start"])


def length_of(day: Doc) -> float:
    """Return how long the day is."""
    return after_start(day, day["end"])


def now_of(day: Doc) -> float:
    """Return what time it is."""
    return after_start(day, day["now"]) if day.get("now") else 0.0


def hours_of(day: Doc) -> dict[str, list[tuple[float, float]]]:
    """Return when each person is in."""
    hours: dict[str, list[tuple[float, float]]] = {}
    for each in day["people"]:
        span = after_start(day, each["from"]), after_start(day, each["to"])
        hours.setdefault(each["name"], []).append(span)
    return hours
