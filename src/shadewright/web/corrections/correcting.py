"""What to add to a lot so that it comes to its standard."""

from collections.abc import Iterator
from functools import partial
from math import dist

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.views.decorators.http import require_http_methods

from shadewright.core.quantities import amount_text, counted
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.errors import StudioError
from shadewright.web.colours import ColourShown, read_colour
from shadewright.web.corrections.forms import AimForm, KeepForm, PriceForm
from shadewright.web.corrections.keeping import keep_form, kept_address
from shadewright.web.corrections.pages import CorrectPage
from shadewright.web.corrections.pairs import measured_of, shown_foretold
from shadewright.web.corrections.rows import addition_rows
from shadewright.web.corrections.ways import way_on
from shadewright.web.lot_crumbs import lot_crumbs
from shadewright.web.pages import show
from shadewright.web.pairs import pair_of
from shadewright.web.parts import Caution
from shadewright.web.targets import target_asked
from shadewright.workflows.correcting.correcting import (
    PASSES,
    Corrected,
    corrected,
    dye_cost_of,
)
from shadewright.workflows.correcting.keeping import CorrectionKind
from shadewright.workflows.correcting.off_shade import (
    Aim,
    OffShade,
    off_shade,
    unsure_by,
)
from shadewright.workflows.correcting.too_small import Instead
from shadewright.workflows.costs import cost_words
from shadewright.workflows.lot_skeins import skeins_of
from shadewright.workflows.shades.own_lots import own_lots_differ

NOT_SURE = 2.0
"""CIEDE2000 that the two colours may usually be off, together. [1]"""
_MOST_DIGITS = 9
_AFTER = "Foretold after all of it"
_SHARE_WHY = (
    "Dye can be added and never taken out. So {share} of it goes in first; look, "
    "read it dry, and correct again if it is still short."
)


@require_http_methods(["GET", "POST"])
def correct(request: HttpRequest, number: str) -> HttpResponse:
    """Show what to add to a lot, and plan the bath that it goes into."""
    found, trouble = _found(request, number)
    form = None
    if found is not None and found.additions:
        form = keep_form(found.off, found.first)
        if request.method == "POST":
            form = KeepForm(request.POST)
            if form.is_valid() and (address := _kept(request, form, number, found)):
                return HttpResponseRedirect(address)
    page = _page(request, number, found, trouble, form)
    return show(request, page, status=422 if form is not None and form.errors else 200)


def _found(
    request: HttpRequest, number: str
) -> tuple[Corrected | None, StudioError | None]:
    try:
        off = off_shade(number, wanted=target_asked(request.GET))
        return corrected(off, instead=_instead(request)), None
    except StudioError as error:
        if error.argument == "number":
            raise
        return None, error


def _instead(request: HttpRequest) -> dict[int, Instead]:
    """Return what is asked to be done with dyes too small to measure."""
    return {
        int(dye): each
        for each in Instead
        for dye in request.GET.getlist(each)
        if dye.isdecimal() and len(dye) <= _MOST_DIGITS
    }


def _way(request: HttpRequest, instead: Instead, dye_id: int) -> str:
    query = request.GET.copy()
    query.appendlist(instead, str(dye_id))
    return f"{request.path}?{query.urlencode()}"


def _back(request: HttpRequest) -> str:
    query = request.GET.copy()
    for each in Instead:
        query.pop(each, None)
    return f"{request.path}?{query.urlencode()}"


def _kept(request: HttpRequest, form: KeepForm, number: str, found: Corrected) -> str:
    return kept_address(
        request,
        form,
        number=number,
        kind=CorrectionKind.CORRECT,
        foretold={
            "de_before": found.found.de_before,
            "de_after": found.found.de_after,
            "share": found.found.share,
        },
    )


def _page(
    request: HttpRequest,
    number: str,
    found: Corrected | None,
    trouble: StudioError | None,
    form: KeepForm | None,
) -> CorrectPage:
    prices = PriceForm(request.GET if "price" in request.GET else None)
    aim = None if found is None else found.off.aim
    share = "" if found is None else amount_text(round(100 * found.found.share), "%")
    return CorrectPage(
        title=f"Correct lot {number}",
        fact="What to add so that it comes to its colour.",
        crumbs=lot_crumbs(number),
        number=number,
        trouble=None
        if trouble is None
        else Caution(title="Not yet.", text=trouble.sentence),
        way=None if trouble is None else way_on(number, trouble),
        asks_colour=trouble is not None and trouble.argument == "colour",
        aim_form=AimForm(initial={"colour": request.GET.get("colour", "")}),
        colour=request.GET.get("colour", ""),
        now=None
        if found is None or aim is None
        else pair_of(_aim(aim), measured_of(found.off)),
        after=None
        if found is None or aim is None or not found.additions
        else pair_of(_aim(aim), shown_foretold(found.after, name=_AFTER)),
        verdicts=() if found is None else tuple(_verdicts(found)),
        rows=()
        if found is None
        else addition_rows(found.additions, way=partial(_way, request)),
        left_out="" if found is None else _otherwise(found, _instead(request)),
        back=_back(request),
        share=_SHARE_WHY.format(share=share),
        form=form,
        prices=prices,
        is_priced=prices.is_bound,
        money=tuple(_money(found, prices)),
        own=request.get_full_path(),
    )


def _aim(aim: Aim) -> ColourShown:
    name = f"{aim.words[:1].upper()}{aim.words[1:]}"
    return read_colour(aim.lab, aim.read_by, name=name)


def _verdicts(found: Corrected) -> Iterator[Caution]:
    answer, off = found.found, found.off
    unsure = unsure_by(off)
    if unsure > NOT_SURE:
        yield Caution(
            title="These colours are not sure.",
            text=f"Between them they are usually ΔE{NO_BREAK}{unsure:.1f} off. Read "
            "both dry with a meter before you add dye: it cannot be taken out.",
        )
    if answer.de_before <= PASSES:
        yield Caution(
            title="It is there already.",
            text=f"Within ΔE{NO_BREAK}{PASSES:g} nobody sees a difference: leave it.",
        )
    elif (own := own_lots_differ()) and _away(off) <= own.apart:
        yield Caution(
            title="It is as near as your own lots are to each other.",
            text=f"They differ by about {own.apart:.1f}, and this one is "
            f"{_away(off):.1f} away: a correction may as well make it worse.",
        )
    elif not found.additions:
        yield Caution(
            title="Nothing would bring it nearer.",
            text="Some of its dye is too much already, and dye cannot be taken out. "
            "Sell it as a lot of its own, or overdye it.",
        )
    elif not answer.is_reachable:
        yield Caution(
            title="It will not come all the way.",
            text=f"After all of it lot {off.number} is still {answer.words}. "
            "Overdyeing to a deeper colourway may be kinder to it.",
        )


def _away(off: OffShade) -> float:
    """Return the CIELAB distance of a lot from its aim, as lots are held together."""
    return 0.0 if off.aim is None else dist(off.aim.lab, off.measured.lab)


def _otherwise(found: Corrected, instead: dict[int, Instead]) -> str:
    least = [x.dye_name for x in found.additions if x.dye_id in instead]
    said = [f"{dye} is left out." for dye in found.left_out]
    said += [f"Of {dye} goes in the least that can be measured." for dye in least]
    return " ".join(said)


def _money(found: Corrected | None, prices: PriceForm) -> Iterator[str]:
    if found is None or not found.additions:
        return
    cost = cost_words(dye_cost_of(found.additions))
    yield (
        f"Dye that goes in first: {cost}. A bath of water, acid and heat and your "
        "time come on top."
    )
    if not prices.is_bound or not prices.is_valid():
        return
    price, less = prices.cleaned_data["price"], prices.cleaned_data["less"]
    left = skeins_of(found.off.number).left
    if price is None or not left:
        return
    lost = float(price) * left * (less or 0) / 100
    yield (
        f"As a one-off, {less or 0} % off: {lost:.2f} less for the "
        f"{counted(left, 'skein')} left."
    )
