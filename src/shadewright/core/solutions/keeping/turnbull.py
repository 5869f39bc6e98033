"""Turnbull's estimate: how large a share of bottles is still clear by a day.

Nobody sees a stock settle. It was clear when somebody looked, and at a later look it
was not: the day lies in between. Or it is clear still, and its day lies ahead. Where
each bottle leaves such a gap, the curve that fits all gaps best can fall only inside
a few of them, the *innermost*: those that open where some bottle was last seen clear
and close, with nothing in between, where some bottle was first seen settled. How far
it falls in each is found by going round: share every bottle out over the gaps in its
reach, take the sums as the new falls, and again.

Where every gap is one day wide this is the estimate of Kaplan and Meier, and the
spread is Greenwood's.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from math import exp, fsum, inf, log, sqrt

from shadewright.errors import MissingError, OutOfRangeError

_ROUNDS = 5000
_STILL = 1e-10  # a round that moves no fall by more than this is the last
_TRACE = 1e-5  # a fall below this is none
_FLAT = 1e-12
_NORMAL_95 = 1.959964

Gap = tuple[float, float]


@dataclass(frozen=True, kw_only=True)
class Watch:
    """What was seen of a bottle, in days of its age; None: it never settled."""

    clear_days: float
    settled_days: float | None = None


@dataclass(frozen=True, kw_only=True)
class LifeStep:
    """A fall of the curve: after one day and by another, to a share with its u."""

    after_days: float
    by_days: float
    share_clear: float
    u: float

    @property
    def bounds(self) -> tuple[float, float]:
        """The 95 % interval of the share, by log(−log), so that it stays a share."""
        if not 0.0 < self.share_clear < 1.0 or not self.u:
            return self.share_clear, self.share_clear
        width = _NORMAL_95 * self.u / (self.share_clear * log(self.share_clear))
        low, high = (self.share_clear ** exp(way * width) for way in (-1, 1))
        return low, high


def still_clear(watches: Sequence[Watch]) -> tuple[LifeStep, ...]:
    """Return the curve of the share of bottles that is still clear.

    p_j = (1/n) Σ_i α_ij p_j / Σ_k α_ik p_k                       (1)

    S = 1 − Σ p_j,  u²(S) = Σ_jk (I⁻¹)_jk                          (2)

    Parameters
    ----------
    watches : sequence of Watch
        One a bottle; at least one. [d]

    Returns
    -------
    tuple of LifeStep
        The falls of the curve, the earliest first; empty where none settled. [d, 1]

    Raises
    ------
    MissingError
        If there is no bottle.
    OutOfRangeError
        If one was seen settled before it was last seen clear.

    Notes
    -----
    α_ij is 1 where gap j lies in the reach of bottle i. I is the observed
    information of the falls that are not nought. With few bottles u says too
    little: what the curve may be trusted for is the reader's own rule. Bottles that
    settled must not be looked at more or less often for it.

    References
    ----------
    .. [turnbull1976] section 3, the self-consistent estimate, and its remark on
       the observed information
    .. [kaplan1958] the product-limit estimate, and Greenwood's formula there

    Examples
    --------
    >>> curve = still_clear([
    ...     Watch(clear_days=20, settled_days=30),
    ...     Watch(clear_days=60),
    ... ])
    >>> [(step.after_days, step.by_days, step.share_clear) for step in curve]
    [(20, 30, 0.5)]
    """
    _check(watches)
    gaps = innermost(watches)
    reach = Counter(tuple(_holds(each, gap) for gap in gaps) for each in watches)
    falls = _self_consistent(reach, len(gaps))
    kept = [j for j, fall in enumerate(falls) if fall > _TRACE]
    spread = _spreads(_reduced(reach, kept), [falls[j] for j in kept])
    left = [1.0 - fallen for fallen in accumulate(falls[j] for j in kept)]
    return tuple(
        LifeStep(
            after_days=gaps[j][0],
            by_days=gaps[j][1],
            share_clear=share if share > _TRACE else 0.0,
            u=u,
        )
        for j, share, u in zip(kept, left, spread, strict=True)
        if gaps[j][1] < inf
    )


def innermost(watches: Sequence[Watch]) -> tuple[Gap, ...]:
    """Return the gaps that the curve can fall in, the earliest first.

    Parameters
    ----------
    watches : sequence of Watch
        One a bottle. [d]

    Returns
    -------
    tuple of (float, float)
        After this day, by that one; the last may never close. [d]

    References
    ----------
    .. [turnbull1976] section 2

    Examples
    --------
    >>> innermost([
    ...     Watch(clear_days=0, settled_days=9),
    ...     Watch(clear_days=5, settled_days=20),
    ... ])
    ((5, 9),)
    """
    ends = {(each.clear_days, 1) for each in watches}
    ends |= {(_settled(each), 0) for each in watches}
    ordered = sorted(ends)
    return tuple(
        (one, other)
        for (one, opens), (other, shuts) in pairwise(ordered)
        if opens and not shuts
    )


def _check(watches: Sequence[Watch]) -> None:
    if not watches:
        raise MissingError(
            name="A bottle", advice="Watch at least one.", argument="watches"
        )
    for each in watches:
        if not 0 <= each.clear_days < _settled(each):
            raise OutOfRangeError(
                name="The day it was first seen settled",
                given=f"day {each.settled_days:g}",
                allowed=f"after day {each.clear_days:g}, when it was still clear",
                argument="watches",
            )


def _settled(watch: Watch) -> float:
    return inf if watch.settled_days is None else watch.settled_days


def _holds(watch: Watch, gap: Gap) -> bool:
    return watch.clear_days <= gap[0] and gap[1] <= _settled(watch)


def _self_consistent(reach: Counter[tuple[bool, ...]], gaps: int) -> list[float]:
    """Return the falls that come back as they are (equation 1)."""
    bottles = reach.total()
    falls = [1.0 / gaps] * gaps
    for _ in range(_ROUNDS):
        shared = [0.0] * gaps
        for row, count in reach.items():
            whole = fsum(fall for fall, is_in in zip(falls, row, strict=True) if is_in)
            for j, is_in in enumerate(row):
                if is_in:
                    shared[j] += count * falls[j] / whole / bottles
        moved = max(abs(a - b) for a, b in zip(shared, falls, strict=True))
        falls = shared
        if moved < _STILL:
            break
    return falls


def _reduced(
    reach: Counter[tuple[bool, ...]], kept: Sequence[int]
) -> list[tuple[tuple[bool, ...], int]]:
    return [(tuple(row[j] for j in kept), count) for row, count in reach.items()]


def _spreads(
    reach: Sequence[tuple[tuple[bool, ...], int]], falls: Sequence[float]
) -> list[float]:
    """Return u of the share that is left after each fall (equation 2)."""
    free = len(falls) - 1  # the last fall is what the others leave
    information = [[0.0] * free for _ in range(free)]
    for row, count in reach:
        whole = fsum(fall for fall, is_in in zip(falls, row, strict=True) if is_in)
        slope = [(is_in - row[-1]) / whole for is_in in row[:-1]]
        for j in range(free):
            for k in range(free):
                information[j][k] += count * slope[j] * slope[k]
    cover = _inverse(information)
    variances = [
        fsum(cover[j][k] for j in range(last + 1) for k in range(last + 1))
        for last in range(free)
    ]
    return [*(sqrt(max(variance, 0.0)) for variance in variances), 0.0]


def _inverse(matrix: Sequence[Sequence[float]]) -> list[list[float]]:
    """Invert by elimination; a direction that nothing is known of is left at nought."""
    size = len(matrix)
    rows = [
        [*row, *(float(i == j) for j in range(size))] for i, row in enumerate(matrix)
    ]
    for i in range(size):
        pivot = rows[i][i]
        if abs(pivot) < _FLAT:
            continue
        rows[i] = [cell / pivot for cell in rows[i]]
        for j in range(size):
            if j != i and rows[j][i]:
                by = rows[j][i]
                rows[j] = [a - by * b for a, b in zip(rows[j], rows[i], strict=True)]
    return [row[size:] for row in rows]
