"""Answer with a dye day on paper."""

from datetime import date

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from shadewright.web.pdfs import pdf
from shadewright.workflows.days.pulling import pull_list
from shadewright.workflows.days.sheets import day_cards, day_sheet
from shadewright.workflows.days.soaking import soak_list


@require_safe
def sheet(request: HttpRequest, day: date) -> HttpResponse:
    """Answer with the sheet for the wall."""
    return pdf(day_sheet(day, paper=_paper(request)), name=f"dye day {day}")


@require_safe
def soak(request: HttpRequest, day: date) -> HttpResponse:
    """Answer with the yarn to soak."""
    return pdf(soak_list(day, paper=_paper(request)), name=f"soak list {day}")


@require_safe
def pull(request: HttpRequest, day: date) -> HttpResponse:
    """Answer with the bottles to pull off the shelf."""
    return pdf(pull_list(day, paper=_paper(request)), name=f"pull list {day}")


@require_safe
def cards(request: HttpRequest, day: date) -> HttpResponse:
    """Answer with the cards of the day, in its order."""
    return pdf(day_cards(day, paper=_paper(request)), name=f"bath cards {day}")


def _paper(request: HttpRequest) -> str:
    return request.GET.get("paper", "a4")
