"""Where a bath could go: the earliest spot on each source, in each pot.

A spot keeps everything that the board says: hands at each of a bath's offsets, the
source and its circuit, somebody who is in, and the pot, washed out where it must be.
"""

from collections.abc import Iterator
from typing import NamedTuple

from shadewright.core.planning.board import Board, Stay, is_washed_between
from shadewright.core.planning.day import Stage, WantedBath
from shadewright.core.planning.fitting import pot_of
from shadewright.core.planning.minutes import Minutes, first, span, starts
from shadewright.core.planning.ways import Way

_TRIES = 40


class Spot(NamedTuple):
    """Where a bath could go: after which stay in its pot, and when, in minutes."""

    way: Way
    pot: int
    room: tuple[bool, float]
    after: int
    fill: int
    heat: int


class Gap(NamedTuple):
    """When a pot is free, and after which stay; ``fill`` where that is settled."""

    after: int
    opens: int
    closes: int
    fill: int | None


def spots_of(
    board: Board,
    number: int,
    ways: tuple[Way, ...],
    *,
    is_first: bool = False,
    fill: int | None = None,
) -> Iterator[Spot]:
    """Yield the earliest spot on each source, in each pot.

    Parameters
    ----------
    board : Board
        What is taken; it counts the spots. [-]
    number : int
        The bath. [-]
    ways : tuple of Way
        How it can be dyed. [-]
    is_first : bool
        Whether only ever better spots are wanted. [-]
    fill : int or None
        When the filling is to start, if that is settled. [min]

    Yields
    ------
    Spot
        Where it could go. [min]
    """
    board.spots += 1
    bath = board.day.baths[number]
    gaps: dict[int, tuple[Gap, ...]] = {}
    best = board.day.length + 1
    for way, heats in _on_sources(board, bath, ways):
        soonest = first(heats)
        if soonest is None or (is_first and soonest + way.block > best):
            continue
        for pot in _unlike(board, way.pots):
            if pot not in gaps:
                gaps[pot] = tuple(_gaps(board, number, pot, fill))
            spot = _in_pot(board, bath, way, pot, heats, gaps[pot])
            board.spots += 1
            if spot is None:
                continue
            yield spot
            best = min(best, spot.heat + way.block)
            if is_first and spot.heat == soonest:
                break


def _on_sources(
    board: Board, bath: WantedBath, ways: tuple[Way, ...]
) -> Iterator[tuple[Way, Minutes]]:
    # Yields each way with the minutes at which its heat may start; like ones once.
    seen = set()
    for way in ways:
        free, circuit = board.sources[way.source], board.circuits[way.source]
        is_pinned = board.day.sources[way.source].name in board.pinned_sources
        times = way.heat, way.ramp, way.block, way.taken
        like = free, circuit, way.power_kw, times, way.pots, is_pinned
        if like not in seen:
            seen.add(like)
            yield way, _heat_starts(board, bath, way)


def _unlike(board: Board, pots: tuple[int, ...]) -> Iterator[int]:
    # Of empty pots of a size the first; one that a bath is pinned to stays apart.
    seen = set()
    for pot in pots:
        if board.stays[pot] or pot in board.held:
            yield pot
        elif (like := (board.rooms[pot], _out_from(board, pot))) not in seen:
            seen.add(like)
            yield pot


def due_of(board: Board, bath: WantedBath) -> int:
    """Return when a bath has to be rinsed: when it is due, or the day ends.

    One that is going is rinsed late rather than never.

    Parameters
    ----------
    board : Board
        The day. [-]
    bath : WantedBath
        The bath. [-]

    Returns
    -------
    int
        The last minute. [min]
    """
    if bath.due is None or bath.going is not None:
        return board.day.length
    return min(bath.due, board.day.length)


def _heat_starts(board: Board, bath: WantedBath, way: Way) -> Minutes:
    """Return when the heat may start on a source, pots left aside."""
    if way.taken is None:
        busy = ~board.sources[way.source] & span(0, end=board.day.length)
        found = span(busy.bit_length(), end=board.day.length)
    else:
        found = starts(board.sources[way.source], max(way.taken, 1))
    circuit = board.circuits[way.source]
    if way.power:
        found &= starts(board.presence, way.power)
        if circuit:
            found &= starts(board.allowed(circuit, way.power_kw), way.power)
    for offset, length, _what in way.hands:
        found &= board.hand_starts(length) >> offset
    if bath.is_overnight:
        return found & span(0, end=board.day.length - way.block + 1)
    rest = way.cooled + bath.minutes[Stage.RINSE]
    return found & span(0, end=due_of(board, bath) - rest + 1)


def _in_pot(
    board: Board,
    bath: WantedBath,
    way: Way,
    pot: int,
    heats: Minutes,
    gaps: tuple[Gap, ...],
) -> Spot | None:
    """Return the earliest spot in a pot: before, between or after what is in it."""
    length = bath.minutes[Stage.FILL]
    for gap in gaps:
        heat = first(heats, least=gap.opens + length)
        for _try in range(_TRIES):
            if heat is None or heat + way.cooled > gap.closes:
                break
            fill = gap.fill
            if fill is None:
                fill = board.last_fill(length, least=gap.opens, most=heat - length)
            if fill is not None:
                return Spot(
                    way=way,
                    pot=pot,
                    room=board.rooms[pot],
                    after=gap.after,
                    fill=fill,
                    heat=heat,
                )
            heat = first(heats, least=heat + 1)
    return None


def _gaps(board: Board, number: int, pot: int, fill: int | None) -> Iterator[Gap]:
    # Yields when a pot is free for a bath, washed where it must be.
    bath, stays = board.day.baths[number], board.stays[pot]
    if bath.going is not None:
        start, closes = bath.going.fill_start, board.day.length
        yield Gap(after=len(stays) - 1, opens=start, closes=closes, fill=start)
        return
    if pot in board.held:
        return
    if bath.pin is not None and bath.pin.start is not None:
        fill = bath.pin.start
    for after in range(-1, len(stays)):
        opens = 0 if after < 0 else _opens(board, stays[after], bath)
        if opens is None:
            return
        if fill is None or fill >= opens:
            closes = _closes(board, bath, pot, after)
            start = opens if fill is None else fill
            yield Gap(after=after, opens=start, closes=closes, fill=fill)


def _opens(board: Board, before: Stay, bath: WantedBath) -> int | None:
    """Return when a pot is free and clean for a bath after another."""
    freed = _freed(board, before)
    is_washed = is_washed_between(board.day.baths[before.bath], bath)
    if freed is None or not is_washed:
        return freed
    washed = first(board.hand_starts(board.day.washout), least=freed)
    return None if washed is None else washed + board.day.washout


def _freed(board: Board, stay: Stay) -> int | None:
    """Return when a pot is free again; what was not rinsed yet is rinsed first."""
    bath = board.day.baths[stay.bath]
    if stay.rinse is not None:
        return max(stay.rinse.start, board.day.now)
    if bath.is_overnight:
        return None
    found = board.first_rinse(stay, bath.minutes[Stage.RINSE])
    return None if found is None else found[0]


def _closes(board: Board, bath: WantedBath, pot: int, after: int) -> int:
    """Return when the next bath of a pot wants it: the rinse starts before."""
    stays, out_from = board.stays[pot], _out_from(board, pot)
    if after + 1 >= len(stays):
        if out_from is None:
            return board.day.length
        return -1 if bath.is_overnight else min(out_from, board.day.length)
    follows = stays[after + 1]
    if bath.is_overnight:
        return -1
    is_washed = is_washed_between(bath, board.day.baths[follows.bath])
    return follows.fill.start - (board.day.washout if is_washed else 0)


def _out_from(board: Board, pot: int) -> int | None:
    """Return from when on a pot cannot be used; None for trays and whole pots."""
    return pot_of(board.day, pot).out_from
