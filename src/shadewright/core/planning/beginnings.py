"""Orders with which a search begins: rules of thumb, and that of the plan before."""

from collections.abc import Iterator, Sequence

from shadewright.core.planning.day import Stage
from shadewright.core.planning.sequences import KEPT, Order, Work


def rules_of_thumb(work: Work) -> Iterator[Order]:
    """Yield orders: due first, long first, pale first, and so on.

    Parameters
    ----------
    work : Work
        The day. [-]

    Yields
    ------
    Order
        That of the plan before comes first, where there is one. [-]
    """
    baths = work.day.baths
    numbers = range(len(baths))
    long = [_least_minutes(work, n) for n in numbers]
    due = [baths[n].due or work.day.length for n in numbers]
    rules: tuple[Sequence[tuple[object, ...]], ...] = (
        [(due[n], -long[n]) for n in numbers],
        [(-long[n],) for n in numbers],
        [(baths[n].is_overnight, -long[n]) for n in numbers],
        [(baths[n].family, baths[n].depth_percent) for n in numbers],
        [(baths[n].depth_percent,) for n in numbers],
        [(long[n],) for n in numbers],
    )
    if work.before:
        yield order_before(work)
    settled = [_pinned_at(work, n) for n in numbers]
    if any(bath.pin for bath in baths):
        rules += ([(baths[n].pin is None, due[n], -long[n]) for n in numbers],)
    for rule in rules:
        by = sorted(numbers, key=lambda n: (settled[n], rule[n]))
        yield whole_order(work, by)


def _pinned_at(work: Work, number: int) -> int:
    """Return when a bath has to start; after all others where nothing says so."""
    pin = work.day.baths[number].pin
    return work.day.length if pin is None or pin.start is None else pin.start


def _least_minutes(work: Work, number: int) -> int:
    """Return how long a bath takes at least, from the heat on."""
    bath = work.day.baths[number]
    if bath.is_overnight:
        return min((way.block for way in work.ways[number]), default=0)
    cooled = min((way.cooled for way in work.ways[number]), default=0)
    return cooled + bath.minutes[Stage.RINSE]


def whole_order(work: Work, by: Sequence[int]) -> Order:
    """Return an order of baths as moves: all dyed by it, then all rinsed by it.

    Parameters
    ----------
    work : Work
        The day. [-]
    by : sequence of int
        The baths in order. [-]

    Returns
    -------
    Order
        Each bath on its earliest spot. [-]
    """
    goings = [bath.going for bath in work.day.baths]
    dyed = [n for n in by if not ((going := goings[n]) and going.has_heat)]
    rinses = [n for n in by if not work.day.baths[n].is_overnight]
    return Order(moves=(*dyed, *rinses), choices=(0,) * len(goings))


def order_before(work: Work) -> Order:
    """Return the order of the plan that stood, each bath on the spot that it had.

    Parameters
    ----------
    work : Work
        The day, and the plan before it. [-]

    Returns
    -------
    Order
        New baths after all others, on their earliest spots. [-]
    """
    baths, before, end = work.day.baths, work.before, work.day.length
    begins = [before[bath.name].start if bath.name in before else end for bath in baths]
    by = sorted(range(len(baths)), key=lambda n: (begins[n], n))
    whole = whole_order(work, by)
    cooled = [
        begin + min((way.cooled for way in ways), default=0)
        for begin, ways in zip(begins, work.ways, strict=True)
    ]
    count = len(whole.moves) - sum(1 for bath in baths if not bath.is_overnight)
    rinses = sorted(whole.moves[count:], key=lambda n: (cooled[n], n))
    choices = tuple(KEPT if bath.name in before else 0 for bath in baths)
    return Order(moves=(*whole.moves[:count], *rinses), choices=choices)
