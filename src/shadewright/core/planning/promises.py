"""Promises: when yarn can be ready, as a range and not as a hope.

Yarn that waits to be dyed stands in a queue of dye days. After its day it cools, dries
for as long as the air wants, and is reskeined, tagged and packed. On a closed day yarn
dries on, but nobody dyes, hangs or packs.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
q       skeins in the queue, with one's own             1
f       skeins that planned dye days still take         1
c       skeins that a dye day takes                     1
g       days from one dye day to the next               d
h       usual hours on the rack                         h
======  ==============================================  ====
"""

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import count, takewhile
from math import ceil

DRY_FAST, DRY_SLOW = 2 / 3, 4 / 3
"""Yarn dries in 24 to 48 h where 36 are usual; a fan or damp air decides. Common
practice."""


@dataclass(frozen=True, kw_only=True)
class KnownDay:
    """A dye day that is planned already, and the skeins that it can still take."""

    day: date
    free_skeins: int


@dataclass(frozen=True, kw_only=True)
class Habit:
    """How a room works: skeins a dye day, days between them, and what comes after.

    In skeins, days, h and days; ``cools_overnight`` adds a night before the rinse.
    Nobody works on the ``closed`` days.
    """

    skeins_a_day: int
    days_between: float
    dry_hours: float
    pack_days: float
    cools_overnight: bool
    closed: AbstractSet[date] = frozenset()


def dyed_on(
    *, skeins: int, today: date, known: Sequence[KnownDay], habit: Habit
) -> date:
    """Return the dye day on which the last of a queue is dyed.

    Days that are known take what they have room for, f skeins of them. In a gap
    between two that is longer than g, and after the last, comes one every g days; a
    closed one is put off, and those after it with it

    days = ceil((q − f) / c) g                                       (5)

    Parameters
    ----------
    skeins : int
        All that waits, one's own last, q. [1]
    today : date
        The day of asking; nothing of the queue is dyed before the next.
    known : Sequence[KnownDay]
        Dye days from tomorrow on, in order.
    habit : Habit
        How the room works.

    Returns
    -------
    date
        The day.

    Examples
    --------
    >>> usual = Habit(
    ...     skeins_a_day=20,
    ...     days_between=7.0,
    ...     dry_hours=36.0,
    ...     pack_days=2.0,
    ...     cools_overnight=True,
    ... )
    >>> friday = KnownDay(day=date(2026, 11, 27), free_skeins=8)
    >>> dyed_on(skeins=14, today=date(2026, 11, 25), known=[friday], habit=usual)
    datetime.date(2026, 12, 4)
    """
    left, last = skeins, today
    for each in [*known, None]:
        for day in _usual_days(last, before=each, habit=habit):
            left -= max(1, habit.skeins_a_day)
            if left <= 0:
                return day
        if each is not None:
            left, last = left - max(0, each.free_skeins), each.day
            if left <= 0:
                break
    return last


def _usual_days(last: date, *, before: KnownDay | None, habit: Habit) -> Iterator[date]:
    """Return a day every so many days, up to the next that is known, or for ever."""
    end = date.max if before is None else before.day
    return takewhile(lambda day: day < end, _every_so_many(last, habit))


def _every_so_many(last: date, habit: Habit) -> Iterator[date]:
    step_days, put_off = max(1.0, habit.days_between), timedelta()
    for step in count(1):
        usual = last + timedelta(days=ceil(step * step_days)) + put_off
        day = _open_from(usual, habit)
        put_off += day - usual
        yield day


def _open_from(day: date, habit: Habit) -> date:
    """Return a day, or the next on which somebody works."""
    while day in habit.closed:
        day += timedelta(days=1)
    return day


def ready_on(*, dyed: date, habit: Habit, dries: float) -> date:
    """Return when yarn of a dye day is packed.

    Parameters
    ----------
    dyed : date
        Its dye day.
    habit : Habit
        How the room works.
    dries : float
        How long it dries against the usual hours: 1 is as usual. [1]

    Returns
    -------
    date
        The day.

    Examples
    --------
    >>> usual = Habit(
    ...     skeins_a_day=20,
    ...     days_between=7.0,
    ...     dry_hours=36.0,
    ...     pack_days=2.0,
    ...     cools_overnight=True,
    ... )
    >>> ready_on(dyed=date(2026, 11, 27), habit=usual, dries=DRY_SLOW)
    datetime.date(2026, 12, 2)
    """
    night = timedelta(days=1 if habit.cools_overnight else 0)
    drying = timedelta(days=ceil(dries * habit.dry_hours / 24.0 - 1e-9))
    return packed_on(dry=_open_from(dyed + night, habit) + drying, habit=habit)


def packed_on(*, dry: date, habit: Habit) -> date:
    """Return when yarn that is dry on a day is reskeined, tagged and packed.

    Parameters
    ----------
    dry : date
        The day on which it is dry.
    habit : Habit
        How the room works.

    Returns
    -------
    date
        The day, after as many open days as packing takes.

    Examples
    --------
    >>> feast = frozenset({date(2026, 12, 25), date(2026, 12, 26)})
    >>> usual = Habit(
    ...     skeins_a_day=20,
    ...     days_between=7.0,
    ...     dry_hours=36.0,
    ...     pack_days=2.0,
    ...     cools_overnight=True,
    ...     closed=feast,
    ... )
    >>> packed_on(dry=date(2026, 12, 24), habit=usual)
    datetime.date(2026, 12, 28)
    """
    day = _open_from(dry, habit)
    for _each in range(ceil(habit.pack_days)):
        day = _open_from(day + timedelta(days=1), habit)
    return day
