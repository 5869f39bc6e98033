"""Lots that may share a sweater, and out of which lots orders come."""

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.web.asking import number_asked
from shadewright.web.checks.forms import WantedForm
from shadewright.web.checks.pages import OrderRow, SharingPage
from shadewright.web.checks.standard_views import LOTS
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Chip
from shadewright.web.toasts import say
from shadewright.web.ways import way_to
from shadewright.workflows.judging.setting_aside import of_line, set_aside
from shadewright.workflows.judging.sharing import (
    OrderFrom,
    Sharing,
    recipes_shared,
)
from shadewright.workflows.judging.sharing import sharing as sharing_now
from shadewright.workflows.judging.standards import of_lot
from shadewright.workflows.stamps import stamp_now

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


@require_POST
def aside(request: HttpRequest, line_id: int) -> HttpResponse:
    """Set the lots aside that were found for a line of an order."""
    stamp = stamp_now(by=person_id(request))
    found = set_aside(line_id, stamp=stamp)
    said = f"Set aside for order {found.order}: {_words(found.parts)}"
    say(request, said, undo=reverse("undo", args=[stamp.deed]))
    return _to(line_id)


def _to(line_id: int) -> HttpResponse:
    """Go on to the lots of the yarn that a line asks for."""
    what = of_line(line_id)
    asked = {"recipe": what.recipe_id, "base": what.base_id}
    return HttpResponseRedirect(way_to("sharing", **asked))


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
    chip, words, key = _found(asked)
    held = _words(asked.aside)
    return OrderRow(
        name=f"Order {asked.order}, {asked.for_whom}" if asked.order else "Asked now",
        address=f"/orders/{asked.order}/" if asked.order else "",
        words=f"{_skeins(asked.wanted)}. Held for it: {held}. {words}".strip()
        if held
        else f"{_skeins(asked.wanted)}{words}",
        chip=chip,
        key=key if asked.line_id else "",
        aside=""
        if asked.line_id is None
        else reverse("sharing-aside", args=[asked.line_id]),
    )


def _found(asked: OrderFrom) -> tuple[Chip, str, str]:
    """Return how an order can be served: in a chip, in words, and by which key."""
    parts = _words(asked.parts)
    if asked.open <= 0:
        return Chip(words="It has its yarn", kind="good"), "", ""
    opening = f"{asked.open} more" if asked.aside else ""
    if not asked.parts:
        chip = Chip(words="It cannot be", kind="problem")
        words = "no lot and no group of lots that share holds so many free skeins."
        return chip, f"{opening}: {words}", ""
    if asked.is_mixed:
        chip = Chip(words="Mixed lots", kind="caution")
        words = f"{opening}: {parts}." if opening else f", mixed: {parts}."
        return chip, f"{words} Say so to the buyer.", "Set aside, mixed"
    return Chip(words="One lot", kind="good"), f"{opening}: {parts}.", "Set aside"


def _words(parts: tuple[tuple[str, int], ...]) -> str:
    return ", ".join(f"{taken} of {lot}" for lot, taken in parts)


def _skeins(count: int) -> str:
    return f"{count} {'skein' if count == 1 else 'skeins'}"
