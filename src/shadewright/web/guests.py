"""Who is a guest: every device but this machine. A guest comes in only when paired.

This machine is known by the socket alone: a request from a loopback address is
the desk's. What a header says of forwarding is never believed, and this
machine's own address on the network is a guest's like any other. (So no proxy
may stand on this machine: whoever came through it would be at the desk.)

A guest without its cookie reaches the pairing page and what that page is made
of; everything else leads there. A paired one does everything but let others in
or handle the whole studio: that is done at the desk.
"""

from ipaddress import ip_address

from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.urls import reverse

from shadewright.web import faults
from shadewright.web.middleware import Answer
from shadewright.workflows.devices import Device, device_of

AT_THE_DESK = {"phones", "people", "backup", "restore", "own-studio"}
_LOOKING = {"GET", "HEAD"}
_LOOKS = f"{settings.STATIC_URL}shadewright/"
_KINDS_OF_LOOKS = (".css", ".svg", ".webmanifest")
_SCRIPT = f"{settings.STATIC_URL}django_htmx/htmx-2.min.js"


def guests(get_response: Answer) -> Answer:
    """Let this machine and paired devices through, and nobody else."""

    def answer(request: HttpRequest) -> HttpResponseBase:
        return _refusal(request) or get_response(request)

    return answer


def is_at_the_desk(request: HttpRequest) -> bool:
    """Whether a request comes from this machine itself."""
    try:
        return ip_address(request.META["REMOTE_ADDR"]).is_loopback
    except ValueError:
        return False


def paired_device(request: HttpRequest) -> Device | None:
    """Return the device whose cookie came with a request, unless it was removed."""
    token = request.COOKIES.get(settings.PHONE_COOKIE_NAME, "")
    return device_of(token) if token else None


def _refusal(request: HttpRequest) -> HttpResponse | None:
    if is_at_the_desk(request) or _is_for_strangers(request):
        return None
    if paired_device(request) is None:
        return _to_the_door(request)
    if request.path_info.split("/")[1] in AT_THE_DESK:
        return faults.only_at_the_desk(request)
    return None


def _is_for_strangers(request: HttpRequest) -> bool:
    """Whether it is the pairing page, or what every page is made of."""
    path = request.path_info
    is_look = path.startswith(_LOOKS) and path.endswith(_KINDS_OF_LOOKS)
    is_made_of_it = is_look or path == _SCRIPT
    return path == reverse("pair") or (is_made_of_it and request.method in _LOOKING)


def _to_the_door(request: HttpRequest) -> HttpResponse:
    """Lead somebody who wants a page to the pairing page; refuse all else."""
    door = reverse("pair")
    wants_page = request.method in _LOOKING and request.path_info != reverse("healthz")
    if wants_page and "HX-Request" not in request.headers:
        return HttpResponseRedirect(door)
    answer = faults.not_paired(request)
    answer.headers["HX-Redirect"] = door
    return answer
