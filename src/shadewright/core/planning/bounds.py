"""When a day can end at the earliest, whatever the order: bounds from below.

Nothing ends before the longest bath is through. And where n jobs share m machines,
each with a head before it and a tail after it, then for any of the jobs

    end ≥ (Σ m least heads + Σ times + Σ m least tails) / m    (2)

since each machine waits for a head, works, and leaves a tail [carlier1987]_. Machines
are the sources, what the circuits carry at once, the hands, and the pots; the greatest
of these bounds over all subsets by head and tail is stated beside each plan.
"""

from collections.abc import Iterator, Sequence
from math import ceil

from shadewright.core.planning.day import Stage
from shadewright.core.planning.sequences import Work
from shadewright.core.planning.ways import Way

Job = tuple[int, int, int]
"""A head before it, the time that it takes, a tail after it, in minutes."""


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
    starts = min((each.starts for each in work.day.people), default=0)
    numbers = [n for n, ways in enumerate(work.ways) if ways]
    chains = [
        max(0, starts) + min(_whole(work, n, way) for way in work.ways[n])
        for n in numbers
    ]
    return max([
        max(chains, default=0),
        on_machines([_on_source(work, n) for n in numbers], len(work.day.sources)),
        on_machines([_on_circuit(work, n) for n in numbers], _at_once(work)),
        on_machines(
            [job for n in numbers for job in _by_hand(work, n)], len(work.day.people)
        ),
        on_machines([_in_pot(work, n) for n in numbers], len(work.day.pots)),
    ])


def on_machines(jobs: Sequence[Job], machines: int) -> int:
    """Return equation 2 for the worst of the subsets by least head and least tail.

    Parameters
    ----------
    jobs : sequence of Job
        Head, time, tail. [min]
    machines : int
        How many work at once. [-]

    Returns
    -------
    int
        Time before which nobody is through. [min]

    Examples
    --------
    >>> on_machines([(5, 30, 10), (5, 30, 10), (5, 30, 10)], 2)
    60
    """
    best = 0
    if machines < 1:
        return best
    for head in {job[0] for job in jobs}:
        for tail in {job[2] for job in jobs}:
            some = [job for job in jobs if job[0] >= head and job[2] >= tail]
            if len(some) >= machines:
                heads = sum(sorted(job[0] for job in some)[:machines])
                tails = sum(sorted(job[2] for job in some)[:machines])
                times = sum(job[1] for job in some)
                best = max(best, ceil((heads + times + tails) / machines))
    return best


def _whole(work: Work, number: int, way: Way) -> int:
    return (
        work.day.baths[number].minutes[Stage.FILL]
        + way.block
        + _tail(work, number, way)
    )


def _tail(work: Work, number: int, way: Way) -> int:
    """Return the time from the check to the end of a bath."""
    bath = work.day.baths[number]
    if bath.is_overnight:
        return 0
    return way.cooled - way.block + bath.minutes[Stage.RINSE]


def _on_source(work: Work, number: int) -> Job:
    ways, fill = work.ways[number], work.day.baths[number].minutes[Stage.FILL]
    times = [way.block if way.taken is None else way.taken for way in ways]
    tails = [
        way.block + _tail(work, number, way) - time
        for way, time in zip(ways, times, strict=True)
    ]
    return fill, min(times), min(tails)


def _on_circuit(work: Work, number: int) -> Job:
    ways, fill = work.ways[number], work.day.baths[number].minutes[Stage.FILL]
    tails = [way.block - way.power + _tail(work, number, way) for way in ways]
    return fill, min(way.power for way in ways), min(tails)


def _in_pot(work: Work, number: int) -> Job:
    bath, ways = work.day.baths[number], work.ways[number]
    rinse = 0 if bath.is_overnight else bath.minutes[Stage.RINSE]
    taken = [way.block if bath.is_overnight else way.cooled for way in ways]
    return 0, bath.minutes[Stage.FILL] + min(taken), rinse


def _by_hand(work: Work, number: int) -> Iterator[Job]:
    bath, ways = work.day.baths[number], work.ways[number]
    fill = bath.minutes[Stage.FILL]
    yield 0, fill, min(way.block + _tail(work, number, way) for way in ways)
    for place, (_offset, length, _what) in enumerate(ways[0].hands):
        heads = [fill + way.hands[place].offset for way in ways]
        tails = [
            way.block - way.hands[place].offset - length + _tail(work, number, way)
            for way in ways
        ]
        yield min(heads), length, min(tails)
    if not bath.is_overnight:
        yield fill + min(way.cooled for way in ways), bath.minutes[Stage.RINSE], 0


def _at_once(work: Work) -> int:
    """Return how many sources the circuits carry at once, at the very most."""
    count = sum(1 for source in work.day.sources if not source.circuit)
    for circuit in work.day.circuits:
        room_kw = circuit.limit_kw + 1e-9
        powers = sorted(
            source.power_kw
            for source in work.day.sources
            if source.circuit == circuit.name
        )
        for power_kw in powers:
            room_kw -= power_kw
            count += room_kw >= 0.0
    return count
