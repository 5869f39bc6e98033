"""What would narrow one dose, and by how much: one lever at a time.

Each lever changes one thing and leaves the rest: another bottle, another tool, the
scale instead of the syringe, a check of the scale, a new stock, a larger batch. The
one that leaves the smallest spread is proposed. Where two come out alike, within a
tenth, the one with less work goes first: the order of ``Lever``. A larger batch is told
last: it changes what is dyed.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace

from shadewright.core.baths.levers.pulled import (
    DoseAdvice,
    Hand,
    Lever,
    Proposal,
    batch_of,
    is_worth,
)
from shadewright.core.baths.levers.ways import (
    Device,
    Scale,
    Stock,
    Wanted,
    Ware,
    Way,
    can_be_done,
    reach_rel,
    way_depth,
)
from shadewright.core.quantities import Balance, is_more
from shadewright.core.uncertainty.tools import weight_check

BATCHES = (2.0, 3.0, 4.0)
"""Larger batches that are tried, as multiples. [-]"""


_WORK = {lever: place for place, lever in enumerate(Lever)}


def dose_levers(*, wanted: Wanted, way: Way, hand: Hand) -> DoseAdvice:
    """Return what would narrow a dose that is to be measured in a way.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    way : Way
        How it is to be measured as things are. [-]
    hand : Hand
        Bottles, stocks that could be made, tools, room in the pot. [-]

    Returns
    -------
    DoseAdvice
        How sure it is now and at best, and the levers worth a word. [-]

    Raises
    ------
    OutOfRangeError
        If depth, yarn or a strength is out of range.

    Notes
    -----
    ``best`` is the surest pair of stock and tool at hand for this very batch, stocks
    that could be made among them. What a check of the scale would find is not known:
    its lever supposes that the scale is found right. To first order.

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> from shadewright.core.uncertainty import exact
    >>> pale = Wanted(dye="Gorse", depth_percent=0.02, yarn_g=100.0, liquor_ml=3000.0)
    >>> strong = Stock(name="bottle T7KK", strength=exact(1.0), usable_ml=400.0)
    >>> weak = Stock(name="bottle G4RR", strength=exact(0.1), usable_ml=400.0)
    >>> syringe = Ware(
    ...     name="20 ml syringe",
    ...     key="tool 3",
    ...     tool=measuring_tool("syringe 20ml", name="Tool"),
    ... )
    >>> found = dose_levers(
    ...     wanted=pale,
    ...     way=Way(stock=strong, device=syringe),
    ...     hand=Hand(stocks=(strong, weak), devices=(syringe,)),
    ... )
    >>> round(found.now, 3), round(found.best, 3), found.strongest.lever.value
    (0.152, 0.038, 'another bottle')
    """
    depth = way_depth(wanted=wanted, way=way)
    now = reach_rel(depth)
    best_way = _surest(wanted, _every_way(hand)) or way
    best = reach_rel(way_depth(wanted=wanted, way=best_way))
    if best > now:
        best, best_way = now, way
    found = sorted(
        (
            each
            for each in _all(wanted, way, hand)
            if is_worth(before=now, after=each.after)
        ),
        key=lambda each: (each.lever is Lever.BATCH, each.after),
    )
    return DoseAdvice(
        wanted=wanted,
        way=way,
        depth=depth,
        now=now,
        best=best,
        best_way=best_way,
        proposals=tuple(_least_work_first(found)),
    )


def _least_work_first(found: Sequence[Proposal]) -> Iterator[Proposal]:
    rest = list(found)
    while rest:
        alike = [x for x in rest if not is_worth(before=x.after, after=rest[0].after)]
        first = min(alike, key=lambda each: _WORK[each.lever])
        rest.remove(first)
        yield first


def _all(wanted: Wanted, way: Way, hand: Hand) -> Iterator[Proposal]:
    for lever, ways in _ways(way, hand):
        better = _surest(wanted, ways)
        if better is not None:
            yield _proposal(lever, wanted, better)
    yield from _yarn_elsewhere(wanted, way, hand)
    yield from _checked(wanted, way)
    yield from _larger(wanted, way, hand)


def _ways(way: Way, hand: Hand) -> Iterator[tuple[Lever, list[Way]]]:
    same = [each for each in hand.devices if isinstance(each, type(way.device))]
    other = [each for each in same if each != way.device]
    bottles = [each for each in hand.stocks if each != way.stock]
    yield Lever.TOOL, _pairs([way.stock], other)
    yield Lever.BOTTLE, _pairs(bottles, same)
    if isinstance(way.device, Ware):
        scales = [each for each in hand.devices if isinstance(each, Scale)]
        yield Lever.WEIGHT, _pairs([way.stock], scales)
    yield Lever.MAKE, _pairs(hand.makeable, same)


def _yarn_elsewhere(wanted: Wanted, way: Way, hand: Hand) -> Iterator[Proposal]:
    for device in hand.devices:
        if isinstance(device, Scale) and device.carries(wanted.yarn_g):
            other = replace(wanted, yarn_scale=device)
            if wanted.yarn_scale not in {None, device}:
                yield _proposal(Lever.YARN, other, way)


def _checked(wanted: Wanted, way: Way) -> Iterator[Proposal]:
    yarn, device = wanted.yarn_scale, way.device
    sure_yarn = None if yarn is None else found_right(yarn)
    sure_device = found_right(device) if isinstance(device, Scale) else device
    if (sure_yarn, sure_device) != (yarn, device):
        sure = replace(wanted, yarn_scale=sure_yarn)
        yield _proposal(Lever.CHECK, sure, replace(way, device=sure_device))


def found_right(scale: Scale) -> Scale:
    """Return a scale after a check weight that it shows rightly.

    Parameters
    ----------
    scale : Scale
        A scale. [-]

    Returns
    -------
    Scale
        The same where it was checked, or where nothing is said of its own error;
        else as three readings of the very weight leave it. [-]

    Examples
    --------
    >>> kitchen = Scale(
    ...     name="kitchen scale",
    ...     key="tool 1",
    ...     balance=Balance(step_g=0.1, error_g=0.2),
    ... )
    >>> round(found_right(kitchen).balance.error_g, 3)
    0.078
    """
    if scale.is_checked or scale.balance.error_g is None:
        return scale
    step_g, nominal_g = scale.balance.step_g, 1000.0 * scale.balance.step_g
    found = weight_check(
        step_g=step_g, nominal_g=nominal_g, tolerance_g=0.0, readings_g=[nominal_g] * 3
    )
    balance = Balance(step_g=step_g, error_g=found.half_width)
    return replace(scale, balance=balance, is_checked=True)


def _larger(wanted: Wanted, way: Way, hand: Hand) -> Iterator[Proposal]:
    if hand.most_yarn_g is None:
        return
    for times in reversed(BATCHES):
        more = batch_of(wanted, times=times)
        fits = not is_more(more.yarn_g, than=hand.most_yarn_g)
        if fits and can_be_done(wanted=more, way=way):
            yield _proposal(Lever.BATCH, more, way)
            return


def _every_way(hand: Hand) -> list[Way]:
    return _pairs((*hand.stocks, *hand.makeable), hand.devices)


def _pairs(stocks: Iterable[Stock], devices: Sequence[Device]) -> list[Way]:
    return [Way(stock=s, device=d) for s in stocks for d in devices]


def _surest(wanted: Wanted, ways: Sequence[Way]) -> Way | None:
    can: list[Way] = [each for each in ways if can_be_done(wanted=wanted, way=each)]
    return min(can, key=_u_rel_of(wanted), default=None)


def _u_rel_of(wanted: Wanted) -> Callable[[Way], float]:
    return lambda way: way_depth(wanted=wanted, way=way).u_rel


def _proposal(lever: Lever, wanted: Wanted, way: Way) -> Proposal:
    after = reach_rel(way_depth(wanted=wanted, way=way))
    return Proposal(lever=lever, wanted=wanted, way=way, after=after)
