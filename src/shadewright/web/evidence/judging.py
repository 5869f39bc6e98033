"""One tap: a swatch or a lot teaches, or teaches no longer."""

from collections.abc import Callable
from uuid import UUID, uuid5

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from shadewright.errors import UnreadableError
from shadewright.web.evidence.background import refit_soon
from shadewright.web.evidence.words import one_or_counted
from shadewright.web.frame import person_id
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows.shades import judging
from shadewright.workflows.stamps import Stamp, stamp_now


@require_POST
def set_aside(request: HttpRequest, swatch_id: int) -> HttpResponse:
    """Set a swatch aside."""

    def act(stamp: Stamp) -> str:
        return f"{judging.set_aside(swatch_id=swatch_id, stamp=stamp)} is set aside"

    return _judged(request, "set aside", act)


@require_POST
def restore(request: HttpRequest, swatch_id: int) -> HttpResponse:
    """Let a swatch teach again."""

    def act(stamp: Stamp) -> str:
        return f"{judging.restore(swatch_id=swatch_id, stamp=stamp)} teaches again"

    return _judged(request, "restore", act)


@require_POST
def trust(request: HttpRequest, swatch_id: int) -> HttpResponse:
    """Let a swatch teach that the others do not believe."""

    def act(stamp: Stamp) -> str:
        return f"{judging.trust(swatch_id=swatch_id, stamp=stamp)} teaches: it is right"

    return _judged(request, "trust", act)


@require_POST
def teach_lot(request: HttpRequest, number: str) -> HttpResponse:
    """Let a lot teach."""

    def act(stamp: Stamp) -> str:
        judging.teach_lot(number=number, stamp=stamp)
        return f"Lot {number} teaches"

    return _judged(request, "teach", act)


@require_POST
def teach_lots(request: HttpRequest) -> HttpResponse:
    """Let several lots teach, which the form names."""
    numbers = request.POST.getlist("number")

    def act(stamp: Stamp) -> str:
        judging.teach_lots(numbers=numbers, stamp=stamp)
        return (
            f"{one_or_counted(len(numbers), 'lot', 'lots')} more to teach the palette"
        )

    return _judged(request, "teach", act)


@require_POST
def leave_lot(request: HttpRequest, number: str) -> HttpResponse:
    """Leave a lot out."""

    def act(stamp: Stamp) -> str:
        judging.leave_lot(number=number, stamp=stamp)
        return f"Lot {number} is left out"

    return _judged(request, "leave", act)


def _judged(
    request: HttpRequest, name: str, act: Callable[[Stamp], str]
) -> HttpResponse:
    """Write a judgement down, say so with the way back, and fit the palette anew.

    The keys beside one swatch share a deed, so each act has a key of its own from it.
    """
    deed = uuid5(_deed(request), name)
    said = act(stamp_now(by=person_id(request), deed=deed))
    say(request, said, undo=reverse("undo", args=[deed]))
    refit_soon(why=said)
    return HttpResponseRedirect(way_back(request, otherwise=reverse("fits")))


def _deed(request: HttpRequest) -> UUID:
    try:
        return UUID(request.POST.get("deed", ""))
    except ValueError as error:
        raise UnreadableError(
            name="The key of this act",
            why="The form did not send it.",
            advice="Show the page again and press once more.",
        ) from error
