"""Lots that may share a sweater, and out of which lots orders come."""

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.web.asking import number_asked
from shadewright.web.checks.forms import WantedForm
from shadewright.web.checks.pages import OrderRow, SharingPage
from shadewright.web.checks.standard_views import LOTS
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Chip
from shadewright.workflows.judging.sharing import (
    OrderFrom,
    Sharing,
    recipes_shared,
)
from shadewright.workflows.judging.sharing import sharing as sharing_now
from shadewright.workflows.judging.standards import of_lot

_NONE = Caution(
    title="No lot to compare yet.",
    text="None of its lots with skeins left was read by a meter. Check them dry.",
)


@require_safe
def sharing(request: HttpRequest) -> HttpResponse:
    """Show which lots of a recipe on a base may share, and where orders come from."""
    recipe_id, base_id = _asked(request)
    form = WantedForm(request.GET if "skeins" in request.GET else None)
    found = None
    if recipe_id is not None and base_id is not None:
        wanted = (
            form.cleaned_data["skeins"] if form.is_bound and form.is_valid() else None
        )
        found = sharing_now(recipe_id=recipe_id, base_id=base_id, wanted=wanted)
    page = _page(found, form)
    return show(request, page, status=422 if form.errors else 200)


def _asked(request: HttpRequest) -> tuple[int | None, int | None]:
    """Return the recipe and the base that are asked for, or those of a lot."""
    number = request.GET.get("lot", "").strip()
    if number:
        what = of_lot(number)
        return what.recipe_id, what.base_id
    return (
        number_asked(request.GET, "recipe", kind="recipe"),
        number_asked(request.GET, "base", kind="base"),
    )


def _page(found: Sharing | None, form: WantedForm) -> SharingPage:
    what = None if found is None else found.what
    fact = (
        "Choose a yarn." if what is None else f"{what.recipe_name}, {what.base_name}."
    )
    return SharingPage(
        title="Lots that may share a sweater",
        fact=fact,
        crumbs=(LOTS,),
        choices=_choices() if found is None else (),
        what=what,
        rule="" if found is None else f"CIEDE2000 {found.tolerance:g}",
        groups=() if found is None else found.groups,
        unsure=() if found is None else found.unsure,
        unread=() if found is None else found.unread,
        orders=() if found is None else tuple(map(_order, found.orders)),
        form=form,
        none=_NONE if found is not None and not found.groups else None,
    )


def _choices() -> tuple[Link, ...]:
    return tuple(
        Link(
            words=f"{each.recipe_name} on {each.base_name}",
            address=f"{reverse('sharing')}?"
            + urlencode({"recipe": each.recipe_id, "base": each.base_id}),
        )
        for each in recipes_shared()
    )


def _order(asked: OrderFrom) -> OrderRow:
    parts = ", ".join(f"{taken} of {lot}" for lot, taken in asked.parts)
    skeins = f"{asked.wanted} {'skein' if asked.wanted == 1 else 'skeins'}"
    if not asked.parts:
        words = f"{skeins}: no lot and no group of lots that share holds so many."
        chip = Chip(words="It cannot be", kind="problem")
    elif asked.is_mixed:
        words = f"{skeins}, mixed: {parts}. Say so to the buyer."
        chip = Chip(words="Mixed lots", kind="caution")
    else:
        words = f"{skeins}: {parts}."
        chip = Chip(words="One lot", kind="good")
    return OrderRow(
        name=f"Order {asked.order}, {asked.for_whom}" if asked.order else "Asked now",
        address=f"/orders/{asked.order}/" if asked.order else "",
        words=words,
        chip=chip,
    )
