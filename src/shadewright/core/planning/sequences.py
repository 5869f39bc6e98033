"""From an order of the baths to a plan, and how good a plan is."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from shadewright.core.planning.board import Board, Stay
from shadewright.core.planning.day import Day, PlaceBefore
from shadewright.core.planning.fitting import pot_of
from shadewright.core.planning.going import put_on
from shadewright.core.planning.keeping import changes_of, price_of
from shadewright.core.planning.placing import placed, rinsed
from shadewright.core.planning.turns import turns_of
from shadewright.core.planning.ways import Way, ways_of

KEPT = -1
"""Of the spots of a bath, the one that it had before. [-]"""


class Cost(NamedTuple):
    """What a plan costs, the worst first; the less the better.

    Pinned baths that did not fit, and begun ones that are not rinsed; which of those
    that are due, the earliest first; how many others; how late begun ones are rinsed;
    when the last ends, and with the price of what changes; pots washed out; turns back
    to a paler bath or a family left before; all ends together, in minutes.
    """

    pinned_out: int
    due_out: tuple[bool, ...]
    others_out: int
    late: int
    priced: float
    end: int
    washouts: int
    turns: int
    ends: int

    @property
    def changes(self) -> float:
        """What the changes count for, in minutes."""
        return self.priced - self.end


@dataclass(frozen=True, kw_only=True)
class Order:
    """Each bath stands twice, first to be dyed, then to be rinsed; overnight once.

    One whose heat is on stands to be rinsed alone. ``choices`` say of each bath which
    of its spots it takes, 0 being the earliest, and KEPT the one that it had before.
    """

    moves: tuple[int, ...]
    choices: tuple[int, ...]


@dataclass(frozen=True, kw_only=True, eq=False)
class Drawn:
    """A plan that came of an order: its board, and which baths are left out."""

    board: Board
    left_out: tuple[int, ...]
    cost: Cost
    spots: int

    @property
    def end(self) -> int:
        """When the last rinse or check ends, in minutes."""
        return self.cost.end

    @property
    def stays(self) -> tuple[Stay, ...]:
        """Every bath that is dyed, in order of its number."""
        every = [stay for stays in self.board.stays for stay in stays]
        return tuple(sorted(every, key=lambda stay: stay.bath))


@dataclass(frozen=True, kw_only=True)
class Work:
    """A day with the ways of each bath, found once; ``kept`` is the one it had.

    ``begun`` is the board with nothing on it but what is going.
    """

    day: Day
    ways: tuple[tuple[Way, ...], ...]
    before: Mapping[str, PlaceBefore] = field(default_factory=dict)
    kept: tuple[tuple[Way, ...], ...] = ()
    begun: Board

    @classmethod
    def of(cls, day: Day, before: Mapping[str, PlaceBefore]) -> "Work":
        """Return a day ready to be planned."""
        ways = tuple(ways_of(bath, day) for bath in day.baths)
        kept = tuple(
            tuple(_as_before(day, every, before.get(bath.name)))
            for bath, every in zip(day.baths, ways, strict=True)
        )
        begun = Board.empty(day)
        put_on(begun, ways)
        return cls(day=day, ways=ways, before=before, kept=kept, begun=begun)


def _as_before(
    day: Day, ways: tuple[Way, ...], was: PlaceBefore | None
) -> Iterable[Way]:
    # Yields the ways on the source and in the pot that a bath had.
    if was is None:
        return
    for way in ways:
        pots = tuple(pot for pot in way.pots if pot_of(day, pot).name == was.pot)
        if pots and day.sources[way.source].name == was.source:
            yield replace(way, pots=pots)


def drawn(
    work: Work, order: Order, *, without: Iterable[int] = (), spots: int = 0
) -> Drawn:
    """Return the plan of an order, each bath as early as it fits.

    Parameters
    ----------
    work : Work
        The day. [-]
    order : Order
        Which bath is placed when. [-]
    without : iterable of int
        Baths that are left out. [-]
    spots : int
        How many were looked at to find that out. [-]

    Returns
    -------
    Drawn
        The plan; what did not fit is left out. [min]
    """
    left = set(without)
    while True:
        board = work.begun.copied()
        stuck = fill(work, board, order, left)
        spots += board.spots
        if stuck is None:
            return costed(work, board, left, spots=spots)
        left.add(stuck)


def fill(
    work: Work,
    board: Board,
    order: Order,
    left: set[int],
    *,
    since: int = 0,
    until: int | None = None,
) -> int | None:
    """Place the baths of some moves; return one that could never be rinsed, if any.

    Parameters
    ----------
    work : Work
        The day. [-]
    board : Board
        What was placed by the moves before; changed. [-]
    order : Order
        Which bath is placed when. [-]
    left : set of int
        Baths that are left out; grows by those that do not fit. [-]
    since, until : int
        The first move, and the one before which it ends. [-]

    Returns
    -------
    int or None
        The bath at which it ended too early. [-]
    """
    found = {stay.bath: stay for stays in board.stays for stay in stays}
    for number in order.moves[since:until]:
        stay = found.get(number)
        if number in left:
            continue
        if stay is None:
            stay = _placed(work, board, number, order)
            if stay is None:
                left.add(number)
            else:
                found[number] = stay
        elif (
            _wants_rinse(work, stay)
            and not rinsed(board, stay)
            and work.day.baths[number].going is None
        ):
            return number
    return None


def _placed(work: Work, board: Board, number: int, order: Order) -> Stay | None:
    bath = work.day.baths[number]
    hangs = 0 if bath.is_overnight else bath.skeins
    if hangs and hangs > board.rack:
        return None
    choice = order.choices[number]
    stay = _placed_as_before(work, board, number) if choice == KEPT else None
    if stay is None:
        stay = placed(board, number, work.ways[number], choice=max(0, choice))
    if stay is not None:
        board.rack -= hangs
    return stay


def _placed_as_before(work: Work, board: Board, number: int) -> Stay | None:
    """Place a bath where it stood, at its time if that goes, or else when it goes."""
    bath, ways = work.day.baths[number], work.kept[number]
    if not ways:
        return None
    start, stay = work.before[bath.name].start, None
    if start >= work.day.now and bath.going is None:
        stay = placed(board, number, ways, choice=0, fill=start)
    return stay or placed(board, number, ways, choice=0)


def _wants_rinse(work: Work, stay: Stay) -> bool:
    return stay.rinse is None and not work.day.baths[stay.bath].is_overnight


def costed(work: Work, board: Board, left: set[int], *, spots: int) -> Drawn:
    """Return a full board as a plan with its cost.

    Parameters
    ----------
    work : Work
        The day. [-]
    board : Board
        All that was placed. [min]
    left : set of int
        The baths that are left out. [-]
    spots : int
        How many were looked at. [-]

    Returns
    -------
    Drawn
        The plan. [min]
    """
    day = work.day
    stays = [stay for each in board.stays for stay in each]
    ends = [_end(stay) for stay in stays]
    end = max(ends, default=0)
    pinned, due, others = _left_cost(day, left)
    stays.sort(key=lambda stay: (stay.fill.start, stay.bath))
    prices = map(price_of, changes_of(stays, day, work.before) if work.before else ())
    cost = Cost(
        pinned_out=pinned + sum(1 for stay in stays if _wants_rinse(work, stay)),
        due_out=due,
        others_out=others,
        late=sum(_late(day, stay) for stay in stays),
        priced=end + day.ticks_per_min * sum(prices),
        end=end,
        washouts=sum(1 for stay in stays if stay.washout is not None),
        turns=turns_of(day.baths[stay.bath] for stay in stays),
        ends=sum(ends),
    )
    return Drawn(board=board, left_out=tuple(sorted(left)), cost=cost, spots=spots)


def _end(stay: Stay) -> int:
    if stay.rinse is None:
        return stay.checked
    return stay.rinse.start + stay.rinse.length


def _late(day: Day, stay: Stay) -> int:
    """Return how long after it was due a begun bath is rinsed."""
    due = day.baths[stay.bath].due
    return 0 if due is None or stay.rinse is None else max(0, _end(stay) - due)


def _left_cost(day: Day, left: set[int]) -> tuple[int, tuple[bool, ...], int]:
    """Return what leaving baths out costs: pinned most, then the earliest due."""
    settled = {n for n, bath in enumerate(day.baths) if bath.pin or bath.going}
    pinned = len(left & settled)
    due = sorted(
        (bath.due, n)
        for n, bath in enumerate(day.baths)
        if bath.due is not None and n not in settled
    )
    missed = tuple(n in left for _at, n in due)
    others = len(left) - pinned - sum(missed)
    return pinned, missed, others
