"""Plan a set: show what it takes while it is typed, then keep it."""

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.web.swatch_plans.forms import BEGUN, FORMS, SetForm
from shadewright.web.swatch_plans.pages import (
    KindTab,
    NewSetPage,
    NothingToPlanPage,
)
from shadewright.web.swatch_plans.showing import shown_plan
from shadewright.web.swatches.words import SHADES
from shadewright.web.targets import NAME
from shadewright.web.toasts import say
from shadewright.workflows.choices import bases_in_use
from shadewright.workflows.dyes import dyes
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.plan_wishes import PlanKind, usual_base
from shadewright.workflows.shades.planning import plan_swatches
from shadewright.workflows.shades.wanted import CameFrom
from shadewright.workflows.stamps import stamp_now, today

SETS = Link(words="Sets of swatches", address="/shades/plans/")
_TITLES = {
    PlanKind.LADDER: "Depths of single dyes",
    PlanKind.MIXES: "Mixes of two or three dyes",
    PlanKind.NEXT: "What would help most",
    PlanKind.BRACKET: "Three trials around a recipe",
}
_TABS = {
    PlanKind.LADDER: "Depths",
    PlanKind.MIXES: "Mixes",
    PlanKind.NEXT: "What would help most",
}
_DYES_WANTED = {PlanKind.LADDER: 1, PlanKind.MIXES: 2}
_ABOUT = {
    PlanKind.LADDER: "Each rung is half as deep as the one before.",
    PlanKind.MIXES: "One depth, shared out in parts: from all of one dye to all of "
    "another. Three dyes in four parts are 15 swatches.",
    PlanKind.NEXT: "The swatches that take most off what the palette does not know.",
    PlanKind.BRACKET: "Swatch 2 is the recipe itself; 1 and 3 lie to either side of it "
    "along the line on which the palette is least sure.",
}


@require_http_methods(["GET", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """Show the plan of a set; a form that is sent keeps it."""
    missing = _what_is_missing()
    if missing is not None:
        return show(request, missing)
    if request.method == "POST":
        return _keep(request)
    typed = _begun(request.GET)
    kind = _kind(typed)
    form = FORMS[kind]
    if not _is_ready(typed):
        return show(request, _page(form(initial=typed.dict()), kind))
    return show(request, _page(form(typed), kind))


def _keep(request: HttpRequest) -> HttpResponse:
    kind = _kind(request.POST)
    form = FORMS[kind](request.POST)
    if form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        try:
            plan_id = keep_plan(form.wish(), stamp)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, "The set is planned: one bath for each swatch")
            return redirect("swatch-plan", plan_id)
    return show(request, _page(form, kind), status=422)


def _page(form: SetForm, kind: PlanKind) -> NewSetPage:
    shown, note = None, None
    if form.is_valid():
        try:
            shown = shown_plan(plan_swatches(form.wish()))
        except StudioError as error:
            form.refuse(error)
    if form.errors:
        sentences = [str(each) for errors in form.errors.values() for each in errors]
        note = Caution(title="Not like this", text=" ".join(sentences), kind="problem")
    base = str(form["base"].value() or "")
    return NewSetPage(
        title=_TITLES[kind],
        fact="Little skeins whose colours teach the palette.",
        crumbs=(SHADES, SETS),
        form=form,
        tabs=_tabs(kind, base),
        about=_ABOUT[kind],
        recipe=form.recipe,
        plan=shown,
        refusal=note,
    )


def _begun(asked: QueryDict) -> QueryDict:
    """Return what is asked, with the rest filled in as it usually is."""
    typed = asked.copy()
    kind = _kind(typed)
    typed["kind"] = kind.value
    base = usual_base()
    usual = {
        "base": "" if base is None else str(base),
        "yarn_g": "10",
        "dyed_on": f"{today():%Y-%m-%d}",
        "deed": str(stamp_now(by=None).deed),
        "target": _looked_for(asked),
        **BEGUN[kind],
    }
    for name, value in usual.items():
        if name not in typed:
            typed[name] = value
    return typed


def _looked_for(asked: QueryDict) -> str:
    """Return the colour of an address that is not kept, to be kept with the set."""
    if asked.get(CameFrom.WANTED):
        return ""
    said = {kind.value: asked[kind] for kind in CameFrom if asked.get(kind)}
    name = {NAME: asked[NAME]} if asked.get(NAME) else {}
    return urlencode(said | name) if said else ""


def _kind(typed: QueryDict) -> PlanKind:
    said = typed.get("kind", "")
    return PlanKind(said) if said in PlanKind.values else PlanKind.LADDER


def _is_ready(typed: QueryDict) -> bool:
    """Whether enough is said to show a plan; else the form waits, without a fault."""
    dyes_wanted = _DYES_WANTED.get(_kind(typed), 0)
    return bool(typed.get("base")) and len(typed.getlist("dyes")) >= dyes_wanted


def _tabs(kind: PlanKind, base: str) -> tuple[KindTab, ...]:
    return tuple(
        KindTab(
            words=words,
            address=f"?{urlencode({'kind': each.value, 'base': base})}",
            is_here=each is kind,
        )
        for each, words in _TABS.items()
    )


def _what_is_missing() -> NothingToPlanPage | None:
    if not bases_in_use():
        words = "a base, the yarn itself"
        link = Link(words="Add a base", address=reverse("add-base"))
    elif not dyes():
        words, link = "a dye", Link(words="Add a dye", address=reverse("add-dye"))
    else:
        return None
    return NothingToPlanPage(
        title="Plan swatches", crumbs=(SHADES, SETS), missing=words, way_on=link
    )
