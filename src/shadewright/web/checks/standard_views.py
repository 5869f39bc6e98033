"""Standards: the list, one with its trail, and a lot that becomes one."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import (
    require_http_methods,
    require_POST,
    require_safe,
)

from shadewright.errors import StudioError
from shadewright.web.checks.forms import LotStandardForm, PieceForm, ToneForm
from shadewright.web.checks.pages import (
    LotStandardPage,
    StandardPage,
    StandardRow,
    StandardsPage,
)
from shadewright.web.checks.verdicts import standard_colour
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.workflows.judging.sharing import recipes_shared
from shadewright.workflows.judging.standards import (
    OfWhat,
    StandardNow,
    hold_again,
    lot_as_standard,
    of_lot,
    of_what,
    piece_as_standard,
    standard_of,
    trail_of,
)
from shadewright.workflows.judging.standards import standards as standards_now
from shadewright.workflows.judging.tone_bands import tone_band
from shadewright.workflows.lot_pages import lot_now
from shadewright.workflows.stamps import stamp_now

LOTS = Link(words="Lots", address="/lots/")
STANDARDS = Link(words="Standards", address="/standards/")


@require_safe
def standards(request: HttpRequest) -> HttpResponse:
    """Show the standards that hold, and what has lots and no standard yet."""
    rows = standards_now()
    known = {(each.recipe_id, each.base_id) for each in rows}
    page = StandardsPage(
        title="Standards",
        fact="The real pieces that lots are held against.",
        crumbs=(LOTS,),
        rows=tuple(map(_row, rows)),
        without=tuple(
            each
            for each in recipes_shared()
            if (each.recipe_id, each.base_id) not in known
        ),
    )
    return show(request, page)


@require_http_methods(["GET", "POST"])
def standard(request: HttpRequest, recipe_id: int, base_id: int) -> HttpResponse:
    """Show a standard and what it replaced, and take a piece that replaces it."""
    what = of_what(recipe_id=recipe_id, base_id=base_id)
    form = PieceForm(request.POST if request.method == "POST" else None)
    if form.is_bound and form.is_valid() and _replaced(request, what, form):
        return _to(what)
    page = standard_page(what, form, ToneForm(initial=_tone(what)))
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def lot_standard(request: HttpRequest, number: str) -> HttpResponse:
    """Ask where the piece of a lot lives, and make the lot the standard."""
    lot, what = lot_now(number), of_lot(number)
    form = LotStandardForm(
        request.POST if request.method == "POST" else None,
        initial={"where": lot.held.place},
    )
    if form.is_bound and form.is_valid() and _made(request, number, form):
        return _to(what)
    held = standard_of(recipe_id=what.recipe_id, base_id=what.base_id)
    page = LotStandardPage(
        title=f"{number} as the standard",
        fact=f"Lots of {what.recipe_name} on {what.base_name} are held against it.",
        crumbs=(LOTS, Link(words=number, address=reverse("lot", args=[number]))),
        number=number,
        replaces=None if held is None else _row(held),
        form=form,
        own=reverse("lot-standard", args=[number]),
    )
    return show(request, page, status=422 if form.errors else 200)


@require_POST
def again(request: HttpRequest, standard_id: int) -> HttpResponse:
    """Let an earlier standard hold again."""
    held = hold_again(standard_id, stamp=stamp_now(by=person_id(request)))
    say(request, "The earlier piece holds again", undo=_undo(held.deed))
    return _to(of_what(recipe_id=held.recipe_id, base_id=held.base_id))


def standard_page(what: OfWhat, form: PieceForm, tone_form: ToneForm) -> StandardPage:
    """Return the page of a standard with its two forms."""
    trail = trail_of(recipe_id=what.recipe_id, base_id=what.base_id)
    now = next((each for each in trail if not each.is_undone), None)
    return StandardPage(
        title=f"{what.recipe_name} on {what.base_name}",
        fact="Its standard, and what that replaced.",
        crumbs=(LOTS, STANDARDS),
        what=what,
        now=None if now is None else _row(now),
        trail=tuple(_row(each) for each in trail if each is not now),
        form=form,
        tone_form=tone_form,
        own=_address(what),
    )


def _replaced(request: HttpRequest, what: OfWhat, form: PieceForm) -> bool:
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
    try:
        piece_as_standard(what, piece=form.piece, read=form.read_words(), stamp=stamp)
    except StudioError as error:
        form.refuse(error)
        return False
    said = f"{what.recipe_name} on {what.base_name} has its standard"
    say(request, said, undo=_undo(stamp.deed))
    return True


def _made(request: HttpRequest, number: str, form: LotStandardForm) -> bool:
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
    try:
        lot_as_standard(number, piece=form.piece, stamp=stamp)
    except StudioError as error:
        form.refuse(error)
        return False
    said = f"Lot {number} is the standard from now on"
    say(request, said, undo=_undo(stamp.deed))
    return True


def _row(held: StandardNow) -> StandardRow:
    return StandardRow(standard=held, seen=standard_colour(held))


def _undo(deed: UUID) -> str:
    return reverse("undo", args=[deed])


def _tone(what: OfWhat) -> dict[str, float]:
    band = tone_band(what.recipe_id)
    return {} if band is None else {"least": band.least, "most": band.most}


def _address(what: OfWhat) -> str:
    return reverse("standard", args=[what.recipe_id, what.base_id])


def _to(what: OfWhat) -> HttpResponse:
    return HttpResponseRedirect(_address(what))
