"""Undo a deed of today, from a toast or from a ledger."""

from uuid import UUID, uuid5

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.views.decorators.http import require_POST

from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows import undo as undoing
from shadewright.workflows.stamps import stamp_now


@require_POST
def undo(request: HttpRequest, deed: UUID) -> HttpResponse:
    """Take a deed back in every ledger that it wrote in, and go back.

    The key of the undo follows from the deed's, so that pressing twice undoes once.
    """
    stamp = stamp_now(by=person_id(request), deed=uuid5(deed, "undo"))
    undoing.undo(deed=deed, stamp=stamp)
    if undoing.touches_shades(deed):
        refit_soon(why="something was taken back")
    say(request, "Taken back. The ledger keeps both lines")
    return HttpResponseRedirect(way_back(request))
