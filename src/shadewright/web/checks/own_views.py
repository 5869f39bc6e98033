"""The studio's own limits: tolerances, and how uneven a colourway is wanted."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.errors import StudioError
from shadewright.web.checks.forms import PieceForm, TolerancesForm, ToneForm
from shadewright.web.checks.pages import TolerancesPage
from shadewright.web.checks.standard_views import LOTS, STANDARDS, standard_page
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.judging.standards import of_what
from shadewright.workflows.judging.tolerances import keep_tolerances, tolerances_now
from shadewright.workflows.judging.tone_bands import keep_tone_band


@require_http_methods(["GET", "POST"])
def tolerances(request: HttpRequest) -> HttpResponse:
    """Show and change how far a lot may be off."""
    if request.method == "POST":
        form = TolerancesForm(request.POST)
        if form.is_valid() and _kept(request, form):
            return HttpResponseRedirect(reverse("tolerances"))
    else:
        now = tolerances_now()
        form = TolerancesForm(initial={"formula": now.formula, **vars(now.steps)})
    page = TolerancesPage(
        title="Tolerances",
        fact="How far a lot may be off before something is done.",
        crumbs=(LOTS, STANDARDS),
        form=form,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_POST
def tone(request: HttpRequest, recipe_id: int, base_id: int) -> HttpResponse:
    """Take how uneven a colourway is wanted."""
    what = of_what(recipe_id=recipe_id, base_id=base_id)
    form = ToneForm(request.POST)
    if form.is_valid():
        try:
            keep_tone_band(recipe_id, form.band)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"{what.recipe_name} is judged so from now on")
            return HttpResponseRedirect(reverse("standard", args=[recipe_id, base_id]))
    return show(request, standard_page(what, PieceForm(), form), status=422)


def _kept(request: HttpRequest, form: TolerancesForm) -> bool:
    try:
        keep_tolerances(form.said)
    except StudioError as error:
        form.refuse(error)
        return False
    say(request, "Checks from now on are judged so")
    return True
