"""Read the colour of a swatch, of a bath, or of an old swatch as it is entered."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.swatches.new_form import NewForm
from shadewright.web.swatches.pages import NewPage, ReadPage
from shadewright.web.swatches.read_form import ReadForm
from shadewright.web.swatches.start_views import USUAL_FIBRES, asked_base
from shadewright.web.swatches.words import CRUMBS, title_of
from shadewright.web.toasts import say
from shadewright.workflows.bases import bases
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.dyes import dyes, named_dye
from shadewright.workflows.shades.entering_swatches import swatch_id_of_bath
from shadewright.workflows.shades.reading_swatches import (
    keep_read_swatch,
    read_bath,
)
from shadewright.workflows.shades.readings import keep_reading
from shadewright.workflows.shades.swatches import Standing, swatch_now
from shadewright.workflows.stamps import Stamp, stamp_now

Keep = Callable[[Stamp], int]


@require_http_methods(["GET", "POST"])
def read(request: HttpRequest, swatch_id: int) -> HttpResponse:
    """Ask for the colour of a swatch, and keep it."""
    swatch = swatch_now(swatch_id)
    form = ReadForm(request.POST if request.method == "POST" else None)

    def keep(stamp: Stamp) -> int:
        keep_reading(swatch_id=swatch_id, words=form.read_words(), stamp=stamp)
        return swatch_id

    kept = _kept(request, form, keep)
    if kept is not None:
        return redirect("swatch", kept)
    name, back = title_of(swatch), reverse("swatch", args=[swatch_id])
    page = ReadPage(
        title="Read its colour",
        fact=f"{name} on {swatch.base_name}.",
        crumbs=(*CRUMBS, Link(words=name, address=back)),
        form=form,
        back=back,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def read_of_bath(request: HttpRequest, number: str) -> HttpResponse:
    """Ask for the colour of what came out of a bath; its first reading is a swatch."""
    bath, known = bath_now(number), swatch_id_of_bath(number)
    if known is not None:
        return read(request, known)
    form = ReadForm(request.POST if request.method == "POST" else None)

    def keep(stamp: Stamp) -> int:
        return read_bath(number, words=form.read_words(), stamp=stamp)

    kept = _kept(request, form, keep)
    if kept is not None:
        return redirect("swatch", kept)
    back = reverse("lot" if bath.has_lot else "bath", args=[number])
    page = ReadPage(
        title="Read its colour",
        fact=f"{bath.recipe_name} on {bath.base_name}.",
        crumbs=(Link(words=number, address=back),),
        form=form,
        back=back,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """Ask for a swatch that no bath tells of, with its colour."""
    if request.method == "POST":
        form = NewForm(request.POST)
    else:
        form = NewForm(initial=asked_base(request))

    fresh: list[str] = []

    def keep(stamp: Stamp) -> int:
        words = form.swatch_words()
        fresh.extend(dye for dye, _depth in words.doses if named_dye(dye) is None)
        colour = form.read_words() if form.is_said else None
        return keep_read_swatch(words=words, read=colour, stamp=stamp)

    kept = _kept(request, form, keep)
    if kept is not None:
        for dye in fresh:
            say(request, f"{dye} is new among the dyes")
        return redirect("swatch", kept)
    page = NewPage(
        title="Enter a swatch",
        fact="An old one, one that was dyed elsewhere, or bare yarn.",
        crumbs=CRUMBS,
        form=form,
        dye_names=tuple(dye.name for dye in dyes()),
        base_names=tuple(base.name for base in bases()),
        usual_fibres=USUAL_FIBRES,
    )
    return show(request, page, status=422 if form.errors else 200)


def _kept(request: HttpRequest, form: ReadForm, keep: Keep) -> int | None:
    if not form.is_bound or not form.is_valid():
        return None
    deed = form.cleaned_data["deed"]
    try:
        swatch_id = keep(stamp_now(by=person_id(request), deed=deed))
    except StudioError as error:
        form.refuse(error)
        return None
    _tell(request, swatch_id, undo=reverse("undo", args=[deed]))
    return swatch_id


def _tell(request: HttpRequest, swatch_id: int, *, undo: str) -> None:
    swatch = swatch_now(swatch_id)
    name = title_of(swatch)
    if swatch.is_evidence:
        refit_soon(why=f"{name} was read")
    if swatch.standing is Standing.UNREAD:
        say(request, f"{name} is kept")
    else:
        say(request, f"The colour of {name} is kept", undo=undo)
