"""The orders, and what is to be dyed, as lists."""

from collections.abc import Mapping
from datetime import date

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities import counted, number_text
from shadewright.web.asking import day_asked
from shadewright.web.finding import asked
from shadewright.web.orders.pages import (
    OrderRow,
    OrdersPage,
    ToDyePage,
    ToDyeRow,
    Trouble,
)
from shadewright.web.orders.words import (
    line_words,
    pot_words,
    progress_chip,
    skein_words,
    wanted_words,
)
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.web.templatetags.house import day as day_words
from shadewright.web.ways import way_to
from shadewright.workflows.days.demand import ToDye, to_dye
from shadewright.workflows.days.order_pages import (
    MOST,
    LineNow,
    OrderNow,
    order_numbers,
    orders,
)
from shadewright.workflows.days.pace import coming_dye_day
from shadewright.workflows.days.pot_loads import pot_loads

DAYS = Link(words="Dye days", address="/days/")
ORDERS = Link(words="Orders", address="/orders/")


@require_safe
def open_orders(request: HttpRequest) -> HttpResponse:
    """Show the open orders, what is wanted soonest first."""
    return _listed(request, is_closed=False)


@require_safe
def closed_orders(request: HttpRequest) -> HttpResponse:
    """Show the orders that are closed, the newest first."""
    return _listed(request, is_closed=True)


@require_safe
def what_to_dye(request: HttpRequest) -> HttpResponse:
    """Show what is to be dyed for orders and the shelf, each with its way to a day."""
    day = day_asked(request.GET) or coming_dye_day()
    rows, numbers = to_dye(), order_numbers()
    loads = pot_loads(rows)
    skeins = sum(each.skeins for each in rows)
    page = ToDyePage(
        title="What to dye",
        fact=f"{counted(skeins, 'skein')}: what orders and the shelf want, less what "
        "is there and what is planned."
        if rows
        else "Orders and the shelf want nothing that is not there or planned.",
        crumbs=(DAYS, ORDERS),
        rows=tuple(
            _to_dye_row(each, day, pots=pot_words(pots), numbers=numbers)
            for each, pots in zip(rows, loads, strict=True)
        ),
        day=day.isoformat(),
        day_words=day_words(day),
    )
    return show(request, page)


def put_on_day(day: date, **wanted: object) -> str:
    """Return where something is put on a day."""
    return way_to("day-add", day, **wanted)


def _listed(request: HttpRequest, *, is_closed: bool) -> HttpResponse:
    query = asked(request)
    rows = orders(query=query, is_closed=is_closed)
    page = OrdersPage(
        title="Closed orders" if is_closed else "Orders",
        fact=f"What was sent or called off: the newest {MOST}; search finds older ones."
        if is_closed
        else "Who wants what, by when, and how far it is.",
        crumbs=(DAYS, ORDERS) if is_closed else (DAYS,),
        rows=tuple(map(_row, rows)),
        query=query,
        is_closed=is_closed,
    )
    return show(request, page)


def _row(order: OrderNow) -> OrderRow:
    return OrderRow(
        number=order.number,
        for_whom=order.for_whom,
        wanted=wanted_words(order),
        lines=tuple(map(line_words, order.wanted)) or (order.notes[:120],),
        state=progress_chip(order),
    )


def _to_dye_row(
    wanted: ToDye, day: date, *, pots: str, numbers: Mapping[int, int]
) -> ToDyeRow:
    lines = tuple(pk for pk, _skeins in wanted.for_lines)
    return ToDyeRow(
        what=f"{wanted.skeins} × {wanted.recipe_name} on {wanted.base_name}",
        size=skein_words(wanted.skein_g),
        due="" if wanted.due_on is None else day_words(wanted.due_on),
        why=wanted.why,
        pots=pots,
        trouble=trouble_of(wanted),
        put_on=""
        if wanted.trouble
        else put_on_day(
            day,
            recipe=wanted.recipe_id,
            base=wanted.base_id,
            skeins=wanted.skeins,
            skein_g=number_text(wanted.skein_g, digits=6),
            **({"line": ",".join(map(str, lines))} if lines else {}),
        ),
        orders=tuple(dict.fromkeys(numbers[pk] for pk in lines)),
    )


def trouble_of(wanted: ToDye | LineNow) -> Trouble | None:
    """Return what stands in the way, with the way to what is to be mended."""
    if not wanted.trouble:
        return None
    number = wanted.base_id if wanted.mend == "base" else wanted.recipe_id
    return Trouble(
        note=Caution(title="Not to be planned yet", text=wanted.trouble),
        key=f"Open the {wanted.mend}",
        address=reverse(wanted.mend, args=[number]),
    )


def order_address(number: int) -> str:
    """Return the address of an order."""
    return reverse("order", args=[number])
