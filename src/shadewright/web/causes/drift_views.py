"""How the lots of a recipe on a base drift, and their history as a table."""

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quality import Repeatability
from shadewright.drawing import DriftPoint, DriftShown
from shadewright.web.causes.pages import DriftPage, DriftRow
from shadewright.web.pages import Link, show
from shadewright.workflows.judging.drift import DriftLot, DriftNow
from shadewright.workflows.judging.drift import drift as drift_of
from shadewright.workflows.judging.histories import history_of
from shadewright.workflows.shades.own_lots import studio_repeatability


@require_safe
def drift(request: HttpRequest, recipe_id: int, base_id: int) -> HttpResponse:
    """Show the lots of a recipe on a base by how far they are off."""
    now = drift_of(recipe_id=recipe_id, base_id=base_id)
    what = now.history.what
    page = DriftPage(
        title=f"Drift of {what.recipe_name}",
        fact=f"On {what.base_name}, lot by lot, as they were read dry.",
        crumbs=(Link(words="Lots", address=reverse("lots")),),
        shown=_shown(now) if len(now.lots) > 1 else None,
        beside=now.beside,
        marks=tuple((mark.number, f"{mark.lot}: {mark.words}") for mark in now.marks),
        rows=tuple(_row(lot) for lot in reversed(now.lots)),
        older=now.older,
        noise=f"{now.noise:.1f}",
        signals=now.signals,
        repeats=_repeats(studio_repeatability()),
        newest=now.lots[-1].number if now.lots else "",
        file=reverse("history", args=[recipe_id, base_id]),
    )
    return show(request, page)


@require_safe
def history(request: HttpRequest, recipe_id: int, base_id: int) -> HttpResponse:
    """Hand out a history as ``shadewright lot causes`` reads it, to a lot or whole."""
    number = request.GET.get("lot", "")
    whole = history_of(recipe_id=recipe_id, base_id=base_id)
    found = whole.up_to(number) if number else whole
    answer = HttpResponse(found.text, content_type="text/csv; charset=utf-8")
    name = f"history-{recipe_id}-{base_id}.csv"
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return answer


def _shown(now: DriftNow) -> DriftShown:
    what, newest, first = now.history.what, now.lots[-1], now.lots[0]
    return DriftShown(
        name=f"Distance from {now.beside}, {len(now.lots)} lots of {what.recipe_name} "
        f"on {what.base_name}",
        more=f"From {first.difference:.1f} on {_day(first)} to {newest.difference:.1f} "
        f"on {_day(newest)}. Noise alone gives {now.noise:.1f}. The table below says "
        "the same.",
        points=tuple(_point(lot) for lot in now.lots),
        noise=now.noise,
        tolerance=now.tolerance,
    )


def _point(lot: DriftLot) -> DriftPoint:
    return DriftPoint(
        label=_day(lot),
        difference=lot.difference,
        off=lot.spread or 0.0,
        lighter=lot.lighter,
        flag=None if lot.mark is None else lot.mark.number,
    )


def _day(lot: DriftLot) -> str:
    return f"{lot.dyed_on.day} {lot.dyed_on:%b}"


def _row(lot: DriftLot) -> DriftRow:
    off = "" if lot.u is None else f" ±\u00a0{lot.u:.1f}"
    return DriftRow(
        number=lot.number,
        day=f"{_day(lot)} {lot.dyed_on.year}",
        difference=f"{lot.difference:.1f}{off}",
        words=lot.words,
        news="" if lot.mark is None else f"{lot.mark.number}: {lot.mark.words}",
    )


def _repeats(found: Repeatability | None) -> str:
    if found is None:
        return ""
    recipes = "one recipe" if found.recipes == 1 else f"{found.recipes} recipes"
    return (
        f"Two lots of one recipe lie {found.apart:.1f} ±\u00a0{2.0 * found.u:.1f} "
        f"apart on average here (CIELAB distance), by {found.lots} lots of {recipes} "
        "that a meter read. Each number of Lab scatters by "
        f"{found.sd:.2f} from lot to lot."
    )
