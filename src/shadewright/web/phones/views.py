"""At the desk: let a phone in, put one out."""

from urllib.parse import urlencode

from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.phones.pages import Invitation, PhonesPage
from shadewright.web.toasts import say
from shadewright.workflows.devices import FreshCode, devices, make_code, revoke
from shadewright.workflows.wrong_codes import forget_wrong_codes, is_locked


@require_http_methods(["GET", "POST"])
def phones(request: HttpRequest) -> HttpResponse:
    """List the phones; asked to pair one, show a fresh code, this once."""
    is_shut = is_locked()
    wants_code = request.method == "POST" and not is_shut
    code = make_code(by=person_id(request)) if wants_code else None
    addresses = home_addresses(request)
    page = PhonesPage(
        title="Phones",
        fact="What a phone at the pot writes down is the studio’s like any other line.",
        devices=devices(),
        invitation=None if code is None else invitation(code, addresses),
        address=addresses[0] if addresses else "",
        is_locked=is_shut,
    )
    return show(request, page)


@require_POST
def open_pairing(request: HttpRequest) -> HttpResponse:
    """Forget the wrong codes that locked pairing."""
    forget_wrong_codes()
    say(request, "Pairing is open again")
    return HttpResponseRedirect(reverse("phones"))


@require_POST
def remove_phone(request: HttpRequest, device_id: int) -> HttpResponse:
    """Put a phone out at once."""
    device = revoke(device_id)
    say(request, f"{device.name} is out; it can be paired anew")
    return HttpResponseRedirect(reverse("phones"))


def home_addresses(request: HttpRequest) -> tuple[str, ...]:
    """Return where phones find the studio, the likeliest address first."""
    port = request.get_port()
    return tuple(f"http://{host}:{port}/" for host in settings.HOME_ADDRESSES)


def invitation(code: FreshCode, addresses: tuple[str, ...]) -> Invitation:
    """Return what the desk shows beside a fresh code."""
    first, *others = addresses or ("",)
    asked = urlencode({"code": code.digits})
    return Invitation(
        code=f"{code.digits[:3]} {code.digits[3:]}",
        until=f"{timezone.localtime(code.expires_at):%H:%M}",
        address=first,
        other_addresses=tuple(others),
        scanned=f"{first.rstrip('/')}{reverse('pair')}?{asked}" if first else "",
    )
