"""The page where the colours of a whole set are entered."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.swatch_plans.new_views import SETS
from shadewright.web.swatch_plans.pages import ResultShown, ResultsPage
from shadewright.web.swatch_plans.results_form import ResultRow, ResultsForm
from shadewright.web.swatch_plans.showing import state_chip, swatches_counted
from shadewright.web.swatches.words import SHADES
from shadewright.web.toasts import say
from shadewright.workflows.bath_pages import BathStatus
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.plan_pages import SetNow, swatch_set
from shadewright.workflows.shades.plan_results import KeptResults, keep_results, unread
from shadewright.workflows.stamps import stamp_now

_OPEN = {BathStatus.PLANNED, BathStatus.GOING}


@require_http_methods(["GET", "POST"])
def results(request: HttpRequest, plan_id: int) -> HttpResponse:
    """Ask for the colours of a set; what was not ticked was dyed as on the sheet."""
    now = swatch_set(plan_id)
    waiting = unread(now)
    if not waiting:
        return redirect("swatch-plan", plan_id)
    form = ResultsForm(waiting, request.POST if request.method == "POST" else None)
    if form.is_bound and form.is_valid() and _kept(request, now, form):
        return redirect("swatch-plan", plan_id)
    return show(request, _page(now, form), status=422 if form.errors else 200)


def _kept(request: HttpRequest, now: SetNow, form: ResultsForm) -> bool:
    deed = form.cleaned_data["deed"]
    stamp = stamp_now(by=person_id(request), deed=deed)
    try:
        kept = keep_results(now.id, form.results(), stamp=stamp)
    except StudioError as error:
        form.refuse(error)
        return False
    refit_soon(why=f"{swatches_counted(len(kept.swatches))} of {now.name} read")
    say(request, _told(kept), undo=reverse("undo", args=[deed]))
    return True


def _told(kept: KeptResults) -> str:
    count = len(kept.swatches)
    colours = "1 colour kept" if count == 1 else f"{count} colours kept"
    if not kept.as_planned:
        return colours
    return f"{colours}; {swatches_counted(len(kept.as_planned))} dyed as planned"


def _page(now: SetNow, form: ResultsForm) -> ResultsPage:
    return ResultsPage(
        title="Enter the colours",
        fact=f"{now.name}: what came out, dry.",
        crumbs=(
            SHADES,
            SETS,
            Link(words=now.name, address=reverse("swatch-plan", args=[now.id])),
        ),
        form=form,
        rows=tuple(map(_row, form.rows)),
        has_open=any(row.swatch.status in _OPEN for row in form.rows),
        back=reverse("swatch-plan", args=[now.id]),
    )


def _row(row: ResultRow) -> ResultShown:
    each = row.swatch
    return ResultShown(
        place=each.place,
        number=each.bath_number,
        doses=mix_words((dose.dye_name, dose.depth_percent) for dose in each.doses),
        state=state_chip(each),
        card=reverse("type-card", args=[each.bath_number])
        if each.status in _OPEN
        else "",
        colour=row.colour,
    )
