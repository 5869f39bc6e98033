"""Orders that differ a little: one move elsewhere, two swapped, another spot."""

from collections.abc import Sequence

from shadewright.core.planning.placing import OTHER_POT
from shadewright.core.planning.sequences import KEPT, Order, Work
from shadewright.core.planning.ways import Way
from shadewright.core.uncertainty.sampling import RandomSource

_MOVED, _SWAPPED = 0.55, 0.85
"""Below which draw one move goes elsewhere, below which two are swapped. [1]"""


def neighbour(order: Order, draws: RandomSource, work: Work) -> Order:
    """Return an order that differs a little, or by chance not at all.

    Parameters
    ----------
    order : Order
        An order with moves. [-]
    draws : RandomSource
        A seeded generator. [-]
    work : Work
        Its day. [-]

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
    elif kind < _SWAPPED:
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
    return 0 if choice else 1 + _drawn(draws, OTHER_POT)


def _drawn(draws: RandomSource, count: int) -> int:
    return min(int(draws.random() * count), count - 1)
