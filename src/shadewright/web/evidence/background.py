"""The palette is fitted anew beside the pages, one fit at a time.

Whoever changes what the palette rests on says ``refit_soon(why="Gorse 1 % was read")``
and goes on. A wish that comes while a fit runs makes one more fit after it, however
many come. How far a fit is stands in its row, where any page can read it; a row that
a closed program left running is ended, and its fit begun again.
"""

import logging
from dataclasses import dataclass, field
from functools import partial
from threading import Lock, Thread

from django.conf import settings
from django.db import connections, transaction
from django.utils import timezone

from shadewright.errors import StudioError
from shadewright.workflows.shades.fits import fail_left_behind, fit_if_stale
from shadewright.workflows.shades.palette_pages import reckon_ahead

_OPENED_AT = timezone.now()
_LOG = logging.getLogger(__name__)


@dataclass
class Desk:
    """What is wished for, and whether somebody is at work."""

    lock: Lock = field(default_factory=Lock)
    wishes: list[str] = field(default_factory=list)
    is_busy: bool = False

    def put(self, why: str) -> bool:
        """Add a wish; say whether somebody must be called to work."""
        with self.lock:
            if why not in self.wishes:
                self.wishes.append(why)
            is_called, self.is_busy = not self.is_busy, True
            return is_called

    def take(self) -> str:
        """Return all wishes as one; nothing where the work is done."""
        with self.lock:
            why, self.wishes = "; ".join(self.wishes), []
            self.is_busy = bool(why)
            return why


_DESK = Desk()


def refit_soon(*, why: str) -> None:
    """Fit the palette anew once this change is kept; ``why`` is for the history.

    Where nothing that teaches has changed after all, nothing is fitted.
    """
    if settings.REFITS == "thread":
        transaction.on_commit(partial(_wish, why))
    elif settings.REFITS == "at once":
        _fit(why)


def is_busy() -> bool:
    """Whether a fit runs here, or is about to."""
    return _DESK.is_busy


def take_up_left_behind() -> None:
    """Begin a fit again that was running when the program was closed."""
    if settings.REFITS == "thread" and not _DESK.is_busy:
        why = fail_left_behind(before=_OPENED_AT)
        if why:
            refit_soon(why=why)


def _wish(why: str) -> None:
    if _DESK.put(why):
        Thread(target=_work, name="palette", daemon=True).start()


def _work() -> None:
    try:
        while why := _DESK.take():
            _fit(why)
    finally:
        connections.close_all()


def _fit(why: str) -> None:
    """Fit; what went wrong stands in the history and, for an engineer, in the log."""
    try:
        fit_if_stale(why=why)
        if settings.REFITS == "thread":
            reckon_ahead()
    except StudioError:
        pass
    except Exception:  # ruff: ignore[blind-except]
        # Whatever it was, the next wish must find somebody at work.
        _LOG.exception("The palette could not be fitted")
