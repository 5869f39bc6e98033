"""When a day can end at the earliest, whatever the order: bounds from below.

Nothing ends before the longest bath is through. And where n jobs share m machines,
each with a head before it and a tail after it, then for any of the jobs

    end ≥ (Σ m least heads + Σ times + Σ m least tails) / m    (2)

since each machine waits for a head, works, and leaves a tail [carlier1987]_. Machines
are the sources, what the circuits carry at once, the hands, and the pots; the greatest
of these bounds over all subsets by head and tail is stated beside each plan.

Heads and tails want hands too, one after the other. The k-th pot is not on the heat
before k pots were filled, and of the last k all are checked and rinsed after the k-th
last is off it; so the k-th head is as long as the k least fillings together at least,
shared among the hands, and the k-th tail likewise. That is our own.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import accumulate
from math import ceil
from typing import NamedTuple

from shadewright.core.planning.day import Day, DaySource, Stage
from shadewright.core.planning.going import as_it_went
from shadewright.core.planning.sequences import Work
from shadewright.core.planning.ways import Way
from shadewright.core.tables.heat import Source


class Job(NamedTuple):
    """A head before it, the time that it takes, a tail after it, in minutes.

    ``first`` and ``last`` are how long head and tail want hands. [min]
    """

    head: int
    time: int
    tail: int
    first: int = 0
    last: int = 0


class _Bath(NamedTuple):
    """A bath whose heat starts at ``opens`` at the earliest, or did."""

    number: int
    opens: int
    fill: int
    rinse: int
    ways: tuple[Way, ...]


def bound_of(work: Work) -> int:
    """Return a time before which no plan of all baths ends.

    Parameters
    ----------
    work : Work
        The day; a bath that fits no pot counts for nothing. [min]

    Returns
    -------
    int
        The greatest of the bounds. [min]
    """
    day = work.day
    since = max(day.now, min((each.starts for each in day.people), default=0))
    baths = [_bath(work, n, since) for n, ways in enumerate(work.ways) if ways]
    potted = [each for each in baths if not day.baths[each.number].is_steamed]
    steamed = [each for each in baths if day.baths[each.number].is_steamed]
    sources = [x for x in day.sources if x.out_from is None or x.out_from > since]
    steamers = [each for each in sources if each.kind is Source.STEAMER]
    people = len(day.people)
    at_once = _at_once(day, sources)
    count = len(sources) - len(steamers)
    shared = max(
        on_machines(jobs, machines=machines, people=waiting)
        for jobs, machines, waiting in (
            ([_on_source(work, x) for x in potted], count, people),
            ([_on_source(work, x) for x in steamed], len(steamers), people),
            ([_on_circuit(work, x) for x in baths], at_once, people),
            ([job for x in baths for job in _by_hand(work, x)], people, 0),
            ([_in_pot(work, x) for x in potted], len(day.pots), 0),
        )
    )
    alone = max((_whole(work, each) for each in baths), default=-since)
    return since + (max(alone, shared) if shared else alone)


def on_machines(jobs: Sequence[Job], *, machines: int, people: int = 0) -> int:
    """Return equation 2 for the worst of the subsets by least head and least tail.

    Parameters
    ----------
    jobs : sequence of Job
        Head, time, tail, and hands in head and tail. [min]
    machines : int
        How many work at once. [-]
    people : int
        How many share the hands; 0 where heads and tails want none. [-]

    Returns
    -------
    int
        Time before which nobody is through. [min]

    Examples
    --------
    >>> on_machines([Job(5, 30, 10)] * 3, machines=2)
    60
    >>> on_machines([Job(5, 30, 10, first=5)] * 3, machines=2, people=1)
    63
    """
    best = 0
    if machines < 1:
        return best
    left = [job for job in jobs if job.time]
    for head in {job.head for job in left}:
        for tail in {job.tail for job in left}:
            some = [job for job in left if job.head >= head and job.tail >= tail]
            if len(some) >= machines:
                best = max(best, _shared(some, machines, people))
    return best


def _shared(jobs: Sequence[Job], machines: int, people: int) -> int:
    # As many jobs as machines can be spread so that each machine has one.
    heads = _queued([(job.head, job.first) for job in jobs], machines, people)
    tails = _queued([(job.tail, job.last) for job in jobs], machines, people)
    return ceil((heads + sum(job.time for job in jobs) + tails) / machines)


def _queued(waits: Sequence[tuple[int, int]], machines: int, people: int) -> int:
    """Return the least heads together, each no shorter than the hands before it."""
    least = sorted(wait for wait, _hands in waits)[:machines]
    if not people:
        return sum(least)
    hands = accumulate(sorted(hands for _wait, hands in waits)[:machines])
    return sum(
        max(wait, ceil(each / people)) for wait, each in zip(least, hands, strict=True)
    )


def _bath(work: Work, number: int, since: int) -> _Bath:
    """Return a bath as it counts from some time on."""
    bath, ways = work.day.baths[number], work.ways[number]
    fill, going = bath.minutes[Stage.FILL], bath.going
    rinse = 0 if bath.is_overnight else bath.minutes[Stage.RINSE]
    if going is None:
        return _Bath(number, fill, fill, rinse, ways)
    if not going.has_heat:
        return _Bath(number, max(0, going.fill_start + fill - since), 0, rinse, ways)
    heat, way = as_it_went(ways[0], going)
    return _Bath(number, heat - since, 0, rinse, (way,))


def _whole(work: Work, bath: _Bath) -> int:
    return min(_end(work, bath, way) for way in bath.ways)


def _end(work: Work, bath: _Bath, way: Way) -> int:
    """Return when a bath is through at the earliest; below 0 where it is already."""
    going = work.day.baths[bath.number].going
    if work.day.baths[bath.number].is_overnight:
        return bath.opens + way.block
    if going is not None and going.rinse_start is not None:
        return bath.opens + way.cooled + bath.rinse
    return max(0, bath.opens + way.cooled) + bath.rinse


def _job(
    work: Work,
    bath: _Bath,
    start: Callable[[Way], int],
    end: Callable[[Way], int],
) -> Job:
    """Return the least head, time and tail of a span from the start of the heat on."""
    heads, times, tails = [], [], []
    for way in bath.ways:
        begins = max(0, bath.opens + start(way))
        ends = max(begins, bath.opens + end(way))
        heads.append(begins)
        times.append(ends - begins)
        tails.append(max(0, _end(work, bath, way) - ends))
    return Job(min(heads), min(times), min(tails))


def _on_source(work: Work, bath: _Bath) -> Job:
    job = _job(
        work,
        bath,
        lambda _way: 0,
        lambda way: way.block if way.taken is None else way.taken,
    )
    return job._replace(first=bath.fill, last=bath.rinse)


def _on_circuit(work: Work, bath: _Bath) -> Job:
    job = _job(work, bath, lambda _way: 0, lambda way: way.power)
    check = work.day.baths[bath.number].minutes[Stage.CHECK] if job.time else 0
    return job._replace(first=bath.fill, last=check + bath.rinse)


def _in_pot(work: Work, bath: _Bath) -> Job:
    is_overnight = work.day.baths[bath.number].is_overnight
    return _job(
        work,
        bath,
        lambda _way: -max(0, bath.opens),
        lambda way: way.block if is_overnight else way.cooled,
    )


def _by_hand(work: Work, bath: _Bath) -> Iterator[Job]:
    if bath.fill:
        yield _job(work, bath, lambda _way: -bath.fill, lambda _way: 0)
    for which, (_offset, length, _what) in enumerate(bath.ways[0].hands):
        yield _job(
            work,
            bath,
            lambda way, which=which: way.hands[which].offset,  # type: ignore[misc]
            lambda way, which=which, length=length: (  # type: ignore[misc]
                way.hands[which].offset + length
            ),
        )
    if bath.rinse:
        yield _job(
            work, bath, lambda way: way.cooled, lambda way: way.cooled + bath.rinse
        )


def _at_once(day: Day, sources: Sequence[DaySource]) -> int:
    """Return how many sources the circuits carry at once, at the very most."""
    count = sum(1 for source in sources if not source.circuit)
    for circuit in day.circuits:
        room_kw = circuit.limit_kw + 1e-9
        powers = sorted(
            source.power_kw for source in sources if source.circuit == circuit.name
        )
        for power_kw in powers:
            room_kw -= power_kw
            count += room_kw >= 0.0
    return count
