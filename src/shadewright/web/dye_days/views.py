"""The dye days in a list, and one of them."""

from datetime import date

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities import counted
from shadewright.web.asking import day_asked
from shadewright.web.dye_days.day_page import day_page
from shadewright.web.dye_days.pages import DayLink, DaysPage
from shadewright.web.dye_days.words import load
from shadewright.web.named_days import named_day
from shadewright.web.pages import show
from shadewright.web.parts import Chip
from shadewright.workflows.days.day_now import day_now
from shadewright.workflows.days.days_listed import DayListed, days_listed
from shadewright.workflows.stamps import today


@require_safe
def days(request: HttpRequest) -> HttpResponse:
    """List the days; a date that is asked for opens its day."""
    asked_for = day_asked(request.GET)
    if asked_for is not None:
        return redirect("day", asked_for)
    entries = days_listed()
    page = DaysPage(
        title="Dye days",
        fact="What is dyed when, in which pot, by whose hands.",
        coming=tuple(_link(each) for each in entries if each.day >= today()),
        were=tuple(_link(each) for each in entries if each.day < today()),
        today=today().isoformat(),
    )
    return show(request, page)


@require_safe
def day(request: HttpRequest, day: date) -> HttpResponse:
    """Show a day as it stands now."""
    return show(request, day_page(day_now(day)))


def _link(entry: DayListed) -> DayLink:
    return DayLink(
        address=reverse("day", args=[entry.day]),
        words=named_day(entry.day),
        baths=counted(entry.baths, "bath") if entry.baths else "none",
        yarn=load(entry.fibre_g, entry.skeins) if entry.baths else "",
        state=_state(entry),
    )


def _state(entry: DayListed) -> Chip:
    if entry.baths and entry.finished == entry.baths:
        return Chip(words="all finished", kind="good")
    if entry.finished:
        return Chip(words=f"{entry.finished} of {entry.baths} finished")
    if entry.has_plan:
        return Chip(words="planned", kind="good")
    return Chip(words="no plan yet" if entry.day >= today() else "never planned")
