"""From an order of the baths to a plan, and how good a plan is."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from shadewright.core.planning.board import Board, Stay
from shadewright.core.planning.day import Day
from shadewright.core.planning.placing import placed, rinsed
from shadewright.core.planning.ways import Way, ways_of


class Cost(NamedTuple):
    """What a plan costs, the worst first; the less the better.

    Pinned baths that did not fit; which of those that are due, the earliest first;
    how many others; when the last ends; pots washed out; all ends together, in minutes.
    """

    pinned_out: int
    due_out: tuple[bool, ...]
    others_out: int
    end: int
    washouts: int
    ends: int


@dataclass(frozen=True, kw_only=True)
class Order:
    """Each bath stands twice, first to be dyed, then to be rinsed; overnight once.

    ``choices`` say of each bath which of its spots it takes, 0 being the earliest.
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
    """A day with the ways of each bath, found once."""

    day: Day
    ways: tuple[tuple[Way, ...], ...]

    @classmethod
    def of(cls, day: Day) -> "Work":
        """Return a day ready to be planned."""
        return cls(day=day, ways=tuple(ways_of(bath, day) for bath in day.baths))


def drawn(work: Work, order: Order) -> Drawn:
    """Return the plan of an order, each bath as early as it fits.

    Parameters
    ----------
    work : Work
        The day. [-]
    order : Order
        Which bath is placed when. [-]

    Returns
    -------
    Drawn
        The plan; what did not fit is left out. [min]
    """
    left: set[int] = set()
    spots = 0
    while True:
        board = Board.empty(work.day)
        stuck = _fill(work, board, order, left)
        spots += board.spots
        if stuck is None:
            return _counted(work, board, left, spots)
        left.add(stuck)


def _fill(work: Work, board: Board, order: Order, left: set[int]) -> int | None:
    """Place all baths by an order; return one that could never be rinsed, if any."""
    found: dict[int, Stay] = {}
    for number in order.moves:
        stay = found.get(number)
        if number in left:
            continue
        if stay is None:
            stay = _placed(work, board, number, order)
            if stay is None:
                left.add(number)
            else:
                found[number] = stay
        elif _wants_rinse(work, stay) and not rinsed(board, stay):
            return number
    return None


def _placed(work: Work, board: Board, number: int, order: Order) -> Stay | None:
    bath = work.day.baths[number]
    hangs = 0 if bath.is_overnight else bath.skeins
    if hangs > board.rack:
        return None
    stay = placed(board, number, work.ways[number], choice=order.choices[number])
    if stay is not None:
        board.rack -= hangs
    return stay


def _wants_rinse(work: Work, stay: Stay) -> bool:
    return stay.rinse is None and not work.day.baths[stay.bath].is_overnight


def _counted(work: Work, board: Board, left: set[int], spots: int) -> Drawn:
    stays = [stay for each in board.stays for stay in each]
    ends = [_end(stay) for stay in stays]
    pinned, due, others = _left_cost(work.day, left)
    cost = Cost(
        pinned_out=pinned,
        due_out=due,
        others_out=others,
        end=max(ends, default=0),
        washouts=sum(1 for stay in stays if stay.washout is not None),
        ends=sum(ends),
    )
    return Drawn(board=board, left_out=tuple(sorted(left)), cost=cost, spots=spots)


def _end(stay: Stay) -> int:
    if stay.rinse is None:
        return stay.checked
    return stay.rinse.start + stay.rinse.length


def _left_cost(day: Day, left: set[int]) -> tuple[int, tuple[bool, ...], int]:
    """Return what leaving baths out costs: pinned most, then the earliest due."""
    pinned = sum(1 for n in left if day.baths[n].pin is not None)
    due = sorted(
        (bath.due, n)
        for n, bath in enumerate(day.baths)
        if bath.due is not None and bath.pin is None
    )
    missed = tuple(n in left for _at, n in due)
    others = len(left) - pinned - sum(missed)
    return pinned, missed, others


def whole_order(work: Work, by: Sequence[int]) -> Order:
    """Return an order of baths as moves: all dyed by it, then all rinsed by it.

    Parameters
    ----------
    work : Work
        The day. [-]
    by : sequence of int
        The baths in order. [-]

    Returns
    -------
    Order
        Each bath on its earliest spot. [-]
    """
    rinses = [n for n in by if not work.day.baths[n].is_overnight]
    return Order(moves=(*by, *rinses), choices=(0,) * len(work.day.baths))
