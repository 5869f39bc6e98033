"""Add an item of the catalogue, show it, edit it, retire it, bring it back."""

from dataclasses import replace
from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.urls import reverse
from django.views.decorators.http import (
    require_http_methods,
    require_POST,
    require_safe,
)

from shadewright.errors import NotFoundError
from shadewright.records.models import Auxiliary, Dye
from shadewright.web.catalogue.facts import item_page
from shadewright.web.catalogue.item_form import RowForm
from shadewright.web.catalogue.kinds import DYES, Item, Kind
from shadewright.web.catalogue.lists import above
from shadewright.web.catalogue.pages import FormPage, SideTerm
from shadewright.web.catalogue.sheets import sheet_answer
from shadewright.web.catalogue.words import ACID
from shadewright.web.evidence.background import refit_soon
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.stamps import Stamp, stamp_now

_FILE_AGAIN = (
    "Choose the file again: a browser does not keep it when a page comes back."
)


@require_safe
def item(request: HttpRequest, kind: Kind, item_id: int) -> HttpResponse:
    """Show an item with what is known of it and how that changed."""
    return show(request, item_page(kind, found(kind, item_id)))


@require_http_methods(["GET", "POST"])
def add(request: HttpRequest, kind: Kind) -> HttpResponse:
    """Ask for a new item and keep it."""
    form = kind.form(request.POST or None, request.FILES or None)
    if form.is_valid():
        form.keep(stamp_of(request))
        say(request, f"{form.instance} added")
        return _back(request, kind, form.instance)
    if form.said_before is not None:
        return _back(request, kind, form.said_before)
    page = form_page(form, title=f"Add {_a(kind.noun)}", crumbs=(above(kind),))
    page = replace(page, away=way_back(request, otherwise=page.away))
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def edit(request: HttpRequest, kind: Kind, item_id: int) -> HttpResponse:
    """Change an item; the version before is kept."""
    row = found(kind, item_id)
    name = str(row)
    form = kind.form(request.POST or None, request.FILES or None, instance=row)
    if form.is_valid():
        more = form.keep(stamp_of(request))
        if str(row) != name:
            refit_soon(why=f"{name} is now called {row}")
        say(request, f"{form.instance} changed; the version before is kept{more}")
        return _to(kind, row)
    crumbs = (above(kind), Link(words=name, address=reverse(kind.noun, args=[item_id])))
    page = form_page(form, title=f"Change {name}", crumbs=crumbs)
    return show(request, page, status=422 if form.errors else 200)


@require_POST
def retire(request: HttpRequest, kind: Kind, item_id: int) -> HttpResponse:
    """Take an item out of use; nothing is deleted."""
    row = _use(request, found(kind, item_id), is_retired=True)
    say(
        request,
        f"{row} is retired",
        undo=reverse(f"{kind.noun}-back", args=[item_id]),
    )
    return HttpResponseRedirect(reverse(kind.slug))


@require_POST
def bring_back(request: HttpRequest, kind: Kind, item_id: int) -> HttpResponse:
    """Take a retired item into use again."""
    row = _use(request, found(kind, item_id), is_retired=False)
    say(request, f"{row} is in use again")
    return _to(kind, row)


@require_safe
def data_sheet(_request: HttpRequest, item_id: int) -> HttpResponseBase:
    """Hand out the safety data sheet of a dye."""
    dye = found(DYES, item_id)
    if not isinstance(dye, Dye) or not dye.data_sheet_file:
        raise NotFoundError(kind="data sheet of", key=str(dye))
    return sheet_answer(dye)


def found(kind: Kind, item_id: int) -> Item:
    """Return an item, or say that there is none."""
    model: Any = kind.model
    row = model.objects.filter(pk=item_id).first()
    if row is None:
        raise NotFoundError(kind=kind.noun, key=str(item_id))
    return row


def stamp_of(request: HttpRequest) -> Stamp:
    """Return the stamp of an edit of now."""
    return stamp_now(by=person_id(request))


def form_page(form: RowForm, *, title: str, crumbs: tuple[Link, ...]) -> FormPage:
    """Return the page of a form; its last crumb is the way out."""
    if form.errors and form.files and "data_sheet_file" not in form.errors:
        form.add_error("data_sheet_file", _FILE_AGAIN)
    is_acid = isinstance(form.instance, Auxiliary)
    return FormPage(
        title=title,
        crumbs=crumbs,
        form=form,
        side_title=form.side_title,
        side=tuple(SideTerm(term=term, meaning=said) for term, said in form.side),
        cautions=(ACID,) if is_acid else (),
        away=crumbs[-1].address,
    )


def _use(request: HttpRequest, row: Item, *, is_retired: bool) -> Item:
    row.is_retired = is_retired
    keep_item(row, stamp_of(request))
    return row


def _to(kind: Kind, row: Item) -> HttpResponse:
    return HttpResponseRedirect(reverse(kind.noun, args=[row.pk]))


def _back(request: HttpRequest, kind: Kind, row: Item) -> HttpResponse:
    """Lead back to where the item was missing, else to its page."""
    own = reverse(kind.noun, args=[row.pk])
    return HttpResponseRedirect(way_back(request, otherwise=own))


def _a(noun: str) -> str:
    return f"an {noun}" if noun[0] in "aeiou" else f"a {noun}"
