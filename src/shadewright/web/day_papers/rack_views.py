"""The rack: what hangs, and the key that takes it off."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.core.quantities import amount_text, counted
from shadewright.web.day_papers.pages import RackPage
from shadewright.web.day_papers.rack_words import hung_rows
from shadewright.web.dye_days.crumbs import days_crumb
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows.bath_pages import BathAct, open_baths
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.rack import Rack, rack_now, rack_words, take_off_rack
from shadewright.workflows.stamps import stamp_now, this_moment

_HANGING = {BathAct.HUNG, BathAct.DRY}


@require_safe
def rack(request: HttpRequest) -> HttpResponse:
    """Show what hangs, what is dry first at the top."""
    found = rack_now()
    page = RackPage(
        title="The rack",
        fact=_fact(found),
        crumbs=days_crumb(),
        hung=hung_rows(found.hung, now=this_moment()),
        waiting=_waiting(),
        dries_in=amount_text(found.dry_hours, "h"),
    )
    return show(request, page)


@require_POST
def off_the_rack(request: HttpRequest, number: str) -> HttpResponse:
    """Take a bath's yarn off the rack: it is dry."""
    form = DeedForm(request.POST)
    if form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        take_off_rack(number, stamp=stamp)
        undo = reverse("undo", args=[stamp.deed])
        say(request, f"{number}: dry, off the rack", undo=undo)
    return HttpResponseRedirect(way_back(request, otherwise=reverse("rack")))


def _fact(found: Rack) -> str:
    if not found.hung:
        return f"Nothing hangs here. The rack has {counted(found.slots, 'place')}."
    free = found.slots - found.skeins
    room = f"{free} free" if free >= 0 else f"{-free} more than it has places"
    return f"{rack_words(found.hung)} on {counted(found.slots, 'place')}, {room}."


def _waiting() -> tuple[Link, ...]:
    """Return the baths that are off the heat and were not hung yet."""
    return tuple(
        Link(
            words=f"{bath.number} {bath.recipe_name}",
            address=reverse("bench", args=[bath.number]),
        )
        for bath in open_baths()
        if bath.status is BathStatus.COOLING
        and not any(line.act in _HANGING for line in bath.standing)
    )
