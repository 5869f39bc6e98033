"""A better order, again and again: local search over what is placed when.

Orders by a few rules of thumb come first. The best of them is then changed a little at
a time (one move elsewhere, two swapped, one bath on its second-best spot). A change
that betters the plan stays; one that worsens it stays with a chance that falls as the
budget is used up [kirkpatrick1983]_:

    p = exp(−ΔE / T),  E = end + m̄/2,  T from 1.5 % of the end to 0.2 %    (3)

with m̄ the mean end of the baths, which tells two plans of one end apart; E has small
prices for pots washed out, turns, late baths and changes too. T falls once in each
round, and a round begins at the best of those before, so that more patience than that
of a round is never worse. Draws come from a generator with a seed, and the budget is
counted in spots looked at, not in seconds, so that the same day gives the same plan.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from math import exp

from shadewright.core.planning.beginnings import rules_of_thumb
from shadewright.core.planning.bounds import bound_of
from shadewright.core.planning.day import Day, PlaceBefore
from shadewright.core.planning.neighbours import neighbour
from shadewright.core.planning.sequences import Drawn, Order, Work, drawn
from shadewright.core.planning.trails import Trail
from shadewright.core.uncertainty.sampling import RandomSource

SPOTS_PER_SECOND = 110_000
"""The budget that a second stands for: a quiet machine of 2020 looks at more. [1/s]"""
_WARM, _COLD = 0.015, 0.002
_MEAN_SHARE = 0.5
_LEFT_OUT = 10_000.0
_ROUND, _GROWS = 220_000, 5
"""Spots of the first search, and how much more the next one ends at. [-]"""
_PER_ORDER = 10
"""An order takes as long as so many spots, besides those that it looks at. [-]"""
_CALM = 0.25
_LATE, _WASHOUT, _TURN = 5.0, 0.5, 0.1


@dataclass(frozen=True, kw_only=True, eq=False)
class Tried:
    """The best plan so far, and how many orders and spots that took, in minutes."""

    best: Drawn
    orders: int
    spots: int
    bound: int
    before: Mapping[str, PlaceBefore] = field(default_factory=dict)

    @property
    def is_proved(self) -> bool:
        """Whether no plan can end earlier."""
        return not self.best.left_out and self.best.end <= self.bound


def searched(
    day: Day,
    *,
    spots: int,
    draws: RandomSource,
    before: Mapping[str, PlaceBefore] | None = None,
) -> Iterator[Tried]:
    """Yield the best plan after every order that was tried.

    Parameters
    ----------
    day : Day
        What there is and what is wished. [min]
    spots : int
        How many spots to look at, in all orders together. [-]
    draws : RandomSource
        A seeded generator. [-]
    before : mapping of str to PlaceBefore or None
        Where each bath stood in the plan that is replaced; the search begins there, and
        each change has its price. [min]

    Yields
    ------
    Tried
        The best so far; the search ends early where it cannot be bettered. [min]
    """
    work = Work.of(day, before or {})
    bound, used, count = bound_of(work), 0, 0
    best: Drawn | None = None
    at = Order(moves=(), choices=())
    for order in rules_of_thumb(work):
        found = drawn(work, order)
        used, count = used + found.spots + _PER_ORDER, count + 1
        if best is None or found.cost < best.cost:
            best, at = found, order
        yield _tried(work, best, count, used, bound)
    if best is None or not at.moves:
        return
    top, here, trail = at, energy(best, day), Trail(work, at)
    since, until = 0, min(_ROUND, spots)
    while used < _budget(best, bound, spots):
        if used >= until:
            since, until = until, min(_GROWS * until, spots)
            at, here = top, energy(best, day)
            trail.follow(at)
        order = neighbour(at, draws, work)
        used += _PER_ORDER
        if order == at:
            continue
        found = trail.drawn(order)
        used, count = used + found.spots, count + 1
        there = energy(found, day)
        warmth = _warmth(best.end, (used - since) / (until - since))
        if there <= here or draws.random() < exp(-(there - here) / warmth):
            at, here = order, there
            trail.follow(at)
        if found.cost < best.cost:
            best, top = found, order
        yield _tried(work, best, count, used, bound)


def _warmth(end: int, share: float) -> float:
    """Return T of equation 3 once a share of a round is over."""
    warmth: float = end * _WARM * (_COLD / _WARM) ** share
    return max(warmth, 1e-9)


def searched_for(
    day: Day,
    *,
    seconds: float,
    draws: RandomSource,
    before: Mapping[str, PlaceBefore] | None = None,
    goes_on: Callable[[Tried], bool],
) -> tuple[Tried, bool]:
    """Return the best plan of a budget in seconds, and whether it was broken off.

    Parameters
    ----------
    day : Day
        What there is and what is wished. [min]
    seconds : float
        What a quiet machine may take; counted as ``SPOTS_PER_SECOND``. [s]
    draws : RandomSource
        A seeded generator. [-]
    before : mapping of str to PlaceBefore or None
        Where each bath stood in the plan that is replaced. [min]
    goes_on : callable
        Hears of each plan that was tried; False breaks the search off. [-]

    Returns
    -------
    tuple of (Tried, bool)
        The best so far, and whether ``goes_on`` ended it. [min]
    """
    spots = round(seconds * SPOTS_PER_SECOND)
    tries = searched(day, spots=spots, draws=draws, before=before)
    best = next(tries)
    while goes_on(best):
        following = next(tries, None)
        if following is None:
            return best, False
        best = following
    return best, True


def _tried(work: Work, best: Drawn, orders: int, spots: int, bound: int) -> Tried:
    return Tried(best=best, orders=orders, spots=spots, bound=bound, before=work.before)


def _budget(best: Drawn, bound: int, spots: int) -> float:
    """Return how many spots to look at: few where only calm is left to be won."""
    cost = best.cost
    if best.left_out or cost.end > bound:
        return spots
    return _CALM * spots if cost.washouts or cost.turns or cost.changes else 0


def energy(found: Drawn, day: Day) -> float:
    """Return how bad a plan is: E of equation 3, and much more for what is left out.

    Parameters
    ----------
    found : Drawn
        A plan. [min]
    day : Day
        Its day. [-]

    Returns
    -------
    float
        Badness. [min]
    """
    cost = found.cost
    missed = sum(0.5**place for place, is_out in enumerate(cost.due_out) if is_out)
    left = 100.0 * cost.pinned_out + 10.0 * missed + cost.others_out
    mean = cost.ends / max(len(day.baths), 1)
    strayed = _LATE * cost.late + _WASHOUT * cost.washouts + _TURN * cost.turns
    return _LEFT_OUT * left + cost.priced + _MEAN_SHARE * mean + strayed
