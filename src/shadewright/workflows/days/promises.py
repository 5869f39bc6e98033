"""When an order can be ready: from the queue before it and what comes after the pot."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from math import ceil

from shadewright.core.planning.promises import (
    DRY_FAST,
    DRY_SLOW,
    Habit,
    dyed_on,
    packed_on,
    ready_on,
)
from shadewright.core.quantities import counted, number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.records import order_reads
from shadewright.records.models import Order
from shadewright.workflows.days.closed_days import closed_to_come
from shadewright.workflows.days.demand import Demand, ToDye, wanted_by
from shadewright.workflows.days.pace import Pace
from shadewright.workflows.days.yields import BathYield
from shadewright.workflows.stamps import today
from shadewright.workflows.trace_nodes import day as day_words

_LONGEST_QUEUE = 20_000
"""Beyond this many skeins no calendar reaches."""


@dataclass(frozen=True, kw_only=True)
class Promise:
    """When an order can be ready, from the soonest to the latest, and why.

    ``is_guess`` says that nobody dyed here often enough to know its pace,
    ``is_blocked`` that something of it cannot be planned as it stands.
    """

    soonest: date
    latest: date
    reasons: tuple[str, ...]
    is_guess: bool = False
    is_blocked: bool = False


@dataclass(frozen=True, kw_only=True)
class _Waiting:
    """What of an order is where, in skeins; ``baths`` are those still to be packed."""

    on_shelf: int
    baths: tuple[BathYield, ...]
    to_dye: int
    before: int
    troubles: tuple[str, ...]


def promise_for(order: Order, *, demand: Demand, pace: Pace) -> Promise:
    """Return when an order can be ready as things stand."""
    waiting = _waiting(order, demand)
    soonest = _ready(waiting, pace, pace.good, dries=DRY_FAST)
    latest = _ready(waiting, pace, pace.slow, dries=DRY_SLOW)
    if waiting.to_dye:
        in_hand = latest + timedelta(days=ceil(pace.slow.days_between))
        latest = packed_on(dry=in_hand, habit=replace(pace.slow, pack_days=0.0))
    latest = max(soonest, latest)
    return Promise(
        soonest=soonest,
        latest=latest,
        reasons=(*_reasons(waiting, pace), *_closed_before(latest)),
        is_guess=bool(waiting.to_dye) and not pace.rests_on,
        is_blocked=bool(waiting.troubles),
    )


def _waiting(order: Order, demand: Demand) -> _Waiting:
    lines = [line.pk for line in order.lines.all() if not line.is_dropped]
    having = {
        each.number: sum(
            each.kept.get(pk, 0) + demand.allotted.get(pk, {}).get(each.number, 0)
            for pk in lines
        )
        for each in demand.yields
    }
    having = {number: skeins for number, skeins in having.items() if skeins}
    baths = [each for each in demand.yields if each.number in having]
    to_dye = sum(n for each in demand.to_dye for pk, n in each.for_lines if pk in lines)
    return _Waiting(
        on_shelf=sum(having[each.number] for each in baths if each.is_on_shelf),
        baths=tuple(each for each in baths if not each.is_on_shelf),
        to_dye=to_dye,
        before=_before(order, demand.to_dye) if to_dye else 0,
        troubles=tuple(
            each.trouble
            for each in demand.to_dye
            if each.trouble and dict(each.for_lines).keys() & set(lines)
        ),
    )


def _before(order: Order, wanted: Iterable[ToDye]) -> int:
    """Return the skeins for orders that are due sooner, or as soon and older."""
    needs = {
        line.pk: (wanted_by(line.order) or date.max, line.order.number)
        for line in order_reads.open_lines()
    }
    own = (wanted_by(order) or date.max, order.number)
    return sum(
        skeins for each in wanted for pk, skeins in each.for_lines if needs[pk] < own
    )


def _ready(waiting: _Waiting, pace: Pace, habit: Habit, *, dries: float) -> date:
    days = [packed_on(dry=today(), habit=habit)] if waiting.on_shelf else []
    for each in waiting.baths:
        dyed = max(each.dyed_on, today()) if each.is_to_come else each.dyed_on
        days.append(max(today(), ready_on(dyed=dyed, habit=habit, dries=dries)))
    if waiting.to_dye:
        last = dyed_on(
            skeins=min(waiting.before + waiting.to_dye, _LONGEST_QUEUE),
            today=today(),
            known=pace.known,
            habit=habit,
        )
        days.append(ready_on(dyed=last, habit=habit, dries=dries))
    return max(days, default=today())


def _reasons(waiting: _Waiting, pace: Pace) -> Iterator[str]:
    yield from waiting.troubles
    if waiting.on_shelf:
        yield f"{counted(waiting.on_shelf, 'skein')} on the shelf."
    for each in waiting.baths:
        yield f"Bath {each.number}: {day_words(each.dyed_on)}."
    if waiting.to_dye:
        yield from _of_the_queue(waiting, pace)
    if waiting.to_dye or waiting.baths:
        yield _of_the_rack(pace.slow)
    else:
        yield f"{_days(pace.slow.pack_days)} to reskein, tag and pack."
    if waiting.to_dye:
        yield (
            "The later day keeps one dye day in hand, for a pot that must be dyed "
            "again."
        )


def _closed_before(latest: date) -> Iterator[str]:
    for each in closed_to_come():
        if each.first_on <= latest:
            first, last = day_words(each.first_on), day_words(each.last_on)
            when = first if first == last else f"{first} to {last}"
            yield f"Closed {when}{f': {each.why}' if each.why else ''}."


def _of_the_queue(waiting: _Waiting, pace: Pace) -> Iterator[str]:
    before = (
        f"{counted(waiting.before, 'skein')} for orders that are due sooner"
        if waiting.before
        else "nothing"
    )
    yield f"{counted(waiting.to_dye, 'skein')} to dye; before them {before}."
    slow, good = pace.slow.skeins_a_day, pace.good.skeins_a_day
    skeins = counted(slow, "skein") if slow == good else f"{slow} to {good} skeins"
    basis = (
        f"as on your last {pace.rests_on} dye days"
        if pace.rests_on
        else "as is usual in a kitchen: you have too few dye days yet to tell"
    )
    yield (
        f"{skeins} a dye day, {_from_to(pace.good, pace.slow)} from one to the "
        f"next, {basis}."
    )


def _of_the_rack(habit: Habit) -> str:
    night = "A night in the pot, " if habit.cools_overnight else ""
    fast, slow = habit.dry_hours * DRY_FAST, habit.dry_hours * DRY_SLOW
    hours = f"{number_text(fast, digits=2)} to {number_text(slow, digits=2)}"
    said = f"{night}{hours}{NO_BREAK}h on the rack, {_days(habit.pack_days)} to pack."
    return said[0].upper() + said[1:]


def _from_to(good: Habit, slow: Habit) -> str:
    least, most = round(good.days_between), round(slow.days_between)
    return _days(most) if least == most else f"{least} to {_days(most)}"


def _days(count: float) -> str:
    return f"{number_text(count, digits=2)} day{'' if count == 1 else 's'}"
