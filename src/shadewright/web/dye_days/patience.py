"""A better plan, looked for in the background while the dyer does something else.

One search a day at a time. How far it has come can be read and stopped from any page;
what it finds is kept only if it is better than the plan that holds, and only while that
plan still is the one that it set out from.
"""

import logging
from dataclasses import dataclass, field
from datetime import date
from threading import Lock, Thread
from time import monotonic

from django.conf import settings
from django.db import connections

from shadewright.core.planning import Tried
from shadewright.errors import StudioError
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.scheduling import (
    PATIENT_SECONDS,
    Found,
    found_plan,
    keep_plan,
)
from shadewright.workflows.stamps import Stamp

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
    now = day_now(day)
    before = now.schedule

    def is_wanted(_tried: Tried) -> bool:
        return not search.is_stopped

    found = found_plan(now, seconds=search.seconds, is_wanted=is_wanted)
    holds = day_now(day).schedule
    if (None if before is None else before.id) != (None if holds is None else holds.id):
        return "The day was planned anew meanwhile, so this search was let go."
    if before is not None and not _is_better(found, before.plan):
        return "No better plan was found. The one that stands holds."
    plan = keep_plan(found, day, stamp, why="looked for with patience")
    return f"A better plan holds now, with {len(plan.baths)} baths in it."


def _is_better(found: Found, plan: object) -> bool:
    """Whether a plan holds more baths, or ends earlier, than the one that stands."""
    if not isinstance(plan, dict):
        return True
    was = (len(plan["left_out"]), float(plan["end_min"]))
    return (len(found.plan.left_out), found.plan.end_min) < was
