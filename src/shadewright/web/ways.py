"""The way back after an act: only ever to a page of this studio."""

from django.http import HttpRequest
from django.utils.http import url_has_allowed_host_and_scheme


def way_back(request: HttpRequest, *, otherwise: str = "/") -> str:
    """Return the address that a form names as ``next``, if it is one of ours."""
    address = request.POST.get("next", "")
    if address and url_has_allowed_host_and_scheme(address, allowed_hosts=None):
        return address
    return otherwise
