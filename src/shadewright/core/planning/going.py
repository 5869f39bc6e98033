"""What is going when a day is planned anew: it stands on the board before all else.

A pot that is filled is kept for its bath. One whose heat is on stays where it is, and
its times are settled up to the check. Of everything only what is still to come wants
hands; where there is nobody for it, it stands with nobody, and the plan says so.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from shadewright.core.planning.board import Board, Stay, Taken
from shadewright.core.planning.day import Going, Stage, WantedBath
from shadewright.core.planning.minutes import span
from shadewright.core.planning.ways import Way

_FILL, _RINSE = -1, -2


class _Rest(NamedTuple):
    """What still wants hands: of which bath, and which of its hands."""

    start: int
    length: int
    number: int
    which: int


def put_on(board: Board, ways: tuple[tuple[Way, ...], ...]) -> None:
    """Put what is going on an empty board.

    Parameters
    ----------
    board : Board
        An empty board; changed. [-]
    ways : tuple of tuple of Way
        The ways of each bath of the day. [min]
    """
    stays = dict(_stays(board, ways))
    rests = sorted(
        rest
        for number, stay in stays.items()
        for rest in _rests(board.day.baths[number], stay)
    )
    taken = {
        (rest.number, rest.which): _claimed(board, rest)
        for rest in (_from_now(rest, board.day.now) for rest in rests)
    }
    for number, stay in stays.items():
        board.spots += 1
        if _going_of(board, number).has_heat:
            _set(board, stay, taken)
        else:
            board.held[stay.pot] = number
            board.fillings[number] = taken[number, _FILL]


def _going_of(board: Board, number: int) -> Going:
    going = board.day.baths[number].going
    if going is None:
        raise RuntimeError
    return going


def _stays(
    board: Board, ways: tuple[tuple[Way, ...], ...]
) -> Iterator[tuple[int, Stay]]:
    # Yields each bath that is going, in order of its filling, with nobody’s hands.
    numbers = [n for n, bath in enumerate(board.day.baths) if bath.going and ways[n]]
    for number in sorted(numbers, key=lambda n: _going_of(board, n).fill_start):
        going = _going_of(board, number)
        heat, way = as_it_went(ways[number][0], going)
        yield (
            number,
            Stay(
                bath=number,
                way=way,
                pot=way.pots[0],
                fill=Taken(person=None, start=going.fill_start, length=0),
                heat=heat,
                hands=(),
            ),
        )


def as_it_went(way: Way, going: Going) -> tuple[int, Way]:
    """Return when the heat was put on, and a way that ends when it really did.

    Parameters
    ----------
    way : Way
        The bath as its minutes say it. [min]
    going : Going
        How far it has come. [min]

    Returns
    -------
    tuple of (int, Way)
        The heat’s start; of one that was only filled, the filling’s. [min]
    """
    known = [
        each
        for each in (going.heat_start, going.checked_at, going.rinse_start)
        if each is not None
    ]
    if not known:
        return going.fill_start, way
    heat = known[0]
    checked = heat + way.block if going.checked_at is None else going.checked_at
    if going.rinse_start is not None:
        checked = min(checked, going.rinse_start)
    block = max(0, checked - heat)
    cooled = block + way.cooled - way.block
    taken = way.taken
    if taken is not None:
        taken = cooled if taken > way.block else block
    if going.rinse_start is not None:
        cooled = going.rinse_start - heat
        taken = cooled if taken is None else min(taken, cooled)
    power = block if going.checked_at is None else 0
    return heat, replace(
        way, block=block, cooled=cooled, taken=taken, power=min(way.power, power)
    )


def _rests(bath: WantedBath, stay: Stay) -> Iterator[_Rest]:
    going, number = bath.going, stay.bath
    if going is None:
        raise RuntimeError
    if not going.has_heat:
        length = bath.minutes[Stage.FILL]
        yield _Rest(going.fill_start, length, number, _FILL)
        return
    is_over = going.checked_at is not None or going.rinse_start is not None
    for which, (offset, length, _what) in enumerate(stay.way.hands):
        yield _Rest(stay.heat + offset, 0 if is_over else length, number, which)
    if going.rinse_start is not None:
        yield _Rest(going.rinse_start, bath.minutes[Stage.RINSE], number, _RINSE)


def _from_now(rest: _Rest, now: int) -> _Rest:
    """Return what is left of it from now on."""
    end = rest.start + rest.length
    start = min(max(rest.start, now), end)
    return rest._replace(start=start, length=end - start)


def _claimed(board: Board, rest: _Rest) -> Taken:
    """Take the hands of whoever is free and leaves first; else nobody's."""
    wanted = span(rest.start, end=rest.start + rest.length)
    free = [
        person
        for person, minutes in enumerate(board.people)
        if wanted and minutes & wanted == wanted
    ]
    who = min(free, key=lambda person: board.day.people[person].ends, default=None)
    taken = Taken(person=who, start=rest.start, length=rest.length)
    board.take(taken)
    return taken


def _set(board: Board, stay: Stay, taken: dict[tuple[int, int], Taken]) -> None:
    """Write a bath whose heat is on, or was, on the board."""
    bath, number = board.day.baths[stay.bath], stay.bath
    stay.hands = tuple(taken[number, n] for n in range(len(stay.way.hands)))
    board.heat(stay)
    board.stays[stay.pot].append(stay)
    board.rack -= 0 if bath.is_overnight else bath.skeins
    rinse = taken.get((number, _RINSE))
    if rinse is not None:
        stay.rinse = rinse
        _into_sink(board, stay, rinse)


def _into_sink(board: Board, stay: Stay, rinse: Taken) -> None:
    """Take a sink for the rest of a rinse."""
    wanted = span(rinse.start, end=rinse.start + rinse.length)
    free = [sink for sink, each in enumerate(board.sinks) if each & wanted == wanted]
    if free:
        stay.sink = free[0]
        board.sinks[free[0]] &= ~wanted
