"""Where a bath could go: the earliest spot on each source, in each pot.

A spot keeps everything that the board says: hands at each of a bath's offsets, the
source and its circuit, somebody who is in, and the pot, washed out where it must be.
"""

from collections.abc import Iterator
from enum import Enum, auto
from typing import NamedTuple

from shadewright.core.planning.board import Board, Stay, is_washed_between
from shadewright.core.planning.day import Stage, WantedBath
from shadewright.core.planning.fitting import pot_of
from shadewright.core.planning.minutes import Minutes, first, last, span
from shadewright.core.planning.ways import Way


class Wanted(Enum):
    """Of the spots: ever earlier ones, ever earlier ones on each source, or all."""

    BETTER = auto()
    BY_SOURCE = auto()
    EVERY = auto()


class Spot(NamedTuple):
    """Where a bath could go: after which stay in its pot, and when, in minutes."""

    way: Way
    pot: int
    room: tuple[bool, float]
    after: int
    fill: int
    heat: int


class Gap(NamedTuple):
    """When the heat may start in a pot, and after which stay in it it is free.

    It is ``ready`` once it is filled, and must be cooled when it ``closes``; ``fill``
    is when the filling starts where that is settled. [min]
    """

    after: int
    ready: int
    closes: int
    fill: int | None


def spots_of(
    board: Board,
    number: int,
    ways: tuple[Way, ...],
    *,
    wanted: Wanted = Wanted.EVERY,
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
    wanted : Wanted
        Which of them. [-]
    fill : int or None
        When the filling is to start, if that is settled. [min]

    Yields
    ------
    Spot
        Where it could go. [min]
    """
    board.spots += 1
    bath = board.day.baths[number]
    pots: dict[tuple[int, ...], list[int]] = {}
    gaps: dict[int, list[Gap]] = {}
    best = board.day.length + 1
    least = min((way.cooled for way in ways), default=0)
    for soonest, _which, way, heats in sorted(_on_sources(board, bath, ways)):
        if wanted is Wanted.BETTER and soonest > best:
            return
        if wanted is Wanted.BY_SOURCE:
            best = board.day.length + 1
        if way.pots not in pots:
            pots[way.pots] = list(_unlike(board, way.pots))
        for pot in pots[way.pots]:
            if pot not in gaps:
                gaps[pot] = list(_gaps(board, number, pot, fill, least))
            most = board.day.length if wanted is Wanted.EVERY else best - way.block
            spot = _in_pot(board, bath, way, pot, heats, gaps[pot], most)
            if spot is None:
                continue
            yield spot
            best = min(best, spot.heat + way.block)
            if wanted is not Wanted.EVERY and best == soonest:
                break


def _on_sources(
    board: Board, bath: WantedBath, ways: tuple[Way, ...]
) -> Iterator[tuple[int, int, Way, Minutes]]:
    # Yields when each way ends at the earliest, pots left aside, its place, the way,
    # and the minutes at which its heat may start; like ways once.
    seen = set()
    hands: dict[tuple[object, ...], Minutes] = {}
    for which, way in enumerate(ways):
        free, circuit = board.sources[way.source], board.circuits[way.source]
        is_pinned = board.day.sources[way.source].name in board.pinned_sources
        times = way.heat, way.ramp, way.block, way.taken
        like = free, circuit, way.power_kw, times, way.pots, is_pinned
        if like in seen:
            continue
        seen.add(like)
        board.spots += 1
        alike = way.hands, way.block, way.cooled
        if alike not in hands:
            hands[alike] = _manned(board, bath, way)
        heats = hands[alike] & board.unheated(way.source, way.taken)
        if circuit and way.power:
            heats &= board.allowed(circuit, way.power_kw, way.power)
        soonest = first(heats)
        if soonest is not None:
            yield soonest + way.block, which, way, heats


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


def _manned(board: Board, bath: WantedBath, way: Way) -> Minutes:
    """Return when the heat may start, as far as it wants people, and is in time."""
    if bath.is_overnight:
        end = board.day.length - way.block
    else:
        end = due_of(board, bath) - way.cooled - bath.minutes[Stage.RINSE]
    found = span(0, end=end + 1)
    if way.power:
        found &= board.manned(way.power)
    for offset, length, _what in way.hands:
        found &= board.hand_starts(length) >> offset
    return found


def _in_pot(
    board: Board,
    bath: WantedBath,
    way: Way,
    pot: int,
    heats: Minutes,
    gaps: list[Gap],
    most: int,
) -> Spot | None:
    """Return the earliest spot in a pot: before, between or after what is in it."""
    if not gaps or gaps[0].ready > most:
        return None
    board.spots += 1
    for gap in gaps:
        heat = first(heats, least=gap.ready)
        if heat is None or heat > most:
            return None
        if heat + way.cooled > gap.closes:
            continue
        fill = gap.fill
        if fill is None:
            length = bath.minutes[Stage.FILL]
            fill = last(board.hand_starts(length), most=heat - length)
        if fill is not None:
            return Spot(way, pot, board.rooms[pot], gap.after, fill, heat)
    return None


def _gaps(
    board: Board, number: int, pot: int, fill: int | None, least: int
) -> Iterator[Gap]:
    # Yields when a pot is free for a bath, washed where it must be, and long enough.
    bath, stays = board.day.baths[number], board.stays[pot]
    length = bath.minutes[Stage.FILL]
    if bath.going is not None:
        start, closes = bath.going.fill_start, board.day.length
        yield Gap(len(stays) - 1, start + length, closes, start)
        return
    if pot in board.held:
        return
    if bath.pin is not None and bath.pin.start is not None:
        fill = bath.pin.start
    for after in range(-1, len(stays)):
        closes = _closes(board, bath, pot, after)
        if closes < length + least:
            continue
        opens = 0 if after < 0 else _opens(board, stays[after], bath)
        if opens is None:
            return
        at = first(board.hand_starts(length), least=opens) if fill is None else fill
        if at is not None and opens <= at <= closes - length - least:
            yield Gap(after, at + length, closes, fill)


def _opens(board: Board, before: Stay, bath: WantedBath) -> int | None:
    """Return when a pot is free for the hands that fill it for a bath after another."""
    freed = _freed(board, before)
    if freed is None:
        return None
    opens, rinsed = freed
    if is_washed_between(board.day.baths[before.bath], bath):
        washed = first(board.hand_starts(board.day.washout), least=rinsed)
        return None if washed is None else washed + board.day.washout
    return rinsed if bath.minutes[Stage.FILL] else opens


def _freed(board: Board, stay: Stay) -> tuple[int, int] | None:
    """Return when a pot is free again, and when whoever rinses what was in it is.

    What was not rinsed yet is rinsed first; a second person need not wait for that.
    """
    bath = board.day.baths[stay.bath]
    if stay.rinse is not None:
        at = max(stay.rinse.start, board.day.now)
        return at, at
    if bath.is_overnight:
        return None
    length = bath.minutes[Stage.RINSE]
    found = board.first_rinse(stay, length)
    if found is None:
        return None
    return found[0], found[0] + (length if len(board.people) == 1 else 0)


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
