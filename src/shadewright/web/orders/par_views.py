"""Par levels: what the shelf should hold."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.orders.forms import ParForm
from shadewright.web.orders.listing import DAYS, ORDERS
from shadewright.web.orders.pages import ParsPage
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.days.pars import keep_par
from shadewright.workflows.days.pars import pars as pars_now


@require_http_methods(["GET", "POST"])
def pars(request: HttpRequest) -> HttpResponse:
    """Show the par levels; a form that is sent sets one."""
    if request.method != "POST":
        said = request.GET.dict()
        return show(request, _page(ParForm(initial=_begun(said))))
    form = ParForm(request.POST)
    if form.is_valid():
        try:
            _keep(form)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, "The par level is taken down" if _is_none(form) else "Kept")
            return redirect("pars")
    return show(request, _page(form), status=422)


def _keep(form: ParForm) -> None:
    sent = form.cleaned_data
    keep_par(
        recipe_id=sent["recipe_1"],
        base_id=sent["base_1"],
        skeins=sent["skeins_1"],
        skein_g=sent["skein_g_1"],
    )


def _is_none(form: ParForm) -> bool:
    return not form.cleaned_data["skeins_1"]


def _begun(said: dict[str, str]) -> dict[str, Any]:
    names = ("recipe", "base", "skeins", "skein_g")
    return {f"{name}_1": said[name] for name in names if name in said}


def _page(form: ParForm) -> ParsPage:
    return ParsPage(
        title="Par levels",
        fact="How many skeins the shelf should hold; what is short is to be dyed.",
        crumbs=(DAYS, ORDERS),
        rows=pars_now(),
        form=form,
    )
