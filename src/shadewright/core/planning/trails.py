"""Orders that begin alike: what they share is placed once.

A search changes an order late or early in its list. The board after every few moves of
the order at hand is kept, so that a changed one is placed from the last of these boards
before its first change on. Plans are the same as without.
"""

from itertools import takewhile
from typing import NamedTuple

from shadewright.core.planning.board import Board
from shadewright.core.planning.sequences import (
    Drawn,
    Order,
    Work,
    costed,
    drawn,
    fill,
)

_EVERY = 3
"""How many moves lie between two boards that are kept. [-]"""
_COPY = 5
"""A board that is copied takes as long as so many spots. [-]"""


class _Mark(NamedTuple):
    """The board before some move, and what is left out by then."""

    at: int
    board: Board
    left: frozenset[int]


class Trail:
    """The boards along the moves of one order."""

    def __init__(self, work: Work, order: Order) -> None:
        self._work, self._order = work, order
        self._marks = [_Mark(0, work.begun, frozenset())]

    def follow(self, order: Order) -> None:
        """Keep the boards of another order from now on."""
        shared = self._shared(order)
        self._marks = [mark for mark in self._marks if mark.at <= shared]
        self._order = order

    def drawn(self, order: Order) -> Drawn:
        """Return the plan of an order; its spots are those looked at for it alone."""
        shared = self._shared(order)
        mark = [mark for mark in self._marks if mark.at <= shared][-1]
        board, left, at = mark.board.copied(), set(mark.left), mark.at
        board.spots = _COPY
        stuck = None
        while stuck is None and at + _EVERY <= shared:
            stuck = fill(self._work, board, order, left, since=at, until=at + _EVERY)
            at += _EVERY
            if stuck is None:
                board.spots += _COPY
                self._marks.append(_Mark(at, board.copied(), frozenset(left)))
        if stuck is None:
            stuck = fill(self._work, board, order, left, since=at)
        if stuck is None:
            return costed(self._work, board, left, spots=board.spots)
        return drawn(self._work, order, without={*left, stuck}, spots=board.spots)

    def _shared(self, order: Order) -> int:
        """Return before which move an order differs for the first time."""
        one, other = self._order, order
        pairs = zip(one.moves, other.moves, strict=True)
        alike = takewhile(
            lambda pair: (
                pair[0] == pair[1] and one.choices[pair[0]] == other.choices[pair[0]]
            ),
            pairs,
        )
        return sum(1 for _pair in alike)
