"""Orders that differ a little: one move elsewhere, two swapped, another spot.

Another spot seldom betters a plan and seldom worsens it, so that left to chance half of
the baths stray from their earliest one. Each of these is dear to place, since all of
its spots are looked at. So few steps change a spot, and most of them lead a bath back.
"""

from shadewright.core.planning.placing import OTHER_POT
from shadewright.core.planning.sequences import KEPT, Order, Work
from shadewright.core.uncertainty.sampling import RandomSource

_MOVED, _SWAPPED, _SWAPPED_ANEW = 0.6, 0.95, 0.85
"""Below which draw one move goes elsewhere, below which two are swapped. [1]"""
_BACK = 0.8
"""How often a change of spot leads a bath back to its earliest, if one strayed. [1]"""


def neighbour(order: Order, draws: RandomSource, work: Work) -> Order:
    """Return an order that differs a little, or by chance not at all.

    Parameters
    ----------
    order : Order
        An order with moves. [-]
    draws : RandomSource
        A seeded generator. [-]
    work : Work
        Its day; where a plan stood before, spots change more often. [-]

    Returns
    -------
    Order
        Another. [-]
    """
    moves, choices = list(order.moves), list(order.choices)
    kind = draws.random()
    if kind < _MOVED:
        move = moves.pop(_drawn(draws, len(moves)))
        moves.insert(_drawn(draws, len(moves) + 1), move)
    elif kind < (_SWAPPED_ANEW if work.before else _SWAPPED):
        one, other = _drawn(draws, len(moves)), _drawn(draws, len(moves))
        moves[one], moves[other] = moves[other], moves[one]
    else:
        _change_spot(choices, draws, work)
    return Order(moves=tuple(moves), choices=tuple(choices))


def _change_spot(choices: list[int], draws: RandomSource, work: Work) -> None:
    """Lead a bath back to its earliest spot, or give any bath another one."""
    strayed = [bath for bath, choice in enumerate(choices) if choice > 0]
    if strayed and draws.random() < _BACK:
        choices[strayed[_drawn(draws, len(strayed))]] = 0
        return
    bath = _drawn(draws, len(choices))
    can_keep = bool(work.kept[bath])
    choices[bath] = _other_choice(choices[bath], draws, can_keep=can_keep)


def _other_choice(choice: int, draws: RandomSource, *, can_keep: bool) -> int:
    """Return another spot for a bath: the one that it had half of the time."""
    if can_keep and choice != KEPT and draws.random() < 0.5:
        return KEPT
    return 0 if choice else 1 + _drawn(draws, OTHER_POT)


def _drawn(draws: RandomSource, count: int) -> int:
    return min(int(draws.random() * count), count - 1)
