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

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from math import exp

from shadewright.core.planning.bounds import bound_of
from shadewright.core.planning.day import Day, PlaceBefore, Stage
from shadewright.core.planning.sequences import (
    KEPT,
    Drawn,
    Order,
    Work,
    drawn,
    order_before,
    whole_order,
)
from shadewright.core.planning.ways import Way
from shadewright.core.uncertainty.sampling import RandomSource

SPOTS_PER_SECOND = 110_000
"""The budget that a second stands for: a quiet machine of 2020 looks at more. [1/s]"""
_WARM, _COLD = 0.015, 0.002
_MEAN_SHARE = 0.5
_LEFT_OUT = 10_000.0
_CHOICES = 3
_ROUND, _GROWS = 220_000, 5
"""Spots of the first search, and how much more the next one ends at. [-]"""
_LEAST = 20
"""An order takes time though no spot is looked at, where nothing goes in. [-]"""
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
    at, here = Order(moves=(), choices=()), 0.0
    for order in _rules(work):
        found = drawn(work, order)
        used, count = used + max(found.spots, _LEAST), count + 1
        if best is None or found.cost < best.cost:
            best, at, here = found, order, energy(found, day)
        yield _tried(work, best, count, used, bound)
    top, since, until = at, 0, min(_ROUND, spots)
    while best is not None and used < _budget(best, bound, spots) and at.moves:
        if used >= until:
            since, until = until, min(_GROWS * until, spots)
            at, here = top, energy(best, day)
        order = _changed(at, draws, work)
        found = drawn(work, order)
        used, count = used + max(found.spots, _LEAST), count + 1
        there = energy(found, day)
        warmth = (
            best.end * _WARM * (_COLD / _WARM) ** ((used - since) / (until - since))
        )
        if there <= here or draws.random() < exp(-(there - here) / max(warmth, 1e-9)):
            at, here = order, there
        if found.cost < best.cost:
            best, top = found, order
        yield _tried(work, best, count, used, bound)


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


def _rules(work: Work) -> Iterator[Order]:
    # Yields orders by rules of thumb: due first, long first, pale first, and so on.
    baths = work.day.baths
    numbers = range(len(baths))
    long = [_least_minutes(work, n) for n in numbers]
    due = [baths[n].due or work.day.length for n in numbers]
    rules: tuple[Sequence[tuple[object, ...]], ...] = (
        [(due[n], -long[n]) for n in numbers],
        [(-long[n],) for n in numbers],
        [(baths[n].is_overnight, -long[n]) for n in numbers],
        [(baths[n].family, baths[n].depth_percent) for n in numbers],
        [(baths[n].depth_percent,) for n in numbers],
        [(long[n],) for n in numbers],
    )
    if work.before:
        yield order_before(work)
    settled = [_pinned_at(work, n) for n in numbers]
    if any(bath.pin for bath in baths):
        rules += ([(baths[n].pin is None, due[n], -long[n]) for n in numbers],)
    for rule in rules:
        by = sorted(numbers, key=lambda n: (settled[n], rule[n]))
        yield whole_order(work, by)


def _pinned_at(work: Work, number: int) -> int:
    """Return when a bath has to start; after all others where nothing says so."""
    pin = work.day.baths[number].pin
    return work.day.length if pin is None or pin.start is None else pin.start


def _least_minutes(work: Work, number: int) -> int:
    """Return how long a bath takes at least, from the heat on."""
    bath = work.day.baths[number]
    if bath.is_overnight:
        return min((way.block for way in work.ways[number]), default=0)
    cooled = min((way.cooled for way in work.ways[number]), default=0)
    return cooled + bath.minutes[Stage.RINSE]


def _changed(order: Order, draws: RandomSource, work: Work) -> Order:
    """Return an order that differs a little."""
    moves, choices = list(order.moves), list(order.choices)
    kind = draws.random()
    if kind < 0.55:
        move = moves.pop(_drawn(draws, len(moves)))
        moves.insert(_drawn(draws, len(moves) + 1), move)
    elif kind < 0.85:
        one, other = _drawn(draws, len(moves)), _drawn(draws, len(moves))
        moves[one], moves[other] = moves[other], moves[one]
    else:
        bath = _drawn(draws, len(choices))
        choices[bath] = _other_choice(choices[bath], draws, can_keep=work.kept[bath])
    return Order(moves=tuple(moves), choices=tuple(choices))


def _other_choice(choice: int, draws: RandomSource, *, can_keep: Sequence[Way]) -> int:
    """Return another spot for a bath: the one that it had half of the time."""
    if can_keep and choice != KEPT and draws.random() < 0.5:
        return KEPT
    return 0 if choice else 1 + _drawn(draws, _CHOICES)


def _drawn(draws: RandomSource, count: int) -> int:
    return min(int(draws.random() * count), count - 1)
