"""Plan a bath: show what it takes while it is typed, then keep it."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.asking import number_asked
from shadewright.web.baths.advising import AdviceShown, advice_panel
from shadewright.web.baths.dosing import dosing_said_before
from shadewright.web.baths.forms import PlanForm
from shadewright.web.baths.pages import NoRecipePage, PlanPage
from shadewright.web.baths.planning import shown_plan
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Refusal
from shadewright.web.toasts import say
from shadewright.web.ways import way_round
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.baths import keep_bath, plan_bath
from shadewright.workflows.choices import bases_in_use
from shadewright.workflows.planned_baths import plan_anew, wish_of
from shadewright.workflows.recipes import has_recipes
from shadewright.workflows.shades.saving import found_for
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.waters import usual_water

DAYS = Link(words="Dye days", address="/days/")


@require_http_methods(["GET", "POST"])
def plan(request: HttpRequest) -> HttpResponse:
    """Show the plan of a bath; a form that is sent keeps it."""
    missing = _what_is_missing(back=request.get_full_path())
    if missing is not None:
        return show(request, missing)
    if request.method == "POST" and request.POST.get("act") == "keep":
        return _keep(request)
    if request.method == "POST":
        return _shown(request, PlanForm(request.POST))
    typed = _begun(request.GET.dict())
    if not typed.get("fibre_g"):
        return show(request, _page(PlanForm(initial=typed)))
    return _shown(request, PlanForm({**typed, "deed": str(stamp_now(by=None).deed)}))


def _keep(request: HttpRequest) -> HttpResponse:
    form = PlanForm(request.POST)
    if form.is_valid():
        try:
            number = _kept(request, form)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"Bath {number} is planned")
            return redirect("bath", number)
    return show(request, _page(form), status=422)


def _kept(request: HttpRequest, form: PlanForm) -> str:
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
    old = form.cleaned_data["instead_of"]
    if old:
        return plan_anew(number=old, wish=form.wish(), stamp=stamp)
    return keep_bath(wish=form.wish(), stamp=stamp)


def _shown(request: HttpRequest, form: PlanForm) -> HttpResponse:
    """Show the plan for what is typed so far; htmx takes faults as an answer too."""
    is_live = "HX-Request" in request.headers
    page = _page(form, is_live=is_live)
    return show(request, page, status=422 if form.errors and not is_live else 200)


def _page(form: PlanForm, *, is_live: bool = False) -> PlanPage:
    shown, note = None, None
    advice: tuple[AdviceShown, ...] = ()
    if form.is_valid():
        old = form.cleaned_data["instead_of"]
        try:
            planned = plan_bath(form.wish(), instead_of=old)
            shown = shown_plan(planned)
            advice = advice_panel(planned, form.data)
        except StudioError as error:
            form.refuse(error)
    if form.errors:
        sentences = [str(each) for errors in form.errors.values() for each in errors]
        note = Caution(title="Not like this", text=" ".join(sentences), kind="problem")
    anew = form["instead_of"].value()
    return PlanPage(
        title=f"Plan bath {anew} anew" if anew else "Plan a bath",
        fact=_fact(anew),
        crumbs=(DAYS,),
        form=form,
        plan=shown,
        advice=advice,
        refusal=None if note is None else Refusal(note=note, takes_focus=not is_live),
    )


def _fact(anew: str) -> str:
    if anew:
        return "The old plan is given up once this one is kept; its number stays used."
    return "From a recipe and weighed yarn to doses out of your bottles."


def _begun(typed: dict[str, str]) -> dict[str, Any]:
    """Add today, and everything of the bath that is planned again."""
    again = typed.pop("again", "")
    if not again:
        usual = {**_usual_base(typed), **_usual_water()}
        return {"dyed_on": f"{today():%Y-%m-%d}", **usual, **typed}
    now = bath_now(again)
    is_planned = now.status is BathStatus.PLANNED
    return {**_said_before(again), "instead_of": again if is_planned else "", **typed}


def _said_before(number: str) -> dict[str, Any]:
    wish = wish_of(number)
    day = max(wish.dyed_on, today())
    return {
        "version": str(wish.version_id),
        "base": str(wish.base_id),
        "mill_lot": str(wish.mill_lot_id or ""),
        "fibre_g": f"{wish.fibre_g:.10g}",
        "skeins": str(wish.skeins or ""),
        "pot": str(wish.pot_id or ""),
        "source": str(wish.source_id or ""),
        "water": str(wish.water_id or ""),
        "wet_yarn_g": f"{wish.wet_yarn_g:.10g}" if wish.wet_yarn_g else "",
        "liquor_ratio": f"{wish.liquor_ratio:.10g}" if wish.liquor_ratio else "",
        "is_swatch": "on" if wish.is_swatch else "",
        "purpose": wish.purpose.value if wish.purpose else "",
        "dyed_on": f"{day:%Y-%m-%d}",
        "notes": wish.notes,
        **dosing_said_before(wish.dosing),
    }


def _usual_base(typed: dict[str, str]) -> dict[str, str]:
    """Return the base that the recipe was found on, or the only one there is."""
    version_id = number_asked(typed, "version", kind="version of a recipe")
    found = None if version_id is None else found_for(version_id)
    bases = [each.id for each in bases_in_use()]
    if found is not None and found.wanted.base_id in bases:
        return {"base": str(found.wanted.base_id)}
    return {"base": str(bases[0])} if len(bases) == 1 else {}


def _usual_water() -> dict[str, str]:
    found = usual_water()
    return {} if found is None else {"water": str(found.id)}


def _what_is_missing(*, back: str) -> NoRecipePage | None:
    if not has_recipes():
        words, link = "a recipe", Link(words="Write a recipe", address=_new_recipe())
    elif not bases_in_use():
        words = "a base, the yarn itself"
        link = Link(words="Add a base", address=way_round("add-base", back=back))
    else:
        return None
    return NoRecipePage(title="Plan a bath", crumbs=(DAYS,), missing=words, way_on=link)


def _new_recipe() -> str:
    return reverse("new-recipe")
