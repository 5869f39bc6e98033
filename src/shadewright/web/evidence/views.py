"""Fits: what holds, what runs, all of them; and a fit that somebody wishes for."""

from dataclasses import replace
from urllib.parse import urlsplit

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.web.evidence.background import refit_soon
from shadewright.web.evidence.pages import FitPart, FitsPage
from shadewright.web.evidence.parts import (
    fit_shown,
    shaped_offers,
    shaped_suspects,
)
from shadewright.web.pages import Link, show
from shadewright.web.ways import way_back
from shadewright.workflows.shades.doubts import doubts_among
from shadewright.workflows.shades.evidence import teaching
from shadewright.workflows.shades.fit_pages import fits as every_fit
from shadewright.workflows.shades.fits import require_dyed
from shadewright.workflows.shades.offering import offers_among
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import swatches_now


@require_safe
def fits(request: HttpRequest) -> HttpResponse:
    """Show every fit, and what does not teach."""
    swatches = swatches_now()
    page = FitsPage(
        title="Fits of the palette",
        fact="Each time something new teaches, all swatches are fitted together.",
        crumbs=(Link(words="Shades", address=reverse("palette-home")),),
        fit=fit_shown(),
        suspects=shaped_suspects(doubts_among(swatches, palette_now())),
        offered=shaped_offers(offers_among(swatches)),
        rows=every_fit(swatches),
    )
    return show(request, page)


@require_safe
def fit_status(request: HttpRequest) -> HttpResponse:
    """Show how far a fit is, and once it is done the way to what came out.

    Only a page that waits for its first palette is asked for again by itself: any
    other may hold a note with its Undo.
    """
    shown = replace(fit_shown(), is_first="first" in request.GET)
    if not shown.is_running and not shown.fault:
        address = request.headers.get("HX-Current-URL", "")
        path = urlsplit(address)
        shown = replace(shown, news=f"{path.path}?{path.query}".rstrip("?"))
    answer = show(request, FitPart(fit=shown))
    if shown.is_first and not shown.is_running:
        answer.headers["HX-Refresh"] = "true"
    return answer


@require_POST
def fit_now(request: HttpRequest) -> HttpResponse:
    """Fit the palette because somebody wishes it; refused where nothing is dyed."""
    require_dyed(teaching())
    refit_soon(why="somebody asked for it")
    return HttpResponseRedirect(way_back(request, otherwise=reverse("fits")))
