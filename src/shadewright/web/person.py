"""Say who is at the bench."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.views.decorators.http import require_POST

from shadewright.errors import NotFoundError
from shadewright.web.frame import seat
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows.people import Person, people


@require_POST
def choose_person(request: HttpRequest) -> HttpResponse:
    """Seat somebody at the bench and go back to the page they came from."""
    chosen = _named(request.POST.get("person", ""))
    seat(request, chosen)
    say(request, f"{chosen.name} is at the bench")
    return HttpResponseRedirect(way_back(request))


def _named(key: str) -> Person:
    for one in people():
        if str(one.id) == key:
            return one
    raise NotFoundError(kind="person", key=key, advice="Choose somebody on the list.")
