"""The list of recipes, a recipe with its versions, what changed between two."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.errors import NotFoundError
from shadewright.web.finding import asked, says
from shadewright.web.pages import Link, show
from shadewright.web.recipes.pages import ChangesPage, RecipeRow, RecipesPage
from shadewright.web.recipes.showing import recipe_page, state_of_version
from shadewright.web.sorting import Keys, arrange, read_order
from shadewright.workflows.recipe_shapes import RecipePage, Version
from shadewright.workflows.recipe_words import changes, dose_words
from shadewright.workflows.recipes import count_retired
from shadewright.workflows.recipes import recipe as found_recipe
from shadewright.workflows.recipes import recipes as every_recipe
from shadewright.workflows.shades.plan_pages import plan_of_recipe

ALL = Link(words="Recipes", address="/recipes/")
_KEYS: Keys[RecipeRow] = {
    "name": lambda row: row.name.casefold(),
    "version": lambda row: row.version,
    "doses": lambda row: row.doses.casefold() or None,
    "tried": lambda row: row.tried.casefold() or None,
    "state": lambda row: row.state.words,
}


@require_safe
def recipes(request: HttpRequest) -> HttpResponse:
    """Show every recipe in use."""
    return _list(request, is_retired=False)


@require_safe
def retired_recipes(request: HttpRequest) -> HttpResponse:
    """Show every recipe that was retired."""
    return _list(request, is_retired=True)


@require_safe
def recipe(request: HttpRequest, recipe_id: int) -> HttpResponse:
    """Show a recipe by its newest version; a set of swatches has its own page."""
    plan_id = plan_of_recipe(recipe_id)
    if plan_id is not None:
        return redirect("swatch-plan", plan_id)
    page = found_recipe(recipe_id)
    return show(request, recipe_page(page, page.newest))


@require_safe
def recipe_version(request: HttpRequest, recipe_id: int, number: int) -> HttpResponse:
    """Show a recipe by one of its versions; a set of swatches has its own page."""
    plan_id = plan_of_recipe(recipe_id)
    if plan_id is not None:
        return redirect("swatch-plan", plan_id)
    page = found_recipe(recipe_id)
    return show(request, recipe_page(page, numbered(page, number)))


@require_safe
def recipe_changes(request: HttpRequest, recipe_id: int) -> HttpResponse:
    """Show what differs between two versions."""
    page = found_recipe(recipe_id)
    after = _asked_version(request, "to", page, page.newest)
    parent = after.parent_number or page.versions[-1].number
    before = _asked_version(request, "from", page, numbered(page, parent))
    shown = ChangesPage(
        title=f"{page.name}: what changed",
        fact=f"From version {before.number} to version {after.number}.",
        crumbs=(ALL, Link(words=page.name, address=reverse("recipe", args=[page.id]))),
        before=before.number,
        after=after.number,
        numbers=tuple(each.number for each in page.versions),
        changed=changes(before.text, after.text),
    )
    return show(request, shown)


def numbered(page: RecipePage, number: int) -> Version:
    """Return the version of a number."""
    for each in page.versions:
        if each.number == number:
            return each
    raise NotFoundError(kind=f"version of {page.name}", key=str(number))


def _asked_version(
    request: HttpRequest, name: str, page: RecipePage, otherwise: Version
) -> Version:
    typed = request.GET.get(name, "")
    is_number = typed.isascii() and typed.isdecimal() and len(typed) < 6
    return numbered(page, int(typed)) if is_number else otherwise


def _list(request: HttpRequest, *, is_retired: bool) -> HttpResponse:
    query = asked(request)
    order = read_order(request, _KEYS, default="name")
    rows = [_row(each) for each in every_recipe(is_retired=is_retired)]
    fit = [row for row in rows if _fits(query, row)]
    page = RecipesPage(
        title="Recipes: retired" if is_retired else "Recipes",
        fact=_fact(is_retired=is_retired),
        crumbs=(ALL,) if is_retired else (),
        rows=arrange(fit, order, _KEYS),
        order=order,
        query=query,
        is_retired=is_retired,
        retired_count=0 if is_retired else count_retired(),
    )
    return show(request, page)


def _fact(*, is_retired: bool) -> str:
    if is_retired:
        return "Kept for what was dyed from them; each can come back."
    return "Colourways and their versions. A version is never changed, only followed."


def _fits(query: str, row: RecipeRow) -> bool:
    return says(query, row.name, row.was_named, row.doses, row.tried, row.state.words)


def _row(page: RecipePage) -> RecipeRow:
    text = page.newest.text
    doses = ", ".join(dose_words(dose) for dose in text.doses)
    return RecipeRow(
        name=page.name,
        was_named=page.was_named,
        address=reverse("recipe", args=[page.id]),
        version=page.newest.number,
        doses=doses or text.as_written[:80],
        tried=", ".join(page.tried_on),
        state=state_of_version(page.newest),
    )
