"""Searches run beside the pages, so that none waits for one and any can be stopped.

A search is known by what it was asked: who asks the same while it runs, or soon after,
gets the same. Nothing is lost with the program: an address always says the whole
question, and one that nobody remembers begins anew.
"""

import logging
from collections import OrderedDict
from collections.abc import Iterator
from dataclasses import dataclass, field
from threading import Event, Lock, Semaphore, Thread

from shadewright.core.recipes import Matches, Step
from shadewright.errors import NotConvergedError, StudioError
from shadewright.workflows.shades.finding import Hunt

FIRST_WAIT_S = 0.5
"""So long the first answer waits for a search before it shows how far it is. [s]"""
MOST_KEPT = 12
_AT_ONCE = 2
_LOG = logging.getLogger(__name__)


@dataclass(eq=False)
class Search:
    """One search: how far it is, and what came out."""

    share: float = 0.0
    answer: Matches | None = None
    fault: StudioError | None = None
    is_stopped: bool = False
    over: Event = field(default_factory=Event)

    def run(self, steps: Iterator[Step], places: Semaphore) -> None:
        """Take step after step until it is over, or told to stop."""
        try:
            with places:
                self._take(steps)
        except StudioError as error:
            self.fault = error
        except Exception:  # ruff: ignore[blind-except]
            # The page that waits must be told, whatever it was.
            _LOG.exception("A recipe could not be looked for")
            self.fault = NotConvergedError(name="The search", steps=0)
        finally:
            self.over.set()

    def _take(self, steps: Iterator[Step]) -> None:
        for step in steps:
            if self.is_stopped:
                return
            self.share, self.answer = step.share, step.found


@dataclass(eq=False)
class Searches:
    """The searches of this program, the oldest given up first."""

    kept: OrderedDict[str, Search] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)
    places: Semaphore = field(default_factory=lambda: Semaphore(_AT_ONCE))

    def of(self, ready: Hunt) -> Search:
        """Return the search for this, begun if nobody asked yet or it failed."""
        with self.lock:
            search = self.kept.get(ready.key)
            if search is None or search.fault is not None:
                search = self.kept[ready.key] = Search()
                task = (ready.steps(), self.places)
                Thread(target=search.run, args=task, name="find", daemon=True).start()
            self.kept.move_to_end(ready.key)
            while len(self.kept) > MOST_KEPT:
                self.kept.popitem(last=False)[1].is_stopped = True
            return search

    def stop(self, ready: Hunt) -> None:
        """Stop a search and forget it; one that nobody remembers is stopped already."""
        with self.lock:
            search = self.kept.pop(ready.key, None)
        if search is not None:
            search.is_stopped = True


SEARCHES = Searches()
