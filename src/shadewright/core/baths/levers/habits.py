"""A whole studio: which one tool or habit would narrow its recipes most.

The studio is taken as it works; then one thing is changed, and all of it reckoned
again. What is compared is the mean of the spreads, each dose counted as often as it is
dyed.

A habit costs nothing and goes first. Tools follow by how much they narrow for their
price. No price is known here but the one that the dyer wrote: without it a tool is
told with what it narrows, after those that have one.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.baths.levers.practice import (
    Job,
    Practice,
    job_reaches,
    mean_reach,
)
from shadewright.core.baths.levers.pulled import is_worth


@dataclass(frozen=True, kw_only=True)
class Change:
    """One tool or habit, and how the studio would work with it.

    ``price`` is the dyer's own figure for a tool; 0 for a habit, None where no
    price is known. ``jobs`` are the doses with it, where it changes them (the yarn
    on another scale).
    """

    name: str
    practice: Practice
    jobs: tuple[Job, ...]
    price: float | None = 0.0


@dataclass(frozen=True, kw_only=True)
class Effect:
    """What a change does: mean spread before and after, and doses that it narrows."""

    change: Change
    before: float
    after: float
    narrowed: int
    of: int

    @property
    def is_worth_it(self) -> bool:
        """Whether the mean falls by a tenth at least."""
        return is_worth(before=self.before, after=self.after)

    @property
    def for_one(self) -> float | None:
        """What it narrows the mean by for one unit of money; None without a price."""
        if not self.change.price:
            return None
        return (self.before - self.after) / self.change.price


def effects(
    *, jobs: Sequence[Job], practice: Practice, changes: Sequence[Change]
) -> tuple[Effect, ...]:
    """Return what each change would do, the one to begin with first.

    Parameters
    ----------
    jobs : sequence of Job
        The studio's doses as they are. [-]
    practice : Practice
        How it works now. [-]
    changes : sequence of Change
        Tools and habits, each alone, with its jobs in the same order. [-]

    Returns
    -------
    tuple of Effect
        Habits by what they narrow; then tools with a price by what they narrow for
        it; then tools without one. [-]

    Raises
    ------
    OutOfRangeError
        If a number of a dose or a stock is out of range.

    Notes
    -----
    A dose that cannot be measured before or after is left out of both means.

    Examples
    --------
    >>> from shadewright.core.baths.levers.makeable import Making
    >>> nothing = Practice(making=Making(powder_scale=None, vessel=None), devices=())
    >>> effects(jobs=[], practice=nothing, changes=[])
    ()
    """
    before = job_reaches(jobs=jobs, practice=practice)
    found = [_effect(jobs, before, change) for change in changes]
    return tuple(sorted(found, key=_place))


def _effect(
    jobs: Sequence[Job], before: Sequence[float | None], change: Change
) -> Effect:
    after = job_reaches(jobs=change.jobs, practice=change.practice)
    both = [
        (job, was, now)
        for job, was, now in zip(jobs, before, after, strict=True)
        if was is not None and now is not None
    ]
    counted = [job for job, _, _ in both]
    return Effect(
        change=change,
        before=mean_reach(jobs=counted, reaches=[was for _, was, _ in both]),
        after=mean_reach(jobs=counted, reaches=[now for _, _, now in both]),
        narrowed=sum(is_worth(before=was, after=now) for _, was, now in both),
        of=len(both),
    )


def _place(effect: Effect) -> tuple[int, float, float]:
    gain = effect.before - effect.after
    price = effect.change.price
    if price is None:
        return 2, -gain, 0.0
    if price == 0:
        return 0, -gain, 0.0
    return 1, -gain / price, -gain
