"""The end of a bath: its lot is written."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.frame import person_id
from shadewright.web.lots.forms import FinishForm
from shadewright.web.lots.pages import FinishPage
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.web.toasts import say
from shadewright.workflows.bath_pages import BathNow, bath_now
from shadewright.workflows.lot_pages import is_rate_set, places
from shadewright.workflows.lots import Grade, doubt_of, finish_bath
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def finish(request: HttpRequest, number: str) -> HttpResponse:
    """Ask what came out of a bath, and write its lot."""
    bath = bath_now(number)
    doubt = doubt_of(number)
    if request.method == "POST":
        form = FinishForm(request.POST, is_timed=is_rate_set(), is_doubtful=bool(doubt))
        if form.is_valid() and _finished(request, number, form):
            return HttpResponseRedirect(reverse("lot", args=[number]))
    elif bath.has_lot:
        return HttpResponseRedirect(reverse("lot", args=[number]))
    else:
        form = _first_form(bath, is_doubtful=bool(doubt))
    page = _page(bath, form, doubt)
    return show(request, page, status=422 if form.errors else 200)


def _first_form(bath: BathNow, *, is_doubtful: bool) -> FinishForm:
    grade = Grade.SWATCH if bath.is_swatch else Grade.FIRST
    initial = {"grade": grade.value, "skeins": bath.skeins}
    return FinishForm(initial=initial, is_timed=is_rate_set(), is_doubtful=is_doubtful)


def _finished(request: HttpRequest, number: str, form: FinishForm) -> bool:
    deed = form.cleaned_data["deed"]
    try:
        finish_bath(
            number=number,
            said=form.said,
            stamp=stamp_now(by=person_id(request), deed=deed),
            is_sure=form.cleaned_data.get("is_sure", False),
        )
    except StudioError as error:
        form.refuse(error)
        return False
    say(request, f"Lot {number} is written", undo=reverse("undo", args=[deed]))
    return True


def _page(bath: BathNow, form: FinishForm, doubt: str) -> FinishPage:
    yarn = amount_text(bath.fibre_g, "g")
    address = f"/baths/{bath.number}/"
    warning = Caution(
        title="Did yarn come out of it?",
        text=f"{doubt} Tick “Write the lot all the same” if it did.",
        kind="problem",
    )
    return FinishPage(
        title=f"Finish {bath.number}",
        fact=f"{bath.recipe_name}, {yarn} of {bath.base_name}.",
        crumbs=(Link(words=f"Bath {bath.number}", address=address),),
        form=form,
        doubt=warning if doubt else None,
        places=places(),
        back=address,
    )
