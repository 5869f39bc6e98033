"""Shades: the palette on a base."""

from dataclasses import replace

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.web.evidence.parts import (
    fit_shown,
    shaped_offers,
    shaped_suspects,
)
from shadewright.web.pages import show
from shadewright.web.palettes.addresses import (
    plan_address,
    rooms,
    tabs,
    untried,
)
from shadewright.web.palettes.closer import closer
from shadewright.web.palettes.pages import NoPalettePage, PalettePage, UnknownBasePage
from shadewright.web.palettes.reach_part import reach_part
from shadewright.web.palettes.strip_rows import legend, strip_rows
from shadewright.web.palettes.words import head_words, known_words
from shadewright.web.ways import way_to
from shadewright.workflows.shades.palette_pages import (
    PaletteOnBase,
    base_most_used,
    palette_on_base,
    swatches_kept,
    wanted_for,
)
from shadewright.workflows.shades.wanted import wanted_colours


@require_safe
def palette_home(request: HttpRequest) -> HttpResponse:
    """Show the palette of the base with most evidence, or the way to one."""
    base_id = base_most_used()
    if base_id is not None:
        return HttpResponseRedirect(reverse("palette", args=[base_id]))
    page = NoPalettePage(
        title="Shades",
        fact="What your dyes do on your yarn, and which recipe gives a colour.",
        fit=fit_shown(),
        swatches=swatches_kept(),
        files=way_to("swatch-files"),
        links=rooms(),
    )
    return show(request, page)


@require_safe
def palette(request: HttpRequest, base_id: int) -> HttpResponse:
    """Show what the palette says of a base; ``?look=closer`` reckons all of it."""
    found = palette_on_base(base_id)
    if found.now is None:
        return show(request, _unknown(found))
    return show(request, _known(found, is_closer=request.GET.get("look") == "closer"))


def _unknown(found: PaletteOnBase) -> UnknownBasePage:
    base = found.base
    return UnknownBasePage(
        title=f"Palette on {base.name}",
        base=base.name,
        swatches=len(found.swatches),
        enter=way_to("swatch-new", base=base.id),
        tabs=tabs(found.bases, here=base.id),
        untried=untried(found.bases, here=base.id),
        links=rooms(base.id),
        fit=replace(fit_shown(), is_first=bool(found.swatches)),
    )


def _known(found: PaletteOnBase, *, is_closer: bool) -> PalettePage:
    base = found.base
    wanted = wanted_for(base.id, wanted_colours())
    strips = strip_rows(found)
    return PalettePage(
        title=f"Palette on {base.name}",
        fact=head_words(found),
        own=reverse("palette", args=[base.id]),
        find=way_to("find", base=base.id),
        plan=plan_address(base.id),
        tabs=tabs(found.bases, here=base.id),
        untried=untried(found.bases, here=base.id),
        links=rooms(base.id),
        notes=known_words(found),
        strips=strips,
        legend=legend(strips),
        reach=reach_part(found, wanted),
        closer=closer(found, wanted) if is_closer else None,
        fit=fit_shown(),
        suspects=shaped_suspects(found.doubts, base_id=base.id),
        offered=shaped_offers(found.offers),
    )
