"""Save a recipe that was found, and keep, retire or bring back a wanted colour."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.errors import MissingError
from shadewright.web.colours import read_colour
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.matching.asking import Asked, asked_of
from shadewright.web.matching.pages import WantedPage, WantedRow
from shadewright.web.mix_text import mix_of
from shadewright.web.pages import Link, show
from shadewright.web.swatches.words import SHADES
from shadewright.web.targets import target_asked, target_query, target_text
from shadewright.web.toasts import say
from shadewright.workflows.choices import bases_in_use
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.saving import (
    FoundRecipe,
    ToSave,
    recipes_found,
    save_found,
)
from shadewright.workflows.shades.wanted import (
    Wanted,
    keep_wanted,
    retire_wanted,
    wanted_colours,
)
from shadewright.workflows.stamps import Stamp, stamp_now


@require_POST
def save(request: HttpRequest) -> HttpResponse:
    """Save one answer as a recipe, and show the recipe."""
    asked = _asked(request)
    found = ToSave(
        doses=mix_of(request.POST.get("mix", "")),
        base_id=asked.wish.base_id,
        wanted=asked.wish.wanted,
        tolerance=asked.wish.tolerance,
        batch_g=asked.wish.batch_g,
        parent_id=asked.parent_id,
        like_id=asked.like_id,
    )
    made = save_found(found, stamp=_stamp(request))
    say(request, f"Saved as {made.recipe_name}, version {made.number}")
    return HttpResponseRedirect(
        reverse("recipe-version", args=[made.recipe_id, made.number])
    )


@require_POST
def keep(request: HttpRequest) -> HttpResponse:
    """Keep the colour that is looked for under its name."""
    wanted = target_asked(request.GET.dict())
    if wanted is None:
        raise MissingError(name="The colour", advice="Pick or type it first.")
    name = request.POST.get("name", "") or wanted.name
    kept = keep_wanted(wanted, name=name, base_id=wanted.base_id, stamp=_stamp(request))
    say(request, f"{kept.name} is kept")
    rest = request.GET.copy()
    for key in (*target_query(wanted), "name"):
        rest.pop(key, None)
    address = f"{target_text(kept)}&{rest.urlencode()}".rstrip("&")
    return HttpResponseRedirect(f"{reverse('find')}?{address}")


@require_safe
def wanted(request: HttpRequest) -> HttpResponse:
    """Show the colours that are kept, each with its way to a recipe."""
    return show(request, _wanted_page(is_retired=False))


@require_safe
def retired_wanted(request: HttpRequest) -> HttpResponse:
    """Show the colours that were retired."""
    return show(request, _wanted_page(is_retired=True))


@require_POST
def retire(request: HttpRequest, wanted_id: int) -> HttpResponse:
    """Take a wanted colour out of the list."""
    retire_wanted(wanted_id, stamp=_stamp(request))
    say(request, "Retired; it can be brought back")
    return HttpResponseRedirect(reverse("wanted"))


@require_POST
def bring_back(request: HttpRequest, wanted_id: int) -> HttpResponse:
    """Put a wanted colour back into the list."""
    retire_wanted(wanted_id, stamp=_stamp(request), is_retired=False)
    say(request, "Brought back")
    return HttpResponseRedirect(reverse("wanted"))


def _asked(request: HttpRequest) -> Asked:
    now = palette_now()
    asked = None if now is None else asked_of(request.GET, now.palette)
    if asked is None:
        raise MissingError(name="The colour", advice="Look for the recipe again.")
    return asked


def _stamp(request: HttpRequest) -> Stamp:
    form = DeedForm(request.POST)
    deed = form.cleaned_data["deed"] if form.is_valid() else None
    return stamp_now(by=person_id(request), deed=deed)


def _wanted_page(*, is_retired: bool) -> WantedPage:
    bases = {base.id: base.words for base in bases_in_use()}
    found, recipes = wanted_colours(is_retired=is_retired), recipes_found()
    above = Link(words="Wanted colours", address=reverse("wanted"))
    return WantedPage(
        title="Wanted colours: retired" if is_retired else "Wanted colours",
        fact=""
        if is_retired
        else "Colours that somebody wants, each with its recipes.",
        crumbs=(SHADES, above) if is_retired else (SHADES,),
        rows=tuple(_row(each, bases, recipes) for each in found),
        is_retired=is_retired,
        retired_count=0 if is_retired else len(wanted_colours(is_retired=True)),
    )


def _row(
    each: Wanted, bases: dict[int, str], recipes: tuple[FoundRecipe, ...]
) -> WantedRow:
    return WantedRow(
        id=each.wanted_id or 0,
        name=each.name,
        colour=read_colour(each.lab, each.read_by, name=each.name),
        base=bases.get(each.base_id or 0, ""),
        recipes=tuple(_recipe(x) for x in recipes if x.is_for(each)),
        find_address=f"{reverse('find')}?{target_text(each)}",
    )


def _recipe(found: FoundRecipe) -> Link:
    return Link(
        words=f"{found.name}, version {found.number}",
        address=reverse("recipe-version", args=[found.recipe_id, found.number]),
    )
