"""How a studio works, and how sure its doses are so.

A studio is taken as it works: its scales, its ware, the strengths that it keeps, and
how much of a stock it makes at a time. Every dose of its recipes at the batches that it
dyes is measured by the surest way that this allows.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from math import fsum

from shadewright.core.baths.doses import STRENGTH_SERIES_PERCENT
from shadewright.core.baths.levers.makeable import Making, stocks_to_make
from shadewright.core.baths.levers.scaling import surest_way
from shadewright.core.baths.levers.ways import (
    Device,
    Stock,
    Wanted,
    reach_rel,
    way_depth,
)


@dataclass(frozen=True, kw_only=True)
class Job:
    """A dose that the studio dyes, and how often; ``recipe`` names where it stands."""

    recipe: str
    wanted: Wanted
    times: int = 1


@dataclass(frozen=True, kw_only=True)
class Practice:
    """How a studio works: what it makes stock with, measures with, and keeps.

    ``strengths_percent`` are those kept of each dye.
    """

    making: Making
    devices: tuple[Device, ...]
    strengths_percent: Mapping[str, tuple[float, ...]] = field(default_factory=dict)


def job_reaches(*, jobs: Sequence[Job], practice: Practice) -> tuple[float | None, ...]:
    """Return how sure each dose is, as a studio works.

    Parameters
    ----------
    jobs : sequence of Job
        The doses. [-]
    practice : Practice
        How the studio works. [-]

    Returns
    -------
    tuple of float or None
        Half of each 95 % interval as a share; None where a dose cannot be measured. [-]

    Raises
    ------
    OutOfRangeError
        If a number of a dose or a stock is out of range.

    Notes
    -----
    The stock of each strength is taken as it would be made today, not as the bottle
    on the shelf happens to be: a better scale mends the next stock, not the last.

    Examples
    --------
    >>> nothing = Practice(making=Making(powder_scale=None, vessel=None), devices=())
    >>> job_reaches(jobs=[], practice=nothing)
    ()
    """
    kept = practice.strengths_percent
    made = stocks_made(
        strengths_percent=[each for percents in kept.values() for each in percents],
        practice=practice,
    )
    return tuple(
        job_reach(
            job=job,
            stocks=[made[x] for x in kept.get(job.wanted.dye, ()) if x in made],
            practice=practice,
        )
        for job in jobs
    )


def stocks_made(
    *, strengths_percent: Iterable[float], practice: Practice
) -> dict[float, Stock]:
    """Return stocks as a studio would make them, each the surest way.

    Parameters
    ----------
    strengths_percent : iterable of float
        The strengths that are asked for. [%]
    practice : Practice
        How the studio works. [-]

    Returns
    -------
    dict of float to Stock
        Those that can be made, by strength: from powder, or thinned from one of the
        usual row that is made for it. [%]

    Raises
    ------
    OutOfRangeError
        If a strength is out of range.

    Examples
    --------
    >>> nothing = Practice(making=Making(powder_scale=None, vessel=None), devices=())
    >>> stocks_made(strengths_percent=[1.0], practice=nothing)
    {}
    """
    wanted = set(strengths_percent)
    made: dict[float, Stock] = {}
    for strength in sorted(wanted | set(STRENGTH_SERIES_PERCENT), reverse=True):
        for stock in stocks_to_make(
            making=practice.making,
            standing=tuple(made.values()),
            devices=practice.devices,
            strengths_percent=[strength],
        ):
            made[strength] = stock
    return {strength: made[strength] for strength in wanted if strength in made}


def job_reach(*, job: Job, stocks: Sequence[Stock], practice: Practice) -> float | None:
    """Return how sure one dose is from some stocks, by the surest way.

    Parameters
    ----------
    job : Job
        The dose. [-]
    stocks : sequence of Stock
        What it could be measured from. [-]
    practice : Practice
        How the studio works. [-]

    Returns
    -------
    float or None
        Half of its 95 % interval as a share; None where it cannot be measured. [-]

    Raises
    ------
    OutOfRangeError
        If a number of the dose or a stock is out of range.

    Examples
    --------
    >>> pale = Wanted(dye="Gorse", depth_percent=0.2, yarn_g=100.0, liquor_ml=3000.0)
    >>> nothing = Practice(making=Making(powder_scale=None, vessel=None), devices=())
    >>> job_reach(job=Job(recipe="Pale", wanted=pale), stocks=[], practice=nothing)
    """
    way = surest_way(wanted=job.wanted, stocks=stocks, devices=practice.devices)
    if way is None:
        return None
    return reach_rel(way_depth(wanted=job.wanted, way=way))


def mean_reach(*, jobs: Sequence[Job], reaches: Sequence[float]) -> float:
    """Return the mean spread of doses, each counted as often as it is dyed.

    Parameters
    ----------
    jobs : sequence of Job
        The doses. [-]
    reaches : sequence of float
        Their spreads, in the same order. [-]

    Returns
    -------
    float
        The mean; 0 without a dose. [-]

    Examples
    --------
    >>> mean_reach(jobs=[], reaches=[])
    0.0
    """
    often = [job.times for job in jobs]
    if not sum(often):
        return 0.0
    return fsum(n * reach for n, reach in zip(often, reaches, strict=True)) / sum(often)
