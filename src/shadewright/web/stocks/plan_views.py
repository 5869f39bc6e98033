"""Plan a stock, begin it, or write down one that was made already."""

import json
from collections.abc import Mapping
from contextlib import suppress
from typing import Any
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import about_text
from shadewright.errors import StudioError
from shadewright.web.frame import person_at_bench
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, measured
from shadewright.web.pdfs import pdf
from shadewright.web.shelf.tasks import bottle_address
from shadewright.web.stocks.forms import MadeForm, PlanForm, jar_choices, usual_jar
from shadewright.web.stocks.pages import NoDyePage, PlanPage, Quick, Refusal, ShownPlan
from shadewright.web.stocks.words import (
    cautions,
    data_sheet,
    shown_spread,
    stock_name,
)
from shadewright.web.toasts import say
from shadewright.workflows.dyes import dyes
from shadewright.workflows.filling import Particulars
from shadewright.workflows.making import start_making
from shadewright.workflows.possible import possible_stock
from shadewright.workflows.sheets import mixing_sheet
from shadewright.workflows.stamps import Stamp, stamp_now, today
from shadewright.workflows.stock_tools import (
    fill_to_g,
    planned_spread,
    usual_for_stocks,
    weighing_advice,
)
from shadewright.workflows.stocks import PlannedStock, make_stock, plan_stock

USUAL = {"strength_percent": "1", "volume_ml": "500"}
USUAL_STRENGTHS = (2.0, 1.0, 0.5, 0.1)
USUAL_VOLUMES = (100.0, 250.0, 500.0, 1000.0)
ASKED = ("dye", "jar", "strength_percent", "volume_ml", "scale", "ware")


def plan(request: HttpRequest) -> HttpResponse:
    """Show the plan of a stock; a form that is sent begins it or shelves it."""
    if not dyes():
        return show(request, NoDyePage(title="Make a stock"))
    acts = {"begin": _begin, "made": _made}
    if request.method == "POST" and request.POST.get("act") in acts:
        return acts[request.POST["act"]](request)
    sent = request.POST if request.method == "POST" else request.GET
    return _shown(request, _completed(sent.dict()))


@require_safe
def plan_sheet(request: HttpRequest) -> HttpResponse:
    """Answer with the mixing sheet of a stock that is planned."""
    form = PlanForm({**_completed(request.GET.dict()), "deed": _any_deed()})
    if not form.is_valid():
        return redirect(f"{reverse('plan-stock')}?{request.GET.urlencode()}")
    planned = plan_stock(**_wanted(form))
    sheet = mixing_sheet(planned, made_with=form.made_with)
    return pdf(sheet, name=f"mixing sheet {stock_name(planned)}")


def _begin(request: HttpRequest) -> HttpResponse:
    form = PlanForm(request.POST)
    if form.is_valid():
        with suppress(StudioError):  # the plan that is shown again says why
            begun = start_making(
                **_wanted(form),
                stamp=_stamp(request, form),
                scale_id=form.cleaned_data["scale"],
                ware_id=form.cleaned_data["ware"],
            )
            return redirect("making", begun.id)
    made = MadeForm(initial=request.POST.dict())
    return show(request, _page(PlanForm(request.POST), made), status=422)


def _made(request: HttpRequest) -> HttpResponse:
    form = MadeForm(request.POST)
    if form.is_valid():
        try:
            code = _shelved(form, _stamp(request, form))
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"Bottle {code} stands on the shelf")
            return redirect(bottle_address(code))
    return show(request, _page(form, form, is_made_open=True), status=422)


def _shelved(form: MadeForm, stamp: Stamp) -> str:
    typed = form.cleaned_data
    bottle = make_stock(
        dye_id=typed["dye"],
        jar_id=form.jar_id,
        wanted_percent=typed["strength_percent"],
        powder_g=typed["powder_g"],
        final_ml=typed["final_ml"],
        stamp=stamp,
        about=Particulars(made_on=typed["made_on"]),
        made_with=form.made_with,
    )
    return bottle.code


def _shown(request: HttpRequest, typed: dict[str, str]) -> HttpResponse:
    """Show the plan for what is typed so far; a fault is an answer, not an error."""
    made = MadeForm(initial={"made_on": today(), **typed})
    if not typed.get("dye"):
        return show(request, _page(PlanForm(initial=typed), made))
    form = PlanForm({**typed, "deed": typed.get("deed") or _any_deed()})
    is_live = "HX-Request" in request.headers
    return show(request, _page(form, made, is_live=is_live))


def _completed(typed: dict[str, str]) -> dict[str, str]:
    """Add the usual values, and a jar of the dye where the one named is not its own."""
    full = {**USUAL, **_usual_tools(), **typed}
    jars = {key for key, _ in jar_choices(full.get("dye", ""))}
    if full.get("jar") not in jars:
        full["jar"] = usual_jar(full.get("dye", ""))
    return full


def _usual_tools() -> dict[str, str]:
    usual = usual_for_stocks()
    tools = {"scale": usual.scale, "ware": usual.ware}
    return {name: str(tool.id) for name, tool in tools.items() if tool is not None}


def _page(
    form: PlanForm,
    made: MadeForm,
    *,
    is_made_open: bool = False,
    is_live: bool = False,
) -> PlanPage:
    blank = (None, None)
    shown, refusal = blank if is_made_open else _plan_of(form, is_live=is_live)
    return PlanPage(
        title="Make a stock",
        fact="From a powder jar to a labelled bottle of known strength.",
        crumbs=(Link(words="Shelf", address="/shelf/"),),
        form=form,
        made=made,
        is_made_open=is_made_open,
        strengths=_quick(form, "strength_percent", USUAL_STRENGTHS, "%"),
        volumes=_quick(form, "volume_ml", USUAL_VOLUMES, "ml"),
        plan=shown,
        refusal=refusal,
    )


def _quick(
    form: PlanForm, name: str, values: tuple[float, ...], unit: str
) -> tuple[Quick, ...]:
    typed = str(form[name].value() or "")
    return tuple(
        Quick(
            words=amount_text(value, unit),
            values=json.dumps({name: number_text(value, digits=4)}),
            is_chosen=typed == number_text(value, digits=4),
        )
        for value in values
    )


def _plan_of(
    form: PlanForm, *, is_live: bool
) -> tuple[ShownPlan | None, Refusal | None]:
    if not form.is_bound:
        return None, None
    if not form.is_valid():
        sentences = [str(error) for errors in form.errors.values() for error in errors]
        return None, _refusal(" ".join(sentences), None, is_live=is_live)
    wanted = _wanted(form)
    try:
        return _shown_plan(plan_stock(**wanted), form), None
    except StudioError as error:
        form.refuse(error)
        return None, _refusal(error.sentence, _instead(wanted), is_live=is_live)


def _refusal(sentence: str, instead: Link | None, *, is_live: bool) -> Refusal:
    note = Caution(title="Not like this", text=sentence, kind="problem")
    return Refusal(note=note, instead=instead, takes_focus=not is_live)


def _instead(wanted: Mapping[str, Any]) -> Link | None:
    possible = possible_stock(**wanted)
    if possible is None:
        return None
    words = (
        f"Make {amount_text(possible.volume_ml, 'ml')} "
        f"at {amount_text(possible.strength_percent, '%')} instead"
    )
    asked = {
        "dye": wanted["dye_id"],
        "jar": wanted["jar_id"] or "",
        "strength_percent": number_text(possible.strength_percent, digits=4),
        "volume_ml": number_text(possible.volume_ml, digits=4),
    }
    return Link(words=words, address=f"{reverse('plan-stock')}?{urlencode(asked)}")


def _shown_plan(planned: PlannedStock, form: PlanForm) -> ShownPlan:
    plan = planned.plan
    spread = planned_spread(planned, form.made_with)
    asked = {name: form[name].value() or "" for name in ASKED}
    return ShownPlan(
        powder=measured(plan.powder_g, "g"),
        paste=about_text(plan.paste_water_ml, "ml"),
        hot=about_text(plan.hot_water_ml, "ml"),
        final=amount_text(plan.final_volume_ml, "ml"),
        factor=_factor(plan.powder_strength_percent),
        jar=planned.jar_code,
        hazard_words=planned.hazard_words,
        data_sheet=data_sheet(planned),
        warnings=cautions(plan.warnings),
        sheet=f"{reverse('plan-sheet')}?{urlencode(asked)}",
        strength=shown_spread(spread),
        by_weight=_by_weight(planned, form),
        advice=weighing_advice(planned, form.made_with),
    )


def _by_weight(planned: PlannedStock, form: PlanForm) -> str:
    is_by_weight = form.made_with.is_by_weight
    return amount_text(fill_to_g(planned.plan), "g") if is_by_weight else ""


def _factor(powder_strength_percent: float) -> str:
    if powder_strength_percent == 100:
        return ""
    return amount_text(powder_strength_percent, "%")


def _wanted(form: PlanForm) -> Mapping[str, Any]:
    return {
        "dye_id": form.cleaned_data["dye"],
        "jar_id": form.jar_id,
        "strength_percent": form.cleaned_data["strength_percent"],
        "volume_ml": form.cleaned_data["volume_ml"],
    }


def _stamp(request: HttpRequest, form: PlanForm) -> Stamp:
    person = person_at_bench(request)
    by = None if person is None else person.id
    return stamp_now(by=by, deed=form.cleaned_data["deed"])


def _any_deed() -> str:
    return str(stamp_now(by=None).deed)
