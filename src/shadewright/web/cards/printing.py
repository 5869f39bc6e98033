"""Answer with baths on paper."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from shadewright.web.pdfs import pdf
from shadewright.workflows.cards import bath_cards, swatch_tags

_NAMED = 6


@require_safe
def cards(request: HttpRequest) -> HttpResponse:
    """Answer with the cards of the baths that are named, two to a page."""
    numbers = request.GET.getlist("number")
    sheet = bath_cards(numbers, paper=request.GET.get("paper", "a4"))
    return pdf(sheet, name=f"bath cards {' '.join(numbers[:_NAMED])}")


@require_safe
def tags(request: HttpRequest) -> HttpResponse:
    """Answer with the tags of the swatches that are named."""
    numbers = request.GET.getlist("number")
    sheet = swatch_tags(numbers, paper=request.GET.get("paper", "a4"))
    return pdf(sheet, name=f"swatch tags {' '.join(numbers[:_NAMED])}")
