"""What is left in a bottle, reckoned from everything that happened to it.

What each line does stands in ``moves``, and what it does to the spread in
``carrying``. Nothing is ever rubbed out: an undo is a line of its own that names
the line it takes back; both stay in the ledger and neither counts.
"""

from collections.abc import Iterable, Sequence

from shadewright.core.solutions.acts import BottleAct, BottleState, LedgerLine
from shadewright.core.solutions.moves import after

__all__ = [
    "BottleAct",
    "BottleState",
    "LedgerLine",
    "bottle_state",
    "running_states",
    "standing",
]


def standing(lines: Iterable[LedgerLine]) -> tuple[LedgerLine, ...]:
    """Return the lines that count: neither undone nor an undo.

    Parameters
    ----------
    lines : iterable of LedgerLine
        A ledger, oldest first.

    Returns
    -------
    tuple of LedgerLine
        The same order, without the lines taken back and their counter-lines.
    """
    kept = tuple(lines)
    undone = {line.undoes for line in kept if line.undoes is not None}
    return tuple(
        line for line in kept if line.undoes is None and line.number not in undone
    )


def bottle_state(lines: Iterable[LedgerLine]) -> BottleState:
    """Return a bottle as its ledger leaves it.

    Parameters
    ----------
    lines : iterable of LedgerLine
        The whole ledger, oldest first.

    Returns
    -------
    BottleState
        Volume [mL], dye [g] and strength [%] that are left.

    Raises
    ------
    OutOfRangeError
        If more is drawn than the bottle holds, or the stock would be stronger
        than any can be.
    ConflictError
        If something happens to a bottle that was never filled or was poured
        away, water or powder goes into an empty one, or two bottles disagree.

    Notes
    -----
    Volumes are taken as additive, which holds at the strength of a stock.
    Source: conservation of mass; no published example used.

    Examples
    --------
    >>> made = LedgerLine(
    ...     number=1, act=BottleAct.FILLED, volume_ml=500, strength_percent=1
    ... )
    >>> drawn = LedgerLine(number=2, act=BottleAct.DRAWN, volume_ml=35)
    >>> bottle_state([made, drawn]).volume_ml
    465.0
    """
    return running_states(standing(lines))[-1]


def running_states(lines: Sequence[LedgerLine]) -> tuple[BottleState, ...]:
    """Return the state before the first line and after each line that counts.

    Parameters
    ----------
    lines : sequence of LedgerLine
        Standing lines, oldest first.

    Returns
    -------
    tuple of BottleState
        One more than there are lines.
    """
    states = [BottleState()]
    for line in lines:
        states.append(after(states[-1], line))
    return tuple(states)
