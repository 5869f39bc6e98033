"""Every page of a studio that nobody has founded leads to the first one."""

from collections.abc import Callable, Mapping, Sequence

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.urls import reverse

from shadewright.workflows.studio import studio

_OPEN = {"start", "healthz", "pair"}
_OURS = "shadewright.web."
_ASKING = {"GET", "HEAD"}


class FoundedFirst:
    """Send whoever comes to an unfounded studio to its first page."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        """Pass the request on."""
        return self.get_response(request)

    def process_view(
        self,
        request: HttpRequest,
        view: Callable[..., HttpResponseBase],
        _args: Sequence[object],
        _kwargs: Mapping[str, object],
    ) -> HttpResponse | None:
        """Let a page through once the studio stands."""
        match = request.resolver_match
        is_open = match is not None and match.url_name in _OPEN
        is_gated = view.__module__.startswith(_OURS) and request.method in _ASKING
        if is_gated and not is_open and studio() is None:
            return HttpResponseRedirect(reverse("start"))
        return None
