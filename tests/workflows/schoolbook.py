"""A shelf by the arithmetic of a schoolbook: a dictionary of what bottles hold.

Each function returns one change, to be made on any such shelf.
"""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass
class Held:
    """What a bottle holds by the schoolbook."""

    ml: float
    g: float


Shelf = dict[str, Held]
Change = Callable[[Shelf], None]


def filled(code: str, ml: float, g: float) -> Change:
    def change(shelf: Shelf) -> None:
        shelf[code] = Held(ml, g)

    return change


def moved(source: str, into: str | None, ml: float) -> Change:
    def change(shelf: Shelf) -> None:
        held = shelf[source]
        g = held.g * ml / held.ml
        shelf[source] = Held(held.ml - ml, held.g - g)
        if into is not None:
            shelf[into].ml += ml
            shelf[into].g += g

    return change


def added(code: str, *, ml: float = 0.0, g: float = 0.0) -> Change:
    def change(shelf: Shelf) -> None:
        shelf[code] = Held(shelf[code].ml + ml, shelf[code].g + g)

    return change


def levelled(code: str, ml: float) -> Change:
    def change(shelf: Shelf) -> None:
        shelf[code] = Held(ml, shelf[code].g)

    return change


def measured_at(code: str, percent: float) -> Change:
    def change(shelf: Shelf) -> None:
        shelf[code] = Held(shelf[code].ml, shelf[code].ml * percent / 100)

    return change


def gone(code: str) -> Change:
    def change(shelf: Shelf) -> None:
        del shelf[code]

    return change


def both(first: Change, second: Change) -> Change:
    def change(shelf: Shelf) -> None:
        first(shelf)
        second(shelf)

    return change
