"""Skeins of a lot that go to somebody."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.quantities import counted
from shadewright.errors import StudioError
from shadewright.web.buyers.forms import OutForm
from shadewright.web.buyers.pages import OutPage
from shadewright.web.frame import person_id
from shadewright.web.lot_crumbs import lot_crumbs
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.lot_skeins import (
    LotSkeins,
    buyers_known,
    lines_served_by,
    send_out,
    skeins_of,
)
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def out(request: HttpRequest, number: str) -> HttpResponse:
    """Show who has skeins of a lot, and write down who gets the next."""
    lot = skeins_of(number)
    lines = lines_served_by(number)
    if request.method == "POST":
        form = OutForm(request.POST, lines=lines)
        if form.is_valid() and _sent(request, number, form):
            return HttpResponseRedirect(reverse("lot-out", args=[number]))
    else:
        line = request.GET.get("line", "")
        form = OutForm(initial={"line": line}, lines=lines)
    page = OutPage(
        title=f"Skeins of {number}",
        fact="To whom they went: so that a buyer can be found again.",
        crumbs=lot_crumbs(number),
        lot=lot,
        left=left_words(lot),
        form=form,
        buyers=buyers_known(),
        own=reverse("lot-out", args=[number]),
    )
    return show(request, page, status=422 if form.errors else 200)


def left_words(lot: LotSkeins) -> str:
    """Return how many skeins are left, in words."""
    if lot.left is None:
        return "not counted, so nobody knows what is left"
    if not lot.left:
        baths = ", ".join(bath.number for bath in lot.back)
        return f"none left, it goes into bath {baths}" if baths else "none left"
    where = f", {lot.place}" if lot.place else ", place not written down"
    return f"{counted(lot.left, 'skein')} left{where}"


def _sent(request: HttpRequest, number: str, form: OutForm) -> bool:
    deed = form.cleaned_data["deed"]
    said = form.said
    try:
        sent = send_out(
            number=number, said=said, stamp=stamp_now(by=person_id(request), deed=deed)
        )
    except StudioError as error:
        form.refuse(error)
        return False
    to_whom = sent.out[-1].to_whom
    words = f"{counted(said.skeins, 'skein')} of {number} went to {to_whom}"
    say(request, words, undo=reverse("undo", args=[deed]))
    return True
