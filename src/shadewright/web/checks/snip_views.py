"""Snip, squeeze, dry, with a clock that the studio keeps."""

from datetime import datetime

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.checks.forms import SnipForm
from shadewright.web.checks.pages import SnipPage
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.workflows.judging.snips import keep_snip, snip_of
from shadewright.workflows.stamps import stamp_now, this_moment


@require_http_methods(["GET", "POST"])
def snip(request: HttpRequest, number: str) -> HttpResponse:
    """Show how long a snip still dries, and hang one."""
    form = SnipForm(request.POST if request.method == "POST" else None)
    if form.is_bound and form.is_valid() and _kept(request, number, form):
        return HttpResponseRedirect(reverse("snip-lot", args=[number]))
    hung = snip_of(number)
    page = SnipPage(
        title=f"Snip of {number}",
        fact="Wet yarn is darker: nothing is judged wet.",
        crumbs=(
            Link(words="Lots", address=reverse("lots")),
            Link(words=number, address=reverse("lot", args=[number])),
        ),
        number=number,
        snip=hung,
        now_ms=_millis(this_moment()),
        until_ms=None if hung is None else _millis(hung.dry_at),
        form=form,
        own=reverse("snip-lot", args=[number]),
    )
    return show(request, page, status=422 if form.errors else 200)


def _millis(at: datetime) -> int:
    return round(at.timestamp() * 1000)


def _kept(request: HttpRequest, number: str, form: SnipForm) -> bool:
    sent = form.cleaned_data
    stamp = stamp_now(by=person_id(request), deed=sent["deed"])
    try:
        keep_snip(number, minutes=sent["minutes"], stamp=stamp)
    except StudioError as error:
        form.refuse(error)
        return False
    undo = reverse("undo", args=[sent["deed"]])
    say(request, f"The snip of {number} dries", undo=undo)
    return True
