"""Traces both ways, and two lots laid side by side."""

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.errors import NotFoundError
from shadewright.web.lots.forms import CompareForm
from shadewright.web.lots.pages import ComparePage, TracePage
from shadewright.web.lots.paging import page_asked, pages_of
from shadewright.web.lots.trees import shown_tree
from shadewright.web.pages import Link, show
from shadewright.workflows.jars import jar
from shadewright.workflows.lot_differences import Comparison, compare_lots
from shadewright.workflows.lot_pages import lots, lots_like
from shadewright.workflows.trace import trace_bottle, trace_lot
from shadewright.workflows.trace_buyers import onwards_from_lot
from shadewright.workflows.trace_onwards import (
    Onwards,
    onwards_from_bottle,
    onwards_from_jar,
)

_LIKELY = 12


@require_safe
def lot_trace(request: HttpRequest, number: str) -> HttpResponse:
    """Show what went into a lot, back to the jars."""
    page = TracePage(
        title=f"Trace of lot {number}",
        fact="What went in, and who has it. Each jar leads on to all its lots.",
        crumbs=(_lots(), Link(words=number, address=reverse("lot", args=[number]))),
        back=shown_tree(trace_lot(number)),
        onwards=shown_tree(onwards_from_lot(number)),
        pages=None,
    )
    return show(request, page)


@require_safe
def jar_trace(request: HttpRequest, jar_id: int) -> HttpResponse:
    """Show every bottle, bath and lot that a jar's powder went into."""
    found = onwards_from_jar(jar_id, page=page_asked(request))
    here = jar(jar_id)
    page = TracePage(
        title=f"Trace of jar {here.code}",
        fact=_reach(found),
        crumbs=(_jars(), Link(words=here.code, address=reverse("jar", args=[jar_id]))),
        back=None,
        onwards=shown_tree(found.tree),
        pages=pages_of(request, page=found.page, pages=found.pages),
    )
    return show(request, page)


@require_safe
def bottle_trace(request: HttpRequest, code: str) -> HttpResponse:
    """Show both: where a bottle's dye came from, and where it went."""
    found = onwards_from_bottle(code, page=page_asked(request))
    shelf = Link(words="Shelf", address=reverse("shelf"))
    page = TracePage(
        title=f"Trace of bottle {code}",
        fact=_reach(found),
        crumbs=(shelf, Link(words=code, address=reverse("bottle", args=[code]))),
        back=shown_tree(trace_bottle(code)),
        onwards=shown_tree(found.tree),
        pages=pages_of(request, page=found.page, pages=found.pages),
    )
    return show(request, page)


@require_safe
def compare(request: HttpRequest) -> HttpResponse:
    """Lay two lots side by side, or ask which two."""
    first = request.GET.get("a", "").strip()
    is_asked = bool(first and "b" in request.GET)
    form = CompareForm(request.GET if is_asked else None, initial={"a": first})
    found = _compared(form) if is_asked and form.is_valid() else None
    page = ComparePage(
        title="Two lots side by side",
        fact="What is written of both baths. Not why: that is yours to judge.",
        crumbs=(_lots(),),
        form=form,
        found=found,
        likely=_likely(first) if found is None else (),
    )
    return show(request, page, status=422 if form.errors else 200)


def _compared(form: CompareForm) -> Comparison | None:
    numbers = {}
    for name in ("a", "b"):
        numbers[name] = form.cleaned_data[name]
        try:
            lots_like(numbers[name])
        except NotFoundError as error:
            form.add_error(name, error.sentence)
    return None if form.errors else compare_lots(numbers["a"], numbers["b"])


def _likely(first: str) -> tuple[Link, ...]:
    """Offer lots of the same recipe, or the newest ones."""
    try:
        numbers = lots_like(first)
    except NotFoundError:
        numbers = tuple(row.number for row in lots().rows[:_LIKELY])
    start = reverse("compare-lots")
    return tuple(
        Link(
            words=number,
            address=f"{start}?a={first or number}" + (f"&b={number}" if first else ""),
        )
        for number in numbers
    )


def _reach(found: Onwards) -> str:
    if not found.baths:
        return "It went into no bath yet, as far as it is written down."
    noun = "bath" if found.baths == 1 else "baths"
    shown = "" if found.pages == 1 else f"; page {found.page} of {found.pages}"
    return f"It went into {found.baths} {noun}{shown}."


def _lots() -> Link:
    return Link(words="Lots", address=reverse("lots"))


def _jars() -> Link:
    return Link(words="Jars", address=reverse("jars"))
