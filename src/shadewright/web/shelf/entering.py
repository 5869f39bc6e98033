"""Enter the bottles that stand on the shelf already, as they are."""

from collections.abc import Sequence

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.parts import measured
from shadewright.web.shelf.entering_pages import EnteredRow, EnterPage
from shadewright.web.shelf.forms import EnterForm
from shadewright.web.shelf.tasks import bottle_address
from shadewright.web.toasts import say
from shadewright.workflows.dyes import dyes
from shadewright.workflows.entering import (
    EnteredBottle,
    enter_bottle_by_name,
    entered_today,
)
from shadewright.workflows.filling import Particulars
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def enter(request: HttpRequest) -> HttpResponse:
    """Write a bottle down and stay for the next one."""
    if request.method == "POST":
        return _sent(request)
    entered = tuple(_row(one) for one in entered_today())
    newest = next(
        (r for r in entered if r.bottle.code == request.GET.get("after")), None
    )
    form = EnterForm(initial=_kept(request, newest))
    return show(request, _page(form, entered, newest))


def _sent(request: HttpRequest) -> HttpResponse:
    form = EnterForm(request.POST)
    bottle = _entered(request, form) if form.is_valid() else None
    if bottle is None:
        entered = tuple(_row(one) for one in entered_today())
        return show(request, _page(form, entered, None), status=422)
    say(
        request,
        f"Bottle {bottle.code} {bottle.dye_name} entered",
        undo=reverse("undo", args=[form.cleaned_data["deed"]]),
    )
    new = "&new=1" if form.cleaned_data["is_new_dye"] else ""
    return HttpResponseRedirect(f"{reverse('enter-bottle')}?after={bottle.code}{new}")


def _entered(request: HttpRequest, form: EnterForm) -> ShelfBottle | None:
    sent = form.cleaned_data
    made_on, is_about = form.made()
    try:
        return enter_bottle_by_name(
            dye=sent["dye"],
            is_new_dye=sent["is_new_dye"],
            strength_percent=sent["strength_percent"],
            volume_ml=sent["volume_ml"],
            stamp=stamp_now(by=person_id(request), deed=sent["deed"]),
            about=Particulars(
                made_on=made_on, is_date_about=is_about, place=sent["place"]
            ),
        )
    except StudioError as error:
        form.refuse(error)
        return None


def _page(
    form: EnterForm, entered: Sequence[EnteredRow], newest: EnteredRow | None
) -> EnterPage:
    return EnterPage(
        title="Enter bottles",
        fact="As they stand on the shelf: what the label says, what is left.",
        crumbs=(Link(words="Shelf", address=reverse("shelf")),),
        form=form,
        dye_names=tuple(dye.name for dye in dyes()),
        newest=newest,
        entered=tuple(entered),
    )


def _row(entered: EnteredBottle) -> EnteredRow:
    bottle = entered.bottle
    return EnteredRow(
        bottle=bottle,
        address=bottle_address(bottle.code),
        strength=measured(bottle.strength_percent, "%"),
        deed=entered.deed,
    )


def _kept(request: HttpRequest, newest: EnteredRow | None) -> dict[str, object]:
    """Keep what a whole shelf shares; a new dye is seldom the only new one."""
    if newest is None:
        return {"is_new_dye": not dyes()}
    return {
        "is_new_dye": "new" in request.GET,
        "strength_percent": newest.bottle.strength_percent,
        "place": newest.bottle.place,
    }
