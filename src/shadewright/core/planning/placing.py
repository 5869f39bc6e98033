"""Placing one bath on the board, as early as it fits [kolisch1996]_.

A bath is placed in two moves: the filling with everything from the heat to the check,
which has no gap; and the rinse, which waits for hands and a sink. Between the two the
pot is taken, and other baths may come first.
"""

from collections.abc import Iterator

from shadewright.core.planning.board import Board, Stay, Taken, is_washed_between
from shadewright.core.planning.day import Stage, WantedBath
from shadewright.core.planning.fitting import pot_of
from shadewright.core.planning.minutes import first, span
from shadewright.core.planning.spots import Spot, Wanted, due_of, spots_of
from shadewright.core.planning.ways import Way

OTHER_POT = 3
"""The choice that is another pot; those below it are other sources. [-]"""
_LISTS = (
    (Wanted.BETTER, Wanted.EVERY),
    (Wanted.BY_SOURCE, Wanted.EVERY),
    (Wanted.BY_SOURCE, Wanted.EVERY),
    (Wanted.EVERY,),
)
_TURN = {Wanted.BY_SOURCE: 2, Wanted.EVERY: 1}


def placed(
    board: Board,
    number: int,
    ways: tuple[Way, ...],
    *,
    choice: int,
    fill: int | None = None,
) -> Stay | None:
    """Place a bath up to its check; None where it fits nowhere.

    Parameters
    ----------
    board : Board
        What is taken; changed. [-]
    number : int
        The bath. [-]
    ways : tuple of Way
        How it can be dyed. [-]
    choice : int
        0 for the spot that ends first, 1 and 2 for the next best with ever earlier ones
        of each source, ``OTHER_POT`` for the next best of all. [-]
    fill : int or None
        When the filling is to start, if that is settled. [min]

    Returns
    -------
    Stay or None
        As placed. [min]
    """
    for spot in _in_turn(board, number, ways, choice, fill):
        stay = _taken(board, number, spot)
        if stay is not None:
            return stay
    return None


def _in_turn(
    board: Board, number: int, ways: tuple[Way, ...], choice: int, fill: int | None
) -> Iterator[Spot]:
    # Yields the spot that is chosen, then others, each looked for only if it must be.
    for wanted in _LISTS[min(choice, OTHER_POT)]:
        spots = spots_of(board, number, ways, wanted=wanted, fill=fill)
        if wanted is Wanted.BETTER:
            yield from sorted(spots, key=_rank)[:1]
        else:
            ranked, at = sorted(spots, key=_rank), min(choice, _TURN[wanted])
            yield from (*ranked[at:], *ranked[:at])


def _rank(spot: Spot) -> tuple[object, ...]:
    """Return what is better: an early end, a pot that nobody needs, a late filling."""
    return (
        spot.heat + spot.way.block,
        spot.room,
        -spot.fill,
        spot.pot,
        spot.way.source,
    )


def rinsed(board: Board, stay: Stay) -> bool:
    """Place the rinse of a bath as early as it fits; tell whether it does.

    Parameters
    ----------
    board : Board
        What is taken; changed. [-]
    stay : Stay
        A bath that was placed; changed. [-]

    Returns
    -------
    bool
        False where nobody can rinse it before it is due. [-]
    """
    bath = board.day.baths[stay.bath]
    length = bath.minutes[Stage.RINSE]
    found = board.first_rinse(stay, length)
    if found is None or found[0] + length > due_of(board, bath):
        return False
    at, sink = found
    by = board.somebody(at, length)
    if by is None:
        return False
    stay.rinse, stay.sink = by, sink
    board.take(by)
    board.sinks[sink] &= ~span(at, end=at + length)
    return True


def _taken(board: Board, number: int, spot: Spot) -> Stay | None:
    """Write a bath on the board; None, and nothing changed, where hands lack."""
    bath, stays = board.day.baths[number], board.stays[spot.pot]
    before = stays[spot.after] if spot.after >= 0 else None
    if before is not None and before.rinse is None and not rinsed(board, before):
        return None
    hands: list[Taken] = []
    washout = None
    if before is not None and _is_washed(board, before, bath):
        opens = max(0, before.rinse.start) if before.rinse else 0
        at = first(board.hand_starts(board.day.washout), least=opens)
        washout = None if at is None else board.somebody(at, board.day.washout)
        if washout is None or washout.start + washout.length > spot.fill:
            return None
        board.take(washout)
        hands.append(washout)
    stay = _with_hands(board, number, spot, hands)
    if stay is None:
        for each in hands:
            board.give_back(each)
        return None
    stay.washout = washout
    follows = stays[spot.after + 1] if spot.after + 1 < len(stays) else None
    out_from = pot_of(board.day, spot.pot).out_from
    if (follows is not None and not _still_fits(board, stay, follows)) or (
        follows is None and out_from is not None and not _frees(board, stay, out_from)
    ):
        for each in hands:
            board.give_back(each)
        return None
    board.heat(stay)
    stays.insert(spot.after + 1, stay)
    board.held.pop(spot.pot, None)
    return stay


def _is_washed(board: Board, before: Stay, bath: WantedBath) -> bool:
    """Return whether a pot is washed out for a bath; not where that one is in it."""
    one = board.day.baths[before.bath]
    return bath.going is None and is_washed_between(one, bath)


def _frees(board: Board, stay: Stay, out_from: int) -> bool:
    """Rinse a bath before its pot is out; what is in it already stays as it is."""
    bath = board.day.baths[stay.bath]
    if bath.going is not None or bath.is_overnight:
        return bath.going is not None
    if not rinsed(board, stay) or stay.rinse is None:
        return False
    if stay.rinse.start > out_from:
        _unrinsed(board, stay)
        return False
    return True


def _with_hands(
    board: Board, number: int, spot: Spot, hands: list[Taken]
) -> Stay | None:
    """Take hands for the filling and all that the bath wants; ``hands`` grows."""
    wanted = [(spot.heat + each.offset, each.length) for each in spot.way.hands]
    taken = []
    filling = board.fillings.get(number)
    if filling is None:
        wanted.insert(0, (spot.fill, board.day.baths[number].minutes[Stage.FILL]))
    else:
        taken.append(filling)
    for start, long in wanted:
        by = board.somebody(start, long)
        if by is None:
            return None
        board.take(by)
        hands.append(by)
        taken.append(by)
    return Stay(
        bath=number,
        way=spot.way,
        pot=spot.pot,
        fill=taken[0],
        heat=spot.heat,
        hands=tuple(taken[1:]),
    )


def _still_fits(board: Board, stay: Stay, follows: Stay) -> bool:
    """Rinse a bath that went in before another, and wash its pot out in time."""
    bath, after = board.day.baths[stay.bath], board.day.baths[follows.bath]
    if not rinsed(board, stay) or stay.rinse is None:
        return False
    old, follows.washout = follows.washout, None
    if old is not None:
        board.give_back(old)
    if not is_washed_between(bath, after):
        fits = stay.rinse.start <= follows.fill.start
    else:
        at = first(board.hand_starts(board.day.washout), least=stay.rinse.start)
        fits = at is not None and at + board.day.washout <= follows.fill.start
        if fits and at is not None:
            follows.washout = board.somebody(at, board.day.washout)
            if follows.washout is not None:
                board.take(follows.washout)
    if not fits:
        _unrinsed(board, stay)
        if old is not None:
            board.take(old)
            follows.washout = old
    return fits


def _unrinsed(board: Board, stay: Stay) -> None:
    if stay.rinse is not None and stay.sink is not None:
        rinse, stay.rinse = stay.rinse, None
        board.give_back(rinse)
        board.sinks[stay.sink] |= span(rinse.start, end=rinse.start + rinse.length)
