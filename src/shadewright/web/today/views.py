"""Show what waits; open a studio of one's own from the demo."""

from datetime import date

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_POST, require_safe

from shadewright.web.bench.list_views import pots_of_today
from shadewright.web.pages import Link, show
from shadewright.web.today.pages import OwnStudioPage, TodayPage
from shadewright.web.today.waiting import what_waits
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import today as this_day
from shadewright.workflows.studio import open_own_studio, studio


@require_safe
def today(request: HttpRequest) -> HttpResponse:
    """Show the day and what waits."""
    bottles = shelf()
    here = studio()
    page = TodayPage(
        title=_day_words(this_day()),
        fact="" if here is None else here.name,
        pots=pots_of_today(),
        waiting=what_waits(bottles),
        count_of_bottles=len(bottles),
    )
    return show(request, page)


@require_POST
def own_studio(request: HttpRequest) -> HttpResponse:
    """Open a studio of one's own beside the demo, and say where it is."""
    page = OwnStudioPage(
        title="Your own studio",
        fact="It has a folder of its own; the demo and your studio never mix.",
        crumbs=(Link(words="Today", address="/"),),
        address=open_own_studio(),
    )
    return show(request, page)


def _day_words(day: date) -> str:
    return f"{day:%A} {day.day} {day:%B}"
