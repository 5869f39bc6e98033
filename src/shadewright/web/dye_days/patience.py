"""A better plan, looked for in the background while the dyer does something else.

One search a day at a time. How far it has come can be read and stopped from any page;
what it finds is kept only if it is better than the plan that holds, and only while the
day and its plan still are as they were when it set out. A plan of another day, as it
was before a bath came or a burner went, is no better for ending sooner.
"""

import logging
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from threading import Lock, Thread
from time import monotonic

from django.conf import settings
from django.db import connections

from shadewright.core.planning import Tried
from shadewright.core.quantities import counted
from shadewright.errors import StudioError
from shadewright.workflows.days.asked import asked_of
from shadewright.workflows.days.asked_file import file_of
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.schedules import Schedule
from shadewright.workflows.days.scheduling import (
    PATIENT_SECONDS,
    Found,
    found_plan,
    keep_plan,
)
from shadewright.workflows.stamps import Stamp, as_of, this_moment

TOLD_SECONDS = 120.0
"""So long the page of a day says how its search ended. [s]"""
_LOG = logging.getLogger(__name__)


@dataclass
class Search:
    """A search that runs, or how it ended."""

    seconds: float
    began: float = field(default_factory=monotonic)
    is_stopped: bool = False
    ended: float | None = None
    said: str = ""

    @property
    def is_over(self) -> bool:
        """Whether nobody looks any more."""
        return self.ended is not None

    @property
    def is_told(self) -> bool:
        """Whether it ended so long ago that everybody has read how."""
        return self.ended is not None and monotonic() - self.ended > TOLD_SECONDS

    @property
    def left_seconds(self) -> int:
        """About how long it still looks. [s]."""
        return max(0, round(self.began + self.seconds - monotonic()))


_LOCK = Lock()
_SEARCHES: dict[date, Search] = {}


def search_of(day: date) -> Search | None:
    """Return the search of a day that runs, or one that ended just now."""
    search = _SEARCHES.get(day)
    return None if search is None or search.is_told else search


def begin(day: date, stamp: Stamp, *, seconds: float = PATIENT_SECONDS) -> None:
    """Begin to look for a better plan of a day, unless somebody does already."""
    with _LOCK:
        running = _SEARCHES.get(day)
        if running is not None and not running.is_over:
            return
        search = _SEARCHES[day] = Search(seconds=seconds)
    if settings.REFITS == "thread":
        Thread(
            target=_work, args=(day, stamp, search), name="dye day", daemon=True
        ).start()
    else:
        _look(day, stamp, search)


def stop(day: date) -> None:
    """Stop a search; the best that it has found so far is kept if it is better."""
    search = _SEARCHES.get(day)
    if search is not None:
        search.is_stopped = True


def forget(day: date) -> None:
    """Forget how a search ended, since the day was planned anew."""
    search = _SEARCHES.get(day)
    if search is not None and search.is_over:
        del _SEARCHES[day]


def _work(day: date, stamp: Stamp, search: Search) -> None:
    try:
        _look(day, stamp, search)
    finally:
        connections.close_all()


def _look(day: date, stamp: Stamp, search: Search) -> None:
    try:
        search.said = _outcome(day, stamp, search)
    except StudioError as error:
        search.said = error.sentence
    except Exception:  # ruff: ignore[blind-except]
        # Whatever it was, the page must not say for ever that somebody looks.
        _LOG.exception("A better plan could not be looked for")
        search.said = "The search broke off. The plan that stands still holds."
    finally:
        search.ended = monotonic()


def _outcome(day: date, stamp: Stamp, search: Search) -> str:
    began = this_moment()
    now = day_now(day)
    before = now.schedule

    def is_wanted(_tried: Tried) -> bool:
        return not search.is_stopped

    with as_of(began):
        found = found_plan(now, seconds=search.seconds, is_wanted=is_wanted)
    if not _is_still_asked(day, found, before, began):
        return "The day was changed meanwhile, so this search was let go."
    if before is not None and not _is_better(found, before):
        return "No better plan was found. The one that stands holds."
    plan = keep_plan(found, day, stamp, why="looked for with patience")
    baths = counted(len(plan.baths), "bath")
    return f"A better plan holds now, with {baths} in it."


def _is_still_asked(
    day: date, found: Found, before: Schedule | None, began: datetime
) -> bool:
    """Whether the day would be asked the same way, had the search begun only now."""
    with as_of(began):
        now = day_now(day)
        holds = now.schedule
        is_same = (before and before.id) == (holds and holds.id)
        return is_same and asked_of(now) == found.asked


def _is_better(found: Found, before: Schedule) -> bool:
    """Whether a plan holds more baths, or ends earlier, than the one that stands."""
    asked = file_of(found.asked.day, found.asked.before)
    if _question(asked) != _question(before.asked):
        return True
    was = (len(before.left_out), float(before.plan["end_min"]))
    return (len(found.plan.left_out), found.plan.end_min) < was


def _question(asked: Mapping[str, object]) -> dict[str, object]:
    """Return what a day asks, but for when it was asked and what stood before."""
    return {key: each for key, each in asked.items() if key not in {"now", "before"}}
