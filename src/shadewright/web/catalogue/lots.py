"""The mill lots of a base."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import NotFoundError
from shadewright.records.models import MillLot
from shadewright.web.catalogue.forms import MillLotForm
from shadewright.web.catalogue.kinds import BASES
from shadewright.web.catalogue.lists import above
from shadewright.web.catalogue.views import form_page, found, stamp_of
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.workflows.catalogue import keep_item


@require_http_methods(["GET", "POST"])
def add_lot(request: HttpRequest, item_id: int) -> HttpResponse:
    """Write down a delivery of a base."""
    base = found(BASES, item_id)
    return _kept(request, MillLot(base=base), f"A mill lot of {base}")


@require_http_methods(["GET", "POST"])
def edit_lot(request: HttpRequest, item_id: int, lot_id: int) -> HttpResponse:
    """Change what is written of a delivery; the version before is kept."""
    lot = MillLot.objects.filter(pk=lot_id, base_id=item_id).first()
    if lot is None:
        raise NotFoundError(kind="mill lot", key=str(lot_id))
    return _kept(request, lot, f"Mill lot {lot.lot}")


def _kept(request: HttpRequest, lot: MillLot, title: str) -> HttpResponse:
    base = reverse("base", args=[lot.base_id])
    crumbs = (above(BASES), Link(words=lot.base.name, address=base))
    form = MillLotForm(request.POST or None, instance=lot)
    if form.is_valid():
        keep_item(form.instance, stamp_of(request))
        say(request, f"Mill lot {lot.lot} is written down")
        return HttpResponseRedirect(base)
    if form.said_before is not None:
        return HttpResponseRedirect(base)
    page = form_page(form, title=title, crumbs=crumbs)
    return show(request, page, status=422 if form.errors else 200)
