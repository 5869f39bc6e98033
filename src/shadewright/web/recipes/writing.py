"""Write a recipe, its next version, another name; retire it, bring it back."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.errors import StudioError
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.recipes.acid_aid import put_acid_in
from shadewright.web.recipes.curve_form import put_programme_in
from shadewright.web.recipes.depth_aid import AidForm, put_in
from shadewright.web.recipes.forms import (
    MORE_ROWS,
    NameForm,
    RecipeForm,
    VersionForm,
    initial_of,
)
from shadewright.web.recipes.pages import NamePage, WritePage
from shadewright.web.recipes.views import ALL, numbered
from shadewright.web.toasts import say
from shadewright.workflows.dyes import dyes
from shadewright.workflows.recipe_shapes import RecipePage, Version
from shadewright.workflows.recipes import (
    recipe,
    rename_recipe,
    retire_recipe,
    write_recipe,
    write_version,
)
from shadewright.workflows.stamps import stamp_now

USUAL = {"liquor_ratio": "30"}


@dataclass(frozen=True, kw_only=True)
class Writing:
    """What is written: the next version of something, or a new recipe."""

    parent: Version | None = None

    @property
    def initial(self) -> dict[str, Any]:
        """What stands in the form at first."""
        return USUAL if self.parent is None else initial_of(self.parent.text)

    def form(
        self,
        data: Mapping[str, Any] | None = None,
        initial: dict[str, Any] | None = None,
    ) -> VersionForm:
        """Return its form."""
        kind = RecipeForm if self.parent is None else VersionForm
        before = None if self.parent is None else self.parent.text
        return kind(data, initial=initial, before=before)

    def page(
        self,
        form: VersionForm,
        aid: AidForm,
        answer: str = "",
        *,
        acid: str = "",
        programme: str = "",
    ) -> WritePage:
        """Return the page of its form."""
        parent = self.parent
        here = "/recipes/"
        if parent is not None:
            here = reverse("recipe", args=[parent.recipe_id])
        return WritePage(
            title="A new recipe" if parent is None else _title(parent),
            fact=_fact(parent),
            crumbs=_crumbs(parent),
            form=form,
            aid=aid,
            aid_answer=answer,
            acid_answer=acid,
            programme_answer=programme,
            is_new=parent is None,
            has_dyes=bool(dyes()),
            back=here,
        )

    def keep(self, request: HttpRequest, form: VersionForm) -> Version:
        """Write it down."""
        sent = form.cleaned_data
        stamp = stamp_now(by=person_id(request), deed=sent["deed"])
        if self.parent is None:
            return write_recipe(name=sent["name"], text=form.text(), stamp=stamp)
        return write_version(parent_id=self.parent.id, text=form.text(), stamp=stamp)


@require_http_methods(["GET", "POST"])
def new_recipe(request: HttpRequest) -> HttpResponse:
    """Ask for a recipe and write it down."""
    return _written(request, Writing())


@require_http_methods(["GET", "POST"])
def new_version(request: HttpRequest, recipe_id: int) -> HttpResponse:
    """Ask for the next version of a recipe; the one before stays as it is."""
    page = recipe(recipe_id)
    return _written(request, Writing(parent=_parent(request, page)))


@require_http_methods(["GET", "POST"])
def rename(request: HttpRequest, recipe_id: int) -> HttpResponse:
    """Give a recipe another name; the old one stays readable."""
    page = recipe(recipe_id)
    form = NameForm(request.POST or None, initial={"name": page.name})
    if form.is_valid():
        try:
            renamed = rename_recipe(recipe_id=recipe_id, name=form.cleaned_data["name"])
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"It is named {renamed.name} now; {page.name} stays readable")
            return redirect("recipe", recipe_id)
    shown = NamePage(
        title=f"Rename {page.name}",
        fact="Its versions, baths and lots stay with it.",
        crumbs=_crumbs(page.newest),
        form=form,
        was_named=page.was_named,
        back=reverse("recipe", args=[recipe_id]),
    )
    return show(request, shown, status=422 if form.errors else 200)


@require_POST
def retire(request: HttpRequest, recipe_id: int) -> HttpResponse:
    """Take a recipe out of the list; nothing is deleted."""
    page = retire_recipe(recipe_id=recipe_id)
    back = reverse("recipe-back", args=[recipe_id])
    say(request, f"{page.name} is retired", undo=back)
    return redirect("recipes")


@require_POST
def bring_back(request: HttpRequest, recipe_id: int) -> HttpResponse:
    """Take a retired recipe into the list again."""
    page = retire_recipe(recipe_id=recipe_id, is_retired=False)
    say(request, f"{page.name} is in the list again")
    return redirect("recipe", recipe_id)


def _written(request: HttpRequest, writing: Writing) -> HttpResponse:
    if request.method != "POST":
        form = writing.form(initial=writing.initial)
        return show(request, writing.page(form, AidForm()))
    acts = {"more": _more, "depth": _depth, "acid": _acid, "programme": _programme}
    act = acts.get(request.POST.get("act", ""), _keep)
    return act(request, writing)


def _keep(request: HttpRequest, writing: Writing) -> HttpResponse:
    form = writing.form(request.POST)
    if form.is_valid():
        try:
            made = writing.keep(request, form)
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"{made.recipe_name}, version {made.number}, is written down")
            return redirect("recipe", made.recipe_id)
    return show(request, writing.page(form, AidForm()), status=422)


def _more(request: HttpRequest, writing: Writing) -> HttpResponse:
    """Show the form with more rows; nothing is checked yet."""
    typed = request.POST.dict()
    count = writing.form(initial=typed).count
    form = writing.form(initial={**typed, "rows": count + MORE_ROWS})
    return show(request, writing.page(form, AidForm()))


def _depth(request: HttpRequest, writing: Writing) -> HttpResponse:
    """Reckon the depth of some stock on some yarn, and put it in a row."""
    typed: dict[str, Any] = request.POST.dict()
    aid = AidForm(request.POST)
    if not aid.is_valid():
        form = writing.form(initial=typed)
        return show(request, writing.page(form, aid), status=422)
    answer = _reckoned(typed, aid, rows=writing.form(initial=typed).count)
    form = writing.form(initial=typed)
    return show(request, writing.page(form, aid, answer))


def _programme(request: HttpRequest, writing: Writing) -> HttpResponse:
    """Put a programme's curve into the heat; nothing is checked yet."""
    typed: dict[str, Any] = request.POST.dict()
    answer = put_programme_in(typed)
    form = writing.form(initial=typed)
    return show(request, writing.page(form, AidForm(), programme=answer))


def _acid(request: HttpRequest, writing: Writing) -> HttpResponse:
    """Put the usual acid for these dyes in a row; nothing is checked yet."""
    typed: dict[str, Any] = request.POST.dict()
    answer = put_acid_in(typed, rows=writing.form(initial=typed).count)
    form = writing.form(initial=typed)
    return show(request, writing.page(form, AidForm(), acid=answer))


def _reckoned(typed: dict[str, Any], aid: AidForm, *, rows: int) -> str:
    try:
        return put_in(typed, aid.depth_percent(), aid.bottle, rows=rows)
    except StudioError as error:
        return error.sentence


def _parent(request: HttpRequest, page: RecipePage) -> Version:
    typed = request.GET.get("from", "")
    is_number = typed.isascii() and typed.isdecimal() and len(typed) < 6
    return numbered(page, int(typed)) if is_number else page.newest


def _title(parent: Version) -> str:
    return f"{parent.recipe_name}: the next version"


def _fact(parent: Version | None) -> str:
    if parent is None:
        return "Depths are in % on the weight of dry fibre, so that it fits any yarn."
    return f"It begins as version {parent.number}, which stays as it is."


def _crumbs(parent: Version | None) -> tuple[Link, ...]:
    if parent is None:
        return (ALL,)
    address = reverse("recipe", args=[parent.recipe_id])
    return (ALL, Link(words=parent.recipe_name, address=address))
