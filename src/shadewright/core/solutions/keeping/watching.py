"""Watching a bottle: from its looks to the gap in which it settled.

Only the first life of a stock is counted. Once it was re-warmed it is a stock that
has settled and come back, and may settle sooner.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from shadewright.core.solutions.keeping.turnbull import Watch
from shadewright.core.solutions.ledger import BottleAct


@dataclass(frozen=True, kw_only=True)
class Seen:
    """What was seen of a bottle or done to it, and at what age in days."""

    days: int
    act: BottleAct


def watched(looks: Iterable[Seen]) -> Watch | None:
    """Return what a bottle's looks say of when it settled.

    Parameters
    ----------
    looks : iterable of Seen
        Looks and re-warmings in the order in which they happened. [d]

    Returns
    -------
    Watch or None
        Last seen clear, first seen settled; None if nobody looked. [d]

    Notes
    -----
    A bottle that was seen clear and settled on one day settled on that day.

    Examples
    --------
    >>> watched([
    ...     Seen(days=10, act=BottleAct.CLEAR),
    ...     Seen(days=31, act=BottleAct.SETTLED),
    ... ])
    Watch(clear_days=10, settled_days=31)
    """
    clear: int | None = None
    for seen in looks:
        if seen.act is BottleAct.REWARMED:
            break
        if seen.act is BottleAct.SETTLED:
            by = max(seen.days, 1)
            return Watch(clear_days=min(clear or 0, by - 1), settled_days=by)
        if seen.act is BottleAct.CLEAR:
            clear = max(seen.days, clear or 0)
    return None if clear is None else Watch(clear_days=clear)
