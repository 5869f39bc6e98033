"""Find a recipe: the target, the search as it goes, and what came out."""

from typing import TYPE_CHECKING

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.colours import read_colour
from shadewright.web.matching import searches
from shadewright.web.matching.asking import Asked, asked_of, filter_words
from shadewright.web.matching.forms import FindForm, initial_of
from shadewright.web.matching.pages import (
    AnswersPart,
    FindPage,
    SearchShown,
)
from shadewright.web.matching.showing import shown_found
from shadewright.web.mixes.views import no_palette
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.web.swatches.words import SHADES
from shadewright.workflows.recipes import version
from shadewright.workflows.shades.finding import found_by, hunt
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.wanted import CameFrom

if TYPE_CHECKING:
    from shadewright.workflows.shades.palettes import PaletteNow

_STOPPED = "stopped"
_NOTHING = AnswersPart()


@require_safe
def find(request: HttpRequest) -> HttpResponse:
    """Show the target and the recipes for it; a form that is sent gets its address."""
    now = palette_now()
    if now is None:
        return show(request, no_palette("Find a recipe"))
    if "by" in request.GET:
        form = FindForm(now.palette, request.GET)
        if form.is_valid() and form.asked is not None:
            return HttpResponseRedirect(f"{reverse('find')}?{form.asked.query}")
        return show(request, _page(form), status=422)
    return _found(request, now)


@require_safe
def answers(request: HttpRequest) -> HttpResponse:
    """Show how far a search is, or what it found, as a part of its page."""
    now = palette_now()
    asked = None if now is None else asked_of(request.GET, now.palette)
    if asked is None:
        return show(request, AnswersPart())
    return show(request, _sight(asked, wait_s=0.0))


@require_POST
def stop(request: HttpRequest) -> HttpResponse:
    """Stop a search; the target stays as it was."""
    now = palette_now()
    asked = None if now is None else asked_of(request.GET, now.palette)
    if asked is None:
        return HttpResponseRedirect(reverse("find"))
    searches.SEARCHES.stop(hunt(asked.wish))
    return HttpResponseRedirect(f"{reverse('find')}?{asked.query}&{_STOPPED}=1")


def _found(request: HttpRequest, now: "PaletteNow") -> HttpResponse:
    usual = {"by": CameFrom.COLOUR, "grams": "100", "tolerance": "1", "depth": "6"}
    try:
        asked = asked_of(request.GET, now.palette)
    except StudioError as error:
        form = FindForm(now.palette, initial={**usual, **request.GET.dict()})
        return show(
            request, _page(form, sight=AnswersPart(refusal=_refusal(error))), status=422
        )
    if asked is None:
        begun = {key: request.GET[key] for key in request.GET}
        form = FindForm(now.palette, initial={**usual, "most": "4", **begun})
        return show(request, _page(form))
    form = FindForm(now.palette, initial=initial_of(asked))
    if _STOPPED in request.GET:
        return show(request, _page(form, asked, is_stopped=True))
    sight = _sight(asked, wait_s=searches.FIRST_WAIT_S)
    page = _page(form, asked, sight=sight)
    return show(request, page, status=422 if sight.refusal else 200)


def _sight(asked: Asked, *, wait_s: float) -> AnswersPart:
    """Return what was found, or how far the search is, or why it cannot be."""
    try:
        return _seen(asked, wait_s)
    except StudioError as error:
        return AnswersPart(refusal=_refusal(error))


def _seen(asked: Asked, wait_s: float) -> AnswersPart:
    ready = hunt(asked.wish)
    search = searches.SEARCHES.of(ready)
    search.over.wait(wait_s)
    if search.fault is not None:
        raise search.fault
    if search.answer is None:
        return AnswersPart(search=_under_way(asked, search.share))
    return AnswersPart(found=shown_found(ready, found_by(ready, search.answer), asked))


def _under_way(asked: Asked, share: float) -> SearchShown:
    return SearchShown(
        percent=round(100 * share),
        look_address=f"{reverse('find-answers')}?{asked.query}",
        again_address=f"{reverse('find')}?{asked.query}",
        stop_address=f"{reverse('find-stop')}?{asked.query}",
    )


def _refusal(error: StudioError) -> Caution:
    return Caution(title="Not like this", text=error.sentence, kind="problem")


def _page(
    form: FindForm,
    asked: Asked | None = None,
    *,
    sight: AnswersPart = _NOTHING,
    is_stopped: bool = False,
) -> FindPage:
    wanted = None if asked is None else asked.wish.wanted
    is_new = wanted is not None and wanted.came_from is not CameFrom.WANTED
    keep = reverse("keep-wanted")
    return FindPage(
        title="Find a recipe",
        fact=_fact(asked, form),
        crumbs=(SHADES,),
        form=form,
        target=None
        if wanted is None
        else read_colour(wanted.lab, wanted.read_by, name=wanted.name),
        target_note=_target_note(asked),
        filters="" if asked is None else filter_words(asked.wish),
        keep_address=f"{keep}?{asked.query}" if asked and is_new else "",
        found=sight.found,
        search=sight.search,
        refusal=sight.refusal,
        is_stopped=is_stopped,
        from_recipe=_from_recipe(asked),
    )


def _fact(asked: Asked | None, form: FindForm) -> str:
    if asked is None:
        return ""
    batch = amount_text(asked.wish.batch_g, "g")
    base = form.base_words(asked.wish.base_id)
    return f"{asked.wish.wanted.name}, {batch} {base}".rstrip()


def _target_note(asked: Asked | None) -> str:
    if asked is None or asked.wish.wanted.spectrum:
        return ""
    if len(asked.wish.wanted.labs) > 1:
        return "Known under several lights."
    return "Known in daylight only, so recipes that stay steady are preferred."


def _from_recipe(asked: Asked | None) -> Link | None:
    if asked is None or asked.parent_id is None:
        return None
    parent = version(asked.parent_id)
    address = reverse("recipe-version", args=[parent.recipe_id, parent.number])
    words = f"{parent.recipe_name}, version {parent.number}"
    return Link(words=words, address=address)
