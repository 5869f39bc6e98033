"""A kept set, and the list of them."""

from collections.abc import Iterator
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.core.colour import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.quantities import NO_BREAK, amount_text
from shadewright.core.quantities.writing import beside_text
from shadewright.web.colours import ColourShown, colour_of_reading
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.pdfs import pdf
from shadewright.web.swatch_plans.new_views import SETS
from shadewright.web.swatch_plans.pages import (
    DrawShown,
    Said,
    SetPage,
    SetRow,
    SetsPage,
    SetSwatchShown,
)
from shadewright.web.swatch_plans.showing import (
    said_of_practice,
    shown_cautions,
    shown_draw,
    shown_first,
    state_chip,
    swatches_counted,
    told_colour,
)
from shadewright.web.swatches.words import SHADES
from shadewright.web.templatetags.house import day as day_words
from shadewright.web.toasts import say
from shadewright.workflows.bath_pages import BathStatus
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.plan_bottles import (
    SetStocks,
    give_up_set,
    set_stocks,
    take_new_bottles,
)
from shadewright.workflows.shades.plan_pages import (
    SetDose,
    SetEntry,
    SetNow,
    SetSwatch,
    swatch_set,
    swatch_sets,
)
from shadewright.workflows.shades.plan_results import unread
from shadewright.workflows.shades.plan_sheets import cautions_now, jar_words, plan_sheet
from shadewright.workflows.stamps import stamp_now

_OPEN = {BathStatus.PLANNED, BathStatus.GOING, BathStatus.COOLING}


@require_safe
def plans(request: HttpRequest) -> HttpResponse:
    """Show every set, the newest first."""
    page = SetsPage(
        title="Sets of swatches",
        fact="Little skeins that were planned together.",
        crumbs=(SHADES,),
        rows=tuple(map(_row, swatch_sets())),
    )
    return show(request, page)


@require_safe
def plan(request: HttpRequest, plan_id: int) -> HttpResponse:
    """Show a set as it stands."""
    now, stocks = swatch_set(plan_id), set_stocks(plan_id)
    page = SetPage(
        title=now.name,
        fact=f"{now.kind.label}, on {now.base_name}.",
        crumbs=(SHADES, SETS),
        facts=tuple(_facts(now)),
        cautions=shown_cautions(cautions_now(now, stocks)) if now.numbers else (),
        first=shown_first(stocks.first, back=reverse("swatch-plan", args=[plan_id])),
        better=_better(stocks),
        keep=reverse("swatch-plan-bottles", args=[plan_id]),
        give_up=reverse("swatch-plan-give-up", args=[plan_id]),
        waiting=sum(x.status is BathStatus.PLANNED for x in now.swatches),
        deed=stamp_now(by=None).deed,
        swatches=tuple(_swatch(each, now, stocks) for each in now.swatches),
        sheet=reverse("swatch-plan-sheet", args=[plan_id]) if now.numbers else "",
        tags=_tags(now),
        results=reverse("swatch-plan-colours", args=[plan_id]) if unread(now) else "",
        palette=reverse("palette", args=[now.base_id]) if _read(now) else "",
        again=_again(now),
    )
    return show(request, page)


@require_POST
def bottles(request: HttpRequest, plan_id: int) -> HttpResponse:
    """Draw the doses that wait from the stocks that were made since."""
    form = DeedForm(request.POST)
    if form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        count = take_new_bottles(plan_id, stamp)
        doses = "1 dose" if count == 1 else f"{count} doses"
        say(request, f"{doses} now from bottles that can be measured")
    return redirect("swatch-plan", plan_id)


@require_POST
def give_up(request: HttpRequest, plan_id: int) -> HttpResponse:
    """Give up what has not begun of a set."""
    form = DeedForm(request.POST)
    if form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        count = give_up_set(plan_id, stamp)
        say(request, f"{swatches_counted(count)} given up; their numbers stay used")
    return redirect("swatch-plan", plan_id)


@require_safe
def sheet(request: HttpRequest, plan_id: int) -> HttpResponse:
    """Answer with a set on paper."""
    made = plan_sheet(plan_id, paper=request.GET.get("paper", "a4"))
    return pdf(made, name=f"swatches {plan_id}")


def _row(entry: SetEntry) -> SetRow:
    return SetRow(
        name=entry.name,
        address=reverse("swatch-plan", args=[entry.id]),
        kind=str(entry.kind.label),
        base=entry.base_name,
        day="" if entry.dyed_on is None else day_words(entry.dyed_on),
        swatches=entry.swatches,
        done=f"{entry.dyed} dyed, {entry.read} read",
    )


def _facts(now: SetNow) -> Iterator[Said]:
    count = swatches_counted(len(now.swatches))
    yield Said(term="Day", words=day_words(now.dyed_on))
    yield Said(term="Yarn", words=f"{count} of {amount_text(now.yarn_g, 'g')}")
    yield Said(term="Jars", words=jar_words(now.jars))
    yield from said_of_practice(now.text)
    if now.wanted:
        yield Said(term="For", words=now.wanted)
    dyed = sum(each.is_dyed for each in now.swatches)
    read = _read(now)
    yield from _nearest(now)
    yield Said(term="So far", words=f"{dyed} dyed, {read} read")


def _nearest(now: SetNow) -> Iterator[Said]:
    wanted = now.wanted_lab
    read = [(x.place, x.reading.lab) for x in now.swatches if x.reading is not None]
    if wanted is not None and read:
        place, lab = min(read, key=lambda each: ciede2000(wanted, each[1]))
        away = _away(wanted, lab)
        yield Said(term="Nearest", words=f"swatch {place}: {away} from {now.wanted}")


def _read(now: SetNow) -> int:
    return sum(each.reading is not None for each in now.swatches)


def _better(stocks: SetStocks) -> str:
    """Return how many doses could be drawn from bottles that suit better."""
    count = len(stocks.changes)
    if not count:
        return ""
    doses = "1 dose" if count == 1 else f"{count} doses"
    codes = ", ".join(sorted({each.code for each in stocks.changes}))
    return f"{doses} can now be drawn from {codes}, and measured well."


def _again(now: SetNow) -> str:
    """Return where the colour is looked for again, with what the set taught."""
    if now.wanted_id is None or not _read(now):
        return ""
    asked = {"wanted": now.wanted_id, "base": now.base_id}
    return f"{reverse('find')}?{urlencode(asked)}"


def _tags(now: SetNow) -> str:
    asked = urlencode([("number", number) for number in now.numbers])
    return f"{reverse('swatch-tags')}?{asked}" if asked else ""


def _swatch(each: SetSwatch, now: SetNow, stocks: SetStocks) -> SetSwatchShown:
    doses = mix_words((dose.dye_name, dose.depth_percent) for dose in each.doses)
    is_open = each.status is BathStatus.PLANNED
    return SetSwatchShown(
        place=each.place,
        number=each.bath_number,
        doses=doses,
        draws=tuple(_draws(each, now, stocks)) if is_open else (),
        colour=_colour(each, doses),
        told=_told_words(each, now),
        state=state_chip(each),
        links=tuple(_links(each)),
    )


def _draws(each: SetSwatch, now: SetNow, stocks: SetStocks) -> Iterator[DrawShown]:
    for place, dose in enumerate(each.doses, start=1):
        waiting = stocks.waiting.get((each.bath_number, f"dose-{place}"))
        if waiting is not None:
            yield shown_draw(waiting, is_by_weight=now.is_by_weight)
        else:
            yield _planned(dose)


def _planned(dose: SetDose) -> DrawShown:
    depth = amount_text(dose.depth_percent, "%")
    if dose.volume_ml is None or dose.strength_percent is None:
        amount = amount_text(dose.dye_g, "g")
        return DrawShown(
            dye=dose.dye_name,
            depth=depth,
            amount=amount,
            beside="",
            stock="weighed dry",
        )
    return DrawShown(
        dye=dose.dye_name,
        depth=depth,
        amount=amount_text(dose.volume_ml, "ml"),
        beside=beside_text(dose.mass_g),
        stock=f"{dose.code} {amount_text(dose.strength_percent, '%')}",
    )


def _colour(each: SetSwatch, name: str) -> ColourShown | None:
    if each.reading is not None:
        return colour_of_reading(each.reading, name=name)
    return told_colour(each.told, name=name)


def _told_words(each: SetSwatch, now: SetNow) -> str:
    """Return how far the colour lies from the one foretold, and from the one wanted."""
    seen = each.reading.lab if each.reading is not None else None
    said = []
    if seen is not None and each.told is not None:
        said.append(f"{_away(each.told.lab, seen)} from what was foretold")
    near = seen if seen is not None else (each.told.lab if each.told else None)
    if near is not None and now.wanted_lab is not None:
        said.append(f"{_away(now.wanted_lab, near)} from {now.wanted}")
    return ", ".join(said)


def _away(one: Lab, other: Lab) -> str:
    return f"ΔE{NO_BREAK}{ciede2000(one, other):.1f}"


def _links(each: SetSwatch) -> Iterator[Link]:
    number = each.bath_number
    if each.status in _OPEN:
        yield Link(words="At the bench", address=reverse("bench", args=[number]))
    if each.is_dyed and each.reading is None:
        address = reverse("read-bath", args=[number])
        yield Link(words="Read its colour", address=address)
    if each.swatch_id is not None:
        yield Link(words="Swatch", address=reverse("swatch", args=[each.swatch_id]))
    yield Link(words="Bath", address=reverse("bath", args=[number]))
