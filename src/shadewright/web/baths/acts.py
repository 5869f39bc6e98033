"""Change the bottle of a planned dose; give a bath up."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.errors import ConflictError, NotFoundError, StudioError
from shadewright.web.baths.forms import BottleForm, GiveUpForm
from shadewright.web.baths.pages import BottlePage, GiveUpPage
from shadewright.web.baths.plan_views import DAYS
from shadewright.web.baths.planning import stock_address
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.templatetags.house import age
from shadewright.web.toasts import say
from shadewright.workflows.bath_pages import BathNow, BathStatus, StepNow, bath_now
from shadewright.workflows.planned_baths import (
    bottles_for,
    change_bottle,
    give_up,
    step_of,
)
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.stamps import stamp_now

_OVER = {BathStatus.FINISHED, BathStatus.GIVEN_UP}


@require_http_methods(["GET", "POST"])
def change(request: HttpRequest, number: str, step: str) -> HttpResponse:
    """Ask which bottle a dose is taken from instead, and write it down."""
    bath = bath_now(number)
    each = step_of(bath, step)
    if each.step.kind is not StepKind.DOSE:
        raise NotFoundError(kind="dose of this bath", key=step)
    offered = [_choice(bottle) for bottle in bottles_for(number, step)]
    form = BottleForm(
        request.POST or None, bottles=offered, initial={"bottle": each.step.code}
    )
    if form.is_valid():
        code = form.cleaned_data["bottle"]
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        try:
            change_bottle(number=number, step=step, code=code, stamp=stamp)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"{each.step.title} comes from {code}")
            return redirect("bath", number)
    page = _bottle_page(bath, each, form, has_bottles=bool(offered))
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def give_up_bath(request: HttpRequest, number: str) -> HttpResponse:
    """Ask once, then end a bath without a lot."""
    bath = bath_now(number)
    form = GiveUpForm(request.POST or None)
    if form.is_valid():
        deed = form.cleaned_data["deed"]
        stamp = stamp_now(by=person_id(request), deed=deed)
        give_up(number=number, why=form.cleaned_data["why"], stamp=stamp)
        undo = reverse("undo", args=[deed])
        say(request, f"Bath {number} is given up", undo=undo)
        return redirect("bath", number)
    if bath.status in _OVER or bath.has_lot:
        raise ConflictError(why=f"Bath {number} is over already.")
    page = GiveUpPage(
        title=f"Give up bath {number}",
        fact="It ends without a lot, and its number is never used again.",
        crumbs=_crumbs(number),
        form=form,
        poured=_poured(bath),
        back=reverse("bath", args=[number]),
    )
    return show(request, page, status=422 if form.errors else 200)


def _bottle_page(
    bath: BathNow, each: StepNow, form: BottleForm, *, has_bottles: bool
) -> BottlePage:
    planned = f" Planned from {each.step.code}." if each.step.code else ""
    dose = each.dose
    depth = "" if dose is None else f"{amount_text(dose.dye_g, 'g')} of dye."
    stock = "" if dose is None else stock_address(dose.dye_id, dose.dye_g)
    return BottlePage(
        title=f"{each.step.title}: another bottle",
        fact=f"{depth}{planned}",
        crumbs=_crumbs(bath.number),
        form=form,
        has_bottles=has_bottles,
        stock_address=stock,
        back=reverse("bath", args=[bath.number]),
    )


def _choice(bottle: ShelfBottle) -> tuple[str, str]:
    words = (
        f"{bottle.code}: {amount_text(bottle.strength_percent, '%')}",
        f"{amount_text(bottle.usable_ml, 'ml')} left",
        age(bottle.age.days),
    )
    return bottle.code, ", ".join(words)


def _poured(bath: BathNow) -> str:
    poured = [line for line in bath.standing if line.is_drawn]
    if not poured:
        return ""
    codes = ", ".join(sorted({line.bottle for line in poured}))
    return f"What was poured stays poured: the ledgers of {codes} keep it."


def _crumbs(number: str) -> tuple[Link, ...]:
    return (DAYS, Link(words=number, address=reverse("bath", args=[number])))
