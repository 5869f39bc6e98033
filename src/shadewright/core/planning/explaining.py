"""Why a bath is left out: the first thing that, had there been more of it, would do.

The plan that was found is kept, and the bath is tried again on a board on which one
thing after the other is boundless.
"""

from collections.abc import Callable, Mapping
from copy import deepcopy
from dataclasses import replace
from types import MappingProxyType

from shadewright.core.planning.board import Board
from shadewright.core.planning.day import Day, WantedBath
from shadewright.core.planning.fitting import fits, takes
from shadewright.core.planning.minutes import span
from shadewright.core.planning.placing import placed, rinsed
from shadewright.core.planning.sequences import Drawn
from shadewright.core.planning.ways import Way, ways_of

_LONGER = 100_000
"""So much longer that anything fits, in minutes."""


def why_left_out(plan: Drawn, day: Day, number: int) -> str:
    """Return what ran out for a bath that is not in a plan.

    Parameters
    ----------
    plan : Drawn
        A plan without it. [-]
    day : Day
        The day. [-]
    number : int
        The bath. [-]

    Returns
    -------
    str
        One sentence. [-]
    """
    bath = day.baths[number]
    ways = ways_of(bath, day)
    if not ways:
        return _why_nowhere(bath, day)
    hangs = 0 if bath.is_overnight else bath.skeins
    if hangs and hangs > plan.board.rack:
        return (
            f"The rack has room for {max(plan.board.rack, 0)} more skeins, "
            f"and it wants {hangs}."
        )
    return f"What runs out: {', '.join(_scarce(plan, day, number, ways))}."


def _why_nowhere(bath: WantedBath, day: Day) -> str:
    """Return why a bath goes in no pot, or on no source."""
    if bath.going is not None:
        return "The pot or the source that it is on is not among those of the day."
    if bath.is_steamed and not any(takes(bath, source) for source in day.sources):
        return f"No steamer takes {bath.fibre_g:g} g of yarn at once."
    if not bath.is_steamed and not any(fits(bath, pot) for pot in day.pots):
        return f"No pot holds {bath.liquor_l:.3g} l with a tenth to spare."
    return "The pot that it is pinned to is too small, or there is no source for it."


def _scarce(
    plan: Drawn, day: Day, number: int, ways: tuple[Way, ...]
) -> tuple[str, ...]:
    """Return the one thing of which more would do, or as few as it takes together."""
    reliefs = tuple(_RELIEFS.items())
    for words, relief in reliefs:
        if _goes_in(plan, day, number, ways, (relief,)):
            return (words,)
    needed = dict(reliefs)
    for words, _relief in reliefs:
        fewer = {name: each for name, each in needed.items() if name != words}
        if _goes_in(plan, day, number, ways, tuple(fewer.values())):
            needed = fewer
    return tuple(needed)


def _goes_in(
    plan: Drawn,
    day: Day,
    number: int,
    ways: tuple[Way, ...],
    reliefs: tuple[Callable[[Board], None], ...],
) -> bool:
    """Return whether a bath fits once some things are boundless."""
    board = deepcopy(plan.board)
    for relief in reliefs:
        relief(board)
    stay = placed(board, number, ways, choice=0)
    is_overnight = day.baths[number].is_overnight
    return stay is not None and (is_overnight or rinsed(board, stay))


def _more_hands(board: Board) -> None:
    whole = span(0, end=board.day.length)
    board.people.append(whole)
    board.presence |= whole
    board.hear_of_hands()


def _more_pots(board: Board) -> None:
    board.held.clear()
    board.day = replace(
        board.day, pots=tuple(replace(each, out_from=None) for each in board.day.pots)
    )
    for stays in board.stays:
        stays.clear()


def _more_power(board: Board) -> None:
    board.circuits = ("",) * len(board.sources)


def _more_sources(board: Board) -> None:
    board.sources = [span(0, end=board.day.length)] * len(board.sources)
    board.hear_of_circuits()


def _more_sinks(board: Board) -> None:
    board.sinks.append(span(0, end=board.day.length))


def _later_due(board: Board) -> None:
    baths = tuple(replace(each, due=None) for each in board.day.baths)
    board.day = replace(board.day, baths=baths)


def _longer_day(board: Board) -> None:
    before, after = board.day.length, board.day.length + _LONGER
    more = span(before, end=after)
    board.day = replace(board.day, length=after)
    board.people = [each | more for each in board.people]
    board.sources = [each | more for each in board.sources]
    board.sinks = [each | more for each in board.sinks]
    board.presence |= more
    board.hear_of_hands()
    board.hear_of_circuits()


_RELIEFS: Mapping[str, Callable[[Board], None]] = MappingProxyType({
    "hands at the right times": _more_hands,
    "a pot that holds it": _more_pots,
    "power on the circuits": _more_power,
    "a source of heat": _more_sources,
    "a sink": _more_sinks,
    "time before it is due": _later_due,
    "hours in the day": _longer_day,
})
