"""When a page cannot be given: one plain sentence, in the look of the house.

These pages ask nothing of the database and nothing of the session, so that
they still stand when either is what broke.
"""

from dataclasses import dataclass
from typing import ClassVar

from django.conf import settings
from django.core.exceptions import RequestDataTooBig
from django.http import HttpRequest, HttpResponse
from django.urls import reverse

from shadewright.errors import (
    ConflictError,
    NewerStudioError,
    NotFoundError,
    StudioError,
)
from shadewright.web.frame import bare_frame
from shadewright.web.pages import Page, show


@dataclass(frozen=True, kw_only=True)
class FaultPage(Page):
    """A refusal or a breakdown, with one way on."""

    template: ClassVar[str] = "fault.html"

    sentence: str
    way_on: str = "Go to Today"
    address: str = "/"


def wrong_host(_request: HttpRequest) -> HttpResponse:
    """Answer a request that calls this machine by another's name."""
    names = ", ".join(["127.0.0.1", *settings.HOME_ADDRESSES])
    sentence = (
        f"This studio answers only to {names} and localhost; open it by one of "
        "these addresses."
    )
    page = FaultPage(title="Another machine’s name", sentence=sentence, way_on="")
    return _fault(page, 400)


def bad_request(_request: HttpRequest, exception: Exception) -> HttpResponse:
    """Answer a request that cannot be read (Django's 400)."""
    if isinstance(exception, RequestDataTooBig):
        return too_large(_request)
    return unreadable(_request)


def unreadable(_request: HttpRequest) -> HttpResponse:
    """Answer a request that holds what no text can hold."""
    sentence = "What the browser sent cannot be read; go back and send it again."
    return _fault(FaultPage(title="That cannot be read", sentence=sentence), 400)


def csrf_failed(_request: HttpRequest, reason: str = "") -> HttpResponse:
    """Answer a form whose token is missing or stale (Django's 403)."""
    del reason  # written for programmers
    sentence = (
        "This form was open too long or in another window; nothing was written "
        "down. Go back, load the page again and send it once more."
    )
    return _fault(FaultPage(title="Please send it again", sentence=sentence), 403)


def not_from_here(_request: HttpRequest) -> HttpResponse:
    """Answer an act that another site asked for."""
    sentence = (
        "Another site asked for this act, so nothing was written down; do it on "
        "the studio’s own page."
    )
    return _fault(FaultPage(title="Not from this studio", sentence=sentence), 403)


def not_paired(_request: HttpRequest) -> HttpResponse:
    """Answer an act of a device that is not paired, or no longer."""
    sentence = (
        "This device is not paired with the studio, so nothing was written down "
        "and nothing is shown."
    )
    page = FaultPage(
        title="Not paired",
        sentence=sentence,
        way_on="Pair this device",
        address=reverse("pair"),
    )
    return _fault(page, 403)


def only_at_the_desk(_request: HttpRequest) -> HttpResponse:
    """Answer a paired device that wants what only the desk may do."""
    sentence = (
        "Phones, people, backup and restore are looked after at the computer that "
        "serves the studio; go there for this."
    )
    return _fault(FaultPage(title="Only at the desk", sentence=sentence), 403)


def forbidden(_request: HttpRequest, exception: Exception) -> HttpResponse:
    """Answer what nobody may do (Django's 403)."""
    del exception  # written for programmers
    sentence = "This page may not be opened; nothing was written down."
    return _fault(FaultPage(title="Not allowed", sentence=sentence), 403)


def not_found(_request: HttpRequest, exception: Exception) -> HttpResponse:
    """Answer an address that leads nowhere (Django's 404)."""
    del exception  # written for programmers
    sentence = (
        "There is no page at this address; it may be mistyped or from an old note."
    )
    return _fault(FaultPage(title="No such page", sentence=sentence), 404)


def too_large(_request: HttpRequest) -> HttpResponse:
    """Answer an upload past what the studio takes."""
    sentence = "Files may have up to 12 MB; nothing was kept. Send a smaller one."
    return _fault(FaultPage(title="Too large", sentence=sentence), 413)


def broken(_request: HttpRequest) -> HttpResponse:
    """Answer when the program itself is at fault (Django's 500)."""
    sentence = (
        "The program made a mistake. What was saved before is safe; look whether "
        "your last act was written down before you repeat it."
    )
    return _fault(FaultPage(title="Something broke", sentence=sentence), 500)


def refused(_request: HttpRequest, error: StudioError) -> HttpResponse:
    """Answer with the sentence of what Shadewright says no to."""
    titles: dict[type[StudioError], tuple[str, int]] = {
        NotFoundError: ("Not in this studio", 404),
        ConflictError: ("That cannot be done", 409),
        NewerStudioError: ("A newer studio", 503),
    }
    title, status = titles.get(type(error), ("That cannot be used", 422))
    return _fault(FaultPage(title=title, sentence=error.sentence), status)


def _fault(page: FaultPage, status: int) -> HttpResponse:
    return show(None, page, status=status, frame=bare_frame())
