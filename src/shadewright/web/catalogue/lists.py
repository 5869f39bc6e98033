"""The lists of the catalogue: what is in use, and what is retired."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.records.models import Dye, MeasuringTool
from shadewright.web.catalogue.kinds import Column, Item, Kind
from shadewright.web.catalogue.pages import (
    Cell,
    Head,
    ListPage,
    ListRow,
    RetiredPage,
    RetiredRow,
)
from shadewright.web.catalogue.tool_words import SHORT_JOBS
from shadewright.web.finding import asked, says
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.web.sorting import Keys, Order, arrange, read_order
from shadewright.workflows.usual_tools import Job, UsualTools, usual_tools


@require_safe
def items(request: HttpRequest, kind: Kind) -> HttpResponse:
    """Show everything of one kind that is in use."""
    query = asked(request)
    keys = _keys(kind)
    order = read_order(request, keys, default="name")
    rows = [item for item in _all(kind, is_retired=False) if _fits(kind, query, item)]
    usual = usual_tools()
    page = ListPage(
        title=kind.title,
        fact=kind.fact,
        here=kind.here,
        noun=kind.noun,
        would_be=kind.would_be,
        heads=tuple(_head(column) for column in kind.columns),
        rows=tuple(_row(kind, item, usual) for item in _arranged(rows, order, keys)),
        order=order,
        query=query,
        add_address=reverse(f"add-{kind.noun}"),
        retired_address=reverse(f"retired-{kind.slug}"),
        retired_count=_all(kind, is_retired=True).count(),
    )
    return show(request, page)


@require_safe
def retired_items(request: HttpRequest, kind: Kind) -> HttpResponse:
    """Show everything of one kind that is no longer used."""
    page = RetiredPage(
        title=f"{kind.title}: retired",
        fact="Kept for what was made with them; each can come back.",
        crumbs=(above(kind),),
        here=kind.here,
        rows=tuple(
            RetiredRow(
                name=item.name,
                address=reverse(kind.noun, args=[item.pk]),
                back_address=reverse(f"{kind.noun}-back", args=[item.pk]),
            )
            for item in _all(kind, is_retired=True)
        ),
    )
    return show(request, page)


def above(kind: Kind) -> Link:
    """Return the crumb that leads to a kind's list."""
    return Link(words=kind.title, address=reverse(kind.slug))


def _all(kind: Kind, *, is_retired: bool) -> Any:  # ruff: ignore[any-type] - a queryset
    model: Any = kind.model
    return model.objects.filter(is_retired=is_retired)


def _fits(kind: Kind, query: str, item: Item) -> bool:
    return says(query, item.name, *(column.says(item) for column in kind.columns))


def _keys(kind: Kind) -> Keys[Item]:
    keys: Keys[Item] = {
        "name": lambda item: item.name.casefold(),
        **{column.key: column.sorts for column in kind.columns},
    }
    return keys


def _arranged(rows: list[Item], order: Order, keys: Keys[Item]) -> tuple[Item, ...]:
    return arrange(rows, order, keys)


def _head(column: Column) -> Head:
    return Head(key=column.key, words=column.head, css=column.css)


def _row(kind: Kind, item: Item, usual: UsualTools) -> ListRow:
    is_dye = isinstance(item, Dye)
    return ListRow(
        name=item.name,
        address=reverse(kind.noun, args=[item.pk]),
        has_colour=is_dye,
        hex=item.chart_hex if is_dye else "",
        cells=tuple(Cell(words=c.says(item), css=c.css) for c in kind.columns),
        chips=_dye_chips(item) if is_dye else _job_chips(item, usual),
    )


def _dye_chips(dye: Dye) -> tuple[Chip, ...]:
    said = (
        (dye.is_mix_fresh, Chip(words="mix fresh", kind="caution")),
        (dye.is_metal_complex, Chip(words="holds a metal", kind="caution")),
    )
    return tuple(chip for is_so, chip in said if is_so)


def _job_chips(item: Item, usual: UsualTools) -> tuple[Chip, ...]:
    if not isinstance(item, MeasuringTool):
        return ()
    mine = (job for job in Job if (tool := usual.of(job)) and tool.id == item.pk)
    return tuple(Chip(words=SHORT_JOBS[job]) for job in mine)
