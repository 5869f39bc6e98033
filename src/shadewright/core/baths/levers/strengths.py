"""Which strengths of a dye are worth keeping, from the doses that a studio dyes.

One strength serves most studios badly: 1 % is a good stock for a deep shade and a poor
one for a pale. Two serve well, a strong and a weak. More are bottles that grow old. So
for each dye every strength and every pair of the usual row is tried on its doses; a
second one must earn its place.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from shadewright.core.baths.doses import STRENGTH_SERIES_PERCENT
from shadewright.core.baths.levers.practice import (
    Job,
    Practice,
    job_reach,
    mean_reach,
    stocks_made,
)
from shadewright.core.baths.levers.pulled import is_worth
from shadewright.core.baths.levers.ways import Stock

EARNS = 0.25
"""By this share a second strength must narrow the mean. [-] (our choice)"""


@dataclass(frozen=True, kw_only=True)
class KeptStrengths:
    """What of a dye is worth keeping, and what it is worth.

    ``now`` is the mean spread with the strengths kept today, None where no dose can
    be measured from them; ``cannot`` counts doses that no strength serves.
    """

    dye: str
    doses: int
    kept_percent: tuple[float, ...]
    keep_percent: tuple[float, ...]
    now: float | None
    then: float
    cannot: int

    @property
    def is_change(self) -> bool:
        """Whether a strength is missing today."""
        return not set(self.keep_percent) <= set(self.kept_percent)

    @property
    def to_make_percent(self) -> tuple[float, ...]:
        """The strengths that are missing today."""
        return tuple(x for x in self.keep_percent if x not in self.kept_percent)


def strengths_to_keep(
    *, jobs: Sequence[Job], practice: Practice
) -> tuple[KeptStrengths, ...]:
    """Return for each dye which strengths are worth keeping.

    Parameters
    ----------
    jobs : sequence of Job
        The studio's doses. [-]
    practice : Practice
        How it works, with the strengths that it keeps now. [-]

    Returns
    -------
    tuple of KeptStrengths
        One for each dye, the most dyed first. [%]

    Raises
    ------
    OutOfRangeError
        If a number of a dose or a stock is out of range.

    Notes
    -----
    Strengths of the row 2, 1, 0.5, 0.1, 0.05, 0.01 % and those kept now. First, as
    many doses as can be measured; then the smallest mean spread; of those within a
    tenth of it what is kept already, then the stronger, which takes less room. A
    second strength, and any other than is kept, must serve a dose that was not
    served, or narrow the mean by a quarter. Our choice.

    Examples
    --------
    >>> from shadewright.core.baths.levers.makeable import Making
    >>> nothing = Practice(making=Making(powder_scale=None, vessel=None), devices=())
    >>> strengths_to_keep(jobs=[], practice=nothing)
    ()
    """
    of: dict[str, list[Job]] = {}
    for job in jobs:
        of.setdefault(job.wanted.dye, []).append(job)
    order = sorted(of.values(), key=lambda found: -sum(job.times for job in found))
    made = stocks_made(
        strengths_percent={*STRENGTH_SERIES_PERCENT, *_every_kept(practice)},
        practice=practice,
    )
    kept = (_for_dye(found, practice, made) for found in order)
    return tuple(each for each in kept if each is not None)


def _every_kept(practice: Practice) -> set[float]:
    return {each for kept in practice.strengths_percent.values() for each in kept}


@dataclass(frozen=True)
class _Tried:
    percents: tuple[float, ...]
    cannot: int
    mean: float


def _for_dye(
    jobs: Sequence[Job], practice: Practice, made: Mapping[float, Stock]
) -> KeptStrengths | None:
    kept = practice.strengths_percent.get(jobs[0].wanted.dye, ())
    reach = {
        percent: [
            job_reach(job=job, stocks=[made[percent]], practice=practice)
            for job in jobs
        ]
        for percent in {*STRENGTH_SERIES_PERCENT, *kept} & set(made)
    }
    now = _joined(jobs, [x for x in kept if x in reach], reach)
    tried = [each for each in _tried(jobs, reach) if each.cannot < len(jobs)]
    if not tried:
        return None
    one = _best([each for each in tried if len(each.percents) == 1], kept)
    found = _that_earns(_best(tried, kept), than=one)
    found = _that_earns(found, than=now)
    return KeptStrengths(
        dye=jobs[0].wanted.dye,
        doses=len(jobs),
        kept_percent=kept,
        keep_percent=found.percents,
        now=None if now.cannot == len(jobs) else now.mean,
        then=found.mean,
        cannot=found.cannot,
    )


def _that_earns(better: _Tried, *, than: _Tried) -> _Tried:
    """Return the better one only where it serves more, or narrows by a quarter."""
    serves_more = better.cannot < than.cannot
    serves_less = better.cannot > than.cannot
    narrows = better.mean <= (1.0 - EARNS) * than.mean
    return better if serves_more or (narrows and not serves_less) else than


def _best(tried: Sequence[_Tried], kept: Sequence[float]) -> _Tried:
    """Return the surest; of those nearly as sure, the one that asks for least."""
    least = min(each.cannot for each in tried)
    serve = [each for each in tried if each.cannot == least]
    surest = min(each.mean for each in serve)
    alike = [each for each in serve if not is_worth(before=each.mean, after=surest)]
    return min(
        alike,
        key=lambda each: (
            sum(x not in kept for x in each.percents),
            tuple(-x for x in each.percents),
        ),
    )


def _tried(
    jobs: Sequence[Job], reach: Mapping[float, Sequence[float | None]]
) -> Iterator[_Tried]:
    strengths = sorted(reach, reverse=True)
    for count in (1, 2):
        for percents in combinations(strengths, count):
            yield _joined(jobs, percents, reach)


def _joined(
    jobs: Sequence[Job],
    percents: Sequence[float],
    reach: Mapping[float, Sequence[float | None]],
) -> _Tried:
    """Return what some strengths are worth together: each dose takes its surest."""
    counted, reaches = [], []
    for place, job in enumerate(jobs):
        can = [x for p in percents if (x := reach[p][place]) is not None]
        if can:
            counted.append(job)
            reaches.append(min(can))
    mean = mean_reach(jobs=counted, reaches=reaches)
    return _Tried(tuple(percents), len(jobs) - len(counted), mean)
