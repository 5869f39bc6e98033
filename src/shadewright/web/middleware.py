"""What holds for every answer: who may ask, and what a page may do.

Pages are served on this machine alone, yet other pages in the same browser can
reach them. So a request must name this machine as its host (a stranger's name
that points here is refused), and an act must come from one of our own pages.
"""

from collections.abc import Callable

from django.conf import settings
from django.core.exceptions import DisallowedHost
from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.utils.cache import patch_cache_control

from shadewright.errors import StudioError
from shadewright.web import faults

Answer = Callable[[HttpRequest], HttpResponseBase]

_OWN = "'self'"
_NONE = "'none'"
POLICY = "; ".join(
    f"{what} {whence}"
    for what, whence in (
        ("default-src", _NONE),
        ("script-src", _OWN),
        ("style-src", _OWN),
        ("img-src", _OWN),
        ("font-src", _OWN),
        ("connect-src", _OWN),
        ("manifest-src", _OWN),
        ("form-action", _OWN),
        ("base-uri", _NONE),
        ("frame-ancestors", _NONE),
        ("object-src", _NONE),
    )
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "Permissions-Policy": (
        "camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), "
        "usb=()"
    ),
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}
_NULL = "%00"
"""No text holds this sign, and PostgreSQL will not even look for it."""
_SAFE_METHODS = {"GET", "HEAD", "OPTIONS", "TRACE"}
_OWN_SITE = {"same-origin", "none"}


def page_safety(get_response: Answer) -> Answer:
    """Refuse strangers, and send the safety headers with every answer."""

    def answer(request: HttpRequest) -> HttpResponseBase:
        response = _refusal(request) or get_response(request)
        for name, value in HEADERS.items():
            response.headers[name] = value
        if not request.path.startswith(settings.STATIC_URL):
            patch_cache_control(response, private=True, no_cache=True)
        return response

    return answer


class PlainRefusals:
    """Turn what Shadewright says no to into a page with that sentence."""

    def __init__(self, get_response: Answer) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        """Pass the request on."""
        return self.get_response(request)

    def process_exception(
        self, request: HttpRequest, exception: Exception
    ) -> HttpResponse | None:
        """Answer for a ``StudioError`` that a view let through."""
        if isinstance(exception, StudioError):
            return faults.refused(request, exception)
        return None


def _refusal(request: HttpRequest) -> HttpResponse | None:
    if not _names_this_machine(request):
        return faults.wrong_host(request)
    if _is_too_large(request):
        return faults.too_large(request)
    if _NULL in request.META.get("QUERY_STRING", "") or "\0" in request.path:
        return faults.unreadable(request)
    if request.method not in _SAFE_METHODS and not _comes_from_here(request):
        return faults.not_from_here(request)
    return None


def _names_this_machine(request: HttpRequest) -> bool:
    try:
        request.get_host()
    except DisallowedHost:
        return False
    return True


def _is_too_large(request: HttpRequest) -> bool:
    length = request.META.get("CONTENT_LENGTH") or "0"
    largest: int = settings.DATA_UPLOAD_MAX_MEMORY_SIZE
    return not length.isdecimal() or int(length) > largest


def _comes_from_here(request: HttpRequest) -> bool:
    """Judge by what the browser says of the page that sends; silence is no fault."""
    site = request.headers.get("Sec-Fetch-Site", "none")
    here = f"{request.scheme}://{request.get_host()}"
    origin = request.headers.get("Origin", here)
    return site in _OWN_SITE and origin == here
