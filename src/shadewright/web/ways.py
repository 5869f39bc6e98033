"""Ways between pages: on to one with what is asked of it, and back after an act."""

from urllib.parse import urlencode

from django.http import HttpRequest
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme


def way_to(name: str, /, *args: object, **asked: object) -> str:
    """Return the address of a page by its name, with what is asked of it."""
    address = reverse(name, args=args)
    return f"{address}?{urlencode(asked, safe=':,')}" if asked else address


def way_round(name: str, /, *, back: str) -> str:
    """Return the address of a form that leads back to a page once it is sent."""
    return f"{reverse(name)}?{urlencode({'next': back})}"


def way_back(request: HttpRequest, *, otherwise: str = "/") -> str:
    """Return the address that is named as ``next``, if it is a page of ours.

    A form names it, or the address of the form's own page.
    """
    address = request.POST.get("next") or request.GET.get("next", "")
    if address and url_has_allowed_host_and_scheme(address, allowed_hosts=None):
        return address
    return otherwise
