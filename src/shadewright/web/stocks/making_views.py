"""Make a stock step by step; what is typed is kept at every turn."""

from collections.abc import Callable
from contextlib import suppress

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_safe

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.frame import person_at_bench
from shadewright.web.pages import show
from shadewright.web.pdfs import pdf
from shadewright.web.stocks.end_pages import (
    finished_page,
    give_up_page,
    given_up_page,
)
from shadewright.web.stocks.forms import (
    FillByWeightForm,
    FillForm,
    GiveUpForm,
    LabelForm,
    StepForm,
    WeighForm,
)
from shadewright.web.stocks.step_pages import step_page
from shadewright.web.stocks.words import stock_name
from shadewright.web.toasts import say
from shadewright.workflows import making as verbs
from shadewright.workflows.makings import Making
from shadewright.workflows.makings import making as stock_in_the_making
from shadewright.workflows.outcomes import refuse_hot
from shadewright.workflows.sheets import mixing_sheet
from shadewright.workflows.stamps import Stamp, stamp_now

FORMS: dict[str, type[StepForm]] = {
    "weigh": WeighForm,
    "make_up": FillForm,
    "label": LabelForm,
}


def making(request: HttpRequest, making_id: int) -> HttpResponse:
    """Show the step that waits; what is sent is kept, then it turns to another."""
    stock = stock_in_the_making(making_id)
    if stock.bottle_code:
        return show(request, finished_page(stock))
    if stock.is_abandoned:
        return show(request, given_up_page(stock))
    if request.method == "POST":
        return _sent(request, stock)
    return show(request, step_page(stock, stock.step.key, typed=request.GET.dict()))


@require_safe
def making_sheet(request: HttpRequest, making_id: int) -> HttpResponse:
    """Answer with the mixing sheet of a stock in the making."""
    del request
    begun = stock_in_the_making(making_id)
    sheet = mixing_sheet(begun.stock, made_with=begun.made_with)
    return pdf(sheet, name=f"mixing sheet {stock_name(begun.stock)}")


def give_up(request: HttpRequest, making_id: int) -> HttpResponse:
    """Ask once, then give a stock up."""
    stock = stock_in_the_making(making_id)
    if stock.bottle_code or stock.is_abandoned:
        return redirect("making", making_id)
    if request.method != "POST":
        return show(request, give_up_page(stock))
    form = GiveUpForm(request.POST)
    if not form.is_valid():
        return show(request, give_up_page(stock), status=422)
    is_kept = form.cleaned_data["powder"] == "back"
    verbs.abandon_making(
        making_id=making_id, is_powder_kept=is_kept, stamp=_stamp(request, None)
    )
    say(request, _given_up_words(stock, is_kept=is_kept))
    return redirect("today")


def _sent(request: HttpRequest, stock: Making) -> HttpResponse:
    key = request.POST.get("step", "")
    if key not in [step.key for step in stock.steps]:
        return redirect("making", stock.id)
    form = _form_of(stock, key)(request.POST)
    go = request.POST.get("go", "next")
    if go != "next":
        return _turned(request, stock, form, key, go)
    if form.is_valid():
        try:
            _ACTS.get(key, _go_on)(stock, form, _stamp(request, form))
        except StudioError as error:
            form.refuse(error)
        else:
            return redirect("making", stock.id)
    return show(request, step_page(stock, key, form=form), status=422)


def _turned(
    request: HttpRequest, stock: Making, form: StepForm, key: str, go: str
) -> HttpResponse:
    """Turn to another step; what was typed is kept where it can be."""
    if form.is_valid():
        with suppress(StudioError):
            _KEPT.get(key, _keep_nothing)(stock, form, _stamp(request, form))
    keys = [step.key for step in stock.steps]
    before = keys[max(keys.index(key) - 1, 0)]
    with suppress(StudioError):
        verbs.go_to_step(making_id=stock.id, key=before if go == "back" else go)
    return redirect("making", stock.id)


def _form_of(stock: Making, key: str) -> type[StepForm]:
    if key == "make_up" and stock.is_by_weight:
        return FillByWeightForm
    return FORMS.get(key, StepForm)


def _weigh(stock: Making, form: StepForm, stamp: Stamp) -> None:
    if "scale" in form.data:
        verbs.choose_scale(making_id=stock.id, tool_id=form.cleaned_data["scale"])
    powder_g = form.cleaned_data["powder_g"]
    verbs.weigh_powder(making_id=stock.id, powder_g=powder_g, stamp=stamp)


def _make_up(stock: Making, form: StepForm, _stamp: Stamp) -> None:
    if stock.is_by_weight:
        verbs.make_up_by_weight(
            making_id=stock.id,
            filled_g=form.cleaned_data["filled_g"],
            water=form.cleaned_data["water"],
        )
        return
    if not form.cleaned_data["is_cold"]:
        raise refuse_hot()
    if "ware" in form.data:
        verbs.choose_ware(making_id=stock.id, tool_id=form.cleaned_data["ware"])
    verbs.make_up(
        making_id=stock.id,
        final_ml=form.cleaned_data["final_ml"],
        water=form.cleaned_data["water"],
    )


def _finish(stock: Making, form: StepForm, stamp: Stamp) -> None:
    typed = form.cleaned_data
    verbs.finish_making(
        making_id=stock.id,
        stamp=stamp,
        place=typed["place"],
        discard_by=typed["discard_by"],
        notes=typed["notes"],
    )


def _go_on(stock: Making, form: StepForm, _stamp: Stamp) -> None:
    keys = [step.key for step in stock.steps]
    after = keys[keys.index(form.cleaned_data["step"]) + 1]
    verbs.go_to_step(making_id=stock.id, key=after)


def _keep_label(stock: Making, form: StepForm, _stamp: Stamp) -> None:
    typed = form.cleaned_data
    verbs.keep_particulars(
        making_id=stock.id,
        place=typed["place"],
        discard_by=typed["discard_by"],
        notes=typed["notes"],
    )


def _keep_nothing(_stock: Making, _form: StepForm, _stamp: Stamp) -> None:
    """There is nothing to type at this step."""


_Act = Callable[[Making, StepForm, Stamp], None]
_ACTS: dict[str, _Act] = {"weigh": _weigh, "make_up": _make_up, "label": _finish}
_KEPT: dict[str, _Act] = {"weigh": _weigh, "make_up": _make_up, "label": _keep_label}


def _stamp(request: HttpRequest, form: StepForm | None) -> Stamp:
    person = person_at_bench(request)
    return stamp_now(
        by=None if person is None else person.id,
        deed=None if form is None else form.cleaned_data["deed"],
    )


def _given_up_words(stock: Making, *, is_kept: bool) -> str:
    words = f"{stock_name(stock.stock)} was given up"
    if stock.powder_g is None or not stock.stock.jar_code:
        return words
    powder = amount_text(stock.powder_g, "g")
    where = f"back in jar {stock.stock.jar_code}" if is_kept else "thrown away"
    return f"{words}; {powder} of powder: {where}"
