"""The dye days, and a bath as planned beside as dyed."""

from collections.abc import Iterable
from itertools import groupby
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text
from shadewright.web.baths.pages import BathRow, BathsPage, DayRows
from shadewright.web.baths.showing import bath_page
from shadewright.web.baths.words import status_chip
from shadewright.web.finding import asked
from shadewright.web.lots.paging import page_asked, pages_of
from shadewright.web.named_days import named_day
from shadewright.web.pages import Link, show
from shadewright.web.templatetags.house import day as day_words
from shadewright.workflows.bath_lists import BathEntry, coming_baths, past_baths
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.stamps import today


@require_safe
def baths(request: HttpRequest) -> HttpResponse:
    """Show today's and coming baths by day, then those that were, newest first."""
    query = asked(request)
    coming = () if query else coming_baths()
    shown = {each.number for each in coming}
    past = past_baths(query, page=page_asked(request), without=shown)
    now = [each for each in coming if each.dyed_on <= today() and _is_open(each)]
    page = BathsPage(
        title="All baths",
        fact=_fact(coming),
        crumbs=(Link(words="Dye days", address=reverse("days")),),
        coming=_days(coming),
        past=tuple(_row(each) for each in past.rows),
        pages=pages_of(request, page=past.page, pages=past.pages),
        query=query,
        cards=_paper("bath-cards", [each for each in now if not each.is_swatch]),
        tags=_paper("swatch-tags", [each for each in now if each.is_swatch]),
    )
    return show(request, page)


@require_safe
def bath(request: HttpRequest, number: str) -> HttpResponse:
    """Show a bath as planned and as dyed."""
    return show(request, bath_page(bath_now(number)))


def _fact(coming: tuple[BathEntry, ...]) -> str:
    if not coming:
        return "No bath is planned."
    days = [each.dyed_on for each in coming]
    before = sum(day < today() for day in days)
    later = sum(day > today() for day in days)
    said = [f"{_counted(len(days) - before - later)} today"]
    said += [f"{before} from before"] if before else []
    said += [f"{later} later"] if later else []
    return f"{', '.join(said)}."


def _counted(count: int) -> str:
    return "1 bath" if count == 1 else f"{count or 'No'} baths"


def _is_open(entry: BathEntry) -> bool:
    return entry.status not in {BathStatus.FINISHED, BathStatus.GIVEN_UP}


def _paper(name: str, entries: list[BathEntry]) -> str:
    """Return the address of what is printed for these baths, if there are any."""
    asked_for = urlencode([("number", each.number) for each in entries])
    return f"{reverse(name)}?{asked_for}" if entries else ""


def _days(entries: Iterable[BathEntry]) -> tuple[DayRows, ...]:
    return tuple(
        DayRows(day=day, words=named_day(day), rows=tuple(_row(each) for each in group))
        for day, group in groupby(entries, key=lambda each: each.dyed_on)
    )


def _row(entry: BathEntry) -> BathRow:
    return BathRow(
        number=entry.number,
        address=reverse("bath", args=[entry.number]),
        day=day_words(entry.dyed_on),
        recipe=f"{entry.recipe_name}, version {entry.version_number}",
        base=entry.base_name,
        yarn=amount_text(entry.fibre_g, "g"),
        skeins=f"{entry.skeins} skeins" if (entry.skeins or 0) > 1 else "",
        pot=entry.pot_name,
        state=status_chip(entry.status),
    )
