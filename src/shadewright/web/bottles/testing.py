"""The strength test of a bottle: what is measured out, and what it looked like."""

from collections.abc import Iterator

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.baths.ladder import Ladder
from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.bottles.ladder_forms import FreshForm, ReadingForm
from shadewright.web.bottles.pages import (
    NoFreshPage,
    SkeinShown,
    StrengthTestPage,
)
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.strength_tests import (
    StrengthTest,
    draw_for_test,
    fresh_bottles,
    is_drawn,
    record_ladder,
    strength_test,
)


@require_http_methods(["GET", "POST"])
def strength_page(request: HttpRequest, code: str) -> HttpResponse:
    """Show what a strength test takes; write down its draws, or what it found."""
    old = shelf_bottle(code.upper())
    bottles = fresh_bottles(old.code)
    if not bottles:
        return show(request, _no_fresh(old))
    test = strength_test(code=old.code, fresh_code=_asked(request, bottles))
    if request.method == "POST" and request.POST.get("go") == "drawn":
        return _drawn(request, test)
    form = ReadingForm(request.POST or None)
    if form.is_valid() and _recorded(request, test, form):
        return HttpResponseRedirect(reverse("bottle", args=[old.code]))
    page = _page(test, bottles, form)
    return show(request, page, status=422 if form.errors else 200)


def _asked(request: HttpRequest, bottles: tuple[ShelfBottle, ...]) -> str:
    asked = request.GET.get("fresh", "").upper()
    return asked if asked in {each.code for each in bottles} else bottles[0].code


def _drawn(request: HttpRequest, test: StrengthTest) -> HttpResponse:
    form = DeedForm(request.POST)
    form.full_clean()
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data.get("deed"))
    draw_for_test(code=test.old.code, fresh_code=test.fresh.code, stamp=stamp)
    said = f"Drawn from {test.fresh.code} and {test.old.code}"
    say(request, said, undo=reverse("undo", args=[stamp.deed]))
    return HttpResponseRedirect(_address(test))


def _recorded(request: HttpRequest, test: StrengthTest, form: ReadingForm) -> bool:
    low, high = form.cleaned_data["reading"]
    deed = form.cleaned_data["deed"]
    try:
        found = record_ladder(
            code=test.old.code,
            fresh_code=test.fresh.code,
            low_percent=low,
            high_percent=high,
            stamp=stamp_now(by=person_id(request), deed=deed),
            note=form.cleaned_data["note"],
        )
    except StudioError as error:
        form.refuse(error)
        return False
    strength = amount_text(found.strength_percent, "%")
    say(
        request,
        f"{found.code} is {strength} as tested",
        undo=reverse("undo", args=[deed]),
    )
    return True


def _page(
    test: StrengthTest, bottles: tuple[ShelfBottle, ...], form: ReadingForm
) -> StrengthTestPage:
    old, plan = test.old, test.plan
    return StrengthTestPage(
        title=f"Strength of {old.code}",
        fact=f"{old.dye_name}: dye 5 g of it beside a ladder of fresh stock.",
        crumbs=_crumbs(old),
        beside=_beside(test, bottles),
        thin=_thinning(plan, test) if plan.fold > 1 else "",
        skeins=tuple(_skeins(test)),
        warnings=plan.warnings,
        draws=f"{_ml(plan.fresh_ml)} of {test.fresh.code} and "
        f"{_ml(plan.old_ml)} of {old.code}",
        drawn=DeedForm(),
        is_drawn=is_drawn(test),
        form=form,
        here=_address(test),
        known=reverse("bottle-act", args=[old.code, "test"]),
        back=reverse("bottle", args=[old.code]),
    )


def _beside(test: StrengthTest, bottles: tuple[ShelfBottle, ...]) -> FreshForm | None:
    """Ask which fresh bottle, where there is more than one."""
    if len(bottles) == 1:
        return None
    return FreshForm(code=test.fresh.code, bottles=bottles)


def _no_fresh(old: ShelfBottle) -> NoFreshPage:
    return NoFreshPage(
        title=f"Strength of {old.code}",
        crumbs=_crumbs(old),
        dye_name=old.dye_name,
        make=f"{reverse('plan-stock')}?dye={old.dye_id}",
        known=reverse("bottle-act", args=[old.code, "test"]),
    )


def _skeins(test: StrengthTest) -> Iterator[SkeinShown]:
    thin = " thinned" if test.plan.fold > 1 else ""
    for number, rung in enumerate(test.plan.rungs, start=1):
        yield SkeinShown(
            number=number,
            share=amount_text(rung.share_percent, "%"),
            stock=f"{test.fresh.code}{thin}",
            amount=_ml(rung.volume_ml),
        )
    yield SkeinShown(
        number=len(test.plan.rungs) + 1,
        share="the old stock",
        stock=f"{test.old.code}{thin}",
        amount=_ml(test.plan.tested_ml),
    )


def _thinning(plan: Ladder, test: StrengthTest) -> str:
    fresh, old = (_ml(ml) for ml in (plan.fresh_ml, plan.old_ml))
    to_fresh, to_old = (_ml(plan.fold * ml) for ml in (plan.fresh_ml, plan.old_ml))
    return (
        f"Make {fresh} of {test.fresh.code} up to {to_fresh} with water, and {old} of "
        f"{test.old.code} up to {to_old}."
    )


def _address(test: StrengthTest) -> str:
    address = reverse("strength-test", args=[test.old.code])
    return f"{address}?fresh={test.fresh.code}"


def _crumbs(old: ShelfBottle) -> tuple[Link, ...]:
    return (
        Link(words="Shelf", address=reverse("shelf")),
        Link(words=f"Bottle {old.code}", address=reverse("bottle", args=[old.code])),
    )


def _ml(volume_ml: float) -> str:
    return amount_text(volume_ml, "ml")
