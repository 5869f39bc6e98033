"""The stock that a day wants: what is short, what to make, which bottles are there."""

from datetime import date

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.quantities import amount_text, counted
from shadewright.web.day_baths.pages import BottleShown, NeedShown, StockPage
from shadewright.web.day_baths.showing import enough_chip, short_text
from shadewright.web.dye_days.crumbs import crumbs_of
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.levers.addresses import making_address
from shadewright.web.named_days import named_day
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Chip
from shadewright.web.shelf.tasks import bottle_address
from shadewright.web.toasts import say
from shadewright.workflows.days.stock_needs import (
    BottleOfDay,
    DyeNeed,
    StockNeeds,
    stock_needs,
    take_new_bottles,
)
from shadewright.workflows.stamps import stamp_now


@require_http_methods(["GET", "POST"])
def stock(request: HttpRequest, day: date) -> HttpResponse:
    """Show what a day wants of the shelf; a tap takes new bottles for dry doses."""
    if request.method == "POST":
        return _redraw(request, day)
    needs = stock_needs(day)
    first = next((each.dye_id for each in needs.dyes if each.is_short), None)
    page = StockPage(
        title="Stock for the day",
        fact=_fact(needs),
        crumbs=crumbs_of(day),
        action=reverse("day-stock", args=[day]),
        deed=stamp_now(by=None).deed,
        head=_head(needs),
        is_enough=needs.is_enough,
        needs=tuple(_need(each, is_first=each.dye_id == first) for each in needs.dyes),
        redraw=_redraw_words(needs),
        cautions=(Caution(title="Metal", text=needs.metal),) if needs.metal else (),
        day_address=reverse("day", args=[day]),
        add=reverse("day-add", args=[day]),
    )
    return show(request, page)


def _redraw(request: HttpRequest, day: date) -> HttpResponse:
    form = DeedForm(request.POST)
    if form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        count = take_new_bottles(day, stamp)
        say(request, f"{counted(count, 'dose')} now from the bottles that stand there")
    return redirect("day-stock", day)


def _fact(needs: StockNeeds) -> str:
    named = named_day(needs.day)
    return (
        f"{named}: {counted(needs.baths, 'bath')} that still {_want(needs.baths)} dye."
    )


def _want(baths: int) -> str:
    return "wants" if baths == 1 else "want"


def _head(needs: StockNeeds) -> str:
    short = [each for each in needs.dyes if each.is_short]
    if short:
        dyes = " and ".join(each.dye_name for each in short)
        return f"The bottles do not hold enough {dyes} for every bath of the day."
    if any(each.make for each in needs.dyes):
        return "Every bath has its dye, but little is left if something is spilled."
    return "Every bath of the day has its dye, with some to spare."


def _need(each: DyeNeed, *, is_first: bool) -> NeedShown:
    kept_out = "; ".join(f"{x.code} is {x.why}" for x in each.kept_out)
    return NeedShown(
        dye=each.dye_name,
        wanted=f"{amount_text(each.wanted_g, 'g')} of dye",
        enough=_enough(each),
        sentence=_sentence(each),
        bottles=tuple(map(_bottle, each.bottles)),
        kept_out=f"{kept_out}." if kept_out else "",
        make=_make(each),
        is_first=is_first,
    )


def _enough(each: DyeNeed) -> Chip:
    if each.make is not None and not each.is_short:
        return Chip(words="little to spare", kind="caution")
    return enough_chip(each.enough_for, each.baths)


def _sentence(each: DyeNeed) -> str:
    if not each.is_short:
        left, spare = short_text(each.left_g), short_text(each.spare_g)
        return f"Enough for all, with {left} left over; {spare} would be usual here."
    short, baths = short_text(each.short_g), counted(each.baths, "bath")
    said = f"Enough for {each.enough_for or 'none'} of {baths}"
    fresh = " Mix it fresh on the day." if each.is_mix_fresh else ""
    return f"{said}: {each.first_short} is the first to lack, {short} in all.{fresh}"


def _make(each: DyeNeed) -> Link | None:
    if each.make is None:
        return None
    volume, strength = each.make.volume_ml, each.make.strength_percent
    words = f"Make {amount_text(volume, 'ml')} of {amount_text(strength, '%')}"
    address = making_address(each.dye_id, strength_percent=strength, volume_ml=volume)
    return Link(words=words, address=address)


def _bottle(each: BottleOfDay) -> BottleShown:
    taken, there = amount_text(each.taken_ml, "ml"), amount_text(each.there_ml, "ml")
    strength = amount_text(each.strength_percent, "%")
    return BottleShown(
        code=each.code,
        address=bottle_address(each.code),
        words=f"{taken} of {there}, {strength}",
    )


def _redraw_words(needs: StockNeeds) -> str:
    if not needs.redraws:
        return ""
    codes = " and ".join(dict.fromkeys(each.code for each in needs.redraws))
    return (
        f"{counted(len(needs.redraws), 'dose')} planned without a bottle can now be "
        f"drawn from {codes}."
    )
