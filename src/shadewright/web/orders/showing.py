"""An order as its page shows it."""

from collections.abc import Iterator
from datetime import date
from uuid import uuid4

from django.urls import reverse

from shadewright.web.orders.forms import PromiseForm
from shadewright.web.orders.listing import DAYS, ORDERS, put_on_day, trouble_of
from shadewright.web.orders.pages import (
    EditRow,
    LineShown,
    OrderPage,
    PromiseShown,
    ShareRow,
)
from shadewright.web.orders.words import (
    before_sending,
    change_words,
    kept_chip,
    line_words,
    progress_chip,
    promise_words,
    share_words,
    skein_words,
    wanted_words,
)
from shadewright.web.parts import Caution
from shadewright.web.templatetags.house import day as day_words
from shadewright.web.templatetags.house import moment
from shadewright.workflows.days.order_edits import EditNow
from shadewright.workflows.days.order_pages import LineNow, OrderNow, ShareNow
from shadewright.workflows.days.pace import coming_dye_day


def order_page(
    order: OrderNow,
    *,
    promise_form: PromiseForm | None = None,
    refusal: Caution | None = None,
) -> OrderPage:
    """Return the page of an order."""
    day = coming_dye_day()
    return OrderPage(
        title=f"Order {order.number}",
        fact=f"For {order.for_whom}; {wanted_words(order)}.",
        crumbs=(DAYS, ORDERS),
        number=order.number,
        state=progress_chip(order),
        promise=_promise(order),
        promise_form=promise_form or PromiseForm(),
        refusal=refusal,
        lines=tuple(_line(each, order, day) for each in order.lines),
        facts=tuple(_facts(order)),
        is_closed=order.is_closed,
        is_all_there=order.is_all_there,
        before_sending=before_sending(order),
        deed=uuid4(),
        edits=tuple(map(_edit, order.edits)),
    )


def _edit(edit: EditNow) -> EditRow:
    by = f" by {edit.by}" if edit.by else ""
    back = ", taken back" if edit.is_counter else ""
    return EditRow(
        deed=edit.deed,
        when=f"{moment(edit.at)}{by}{back}",
        changes=tuple(map(change_words, edit.changes)),
        is_undone=edit.is_undone,
        may_undo=edit.may_undo,
    )


def _promise(order: OrderNow) -> PromiseShown | None:
    found = order.promise
    if found is None or not order.wanted:
        return None
    told = order.promised_on
    return PromiseShown(
        words=promise_words(found),
        reasons=found.reasons,
        is_guess=found.is_guess,
        latest=found.latest,
        wanted=None if order.wanted_by is None else kept_chip(order.wanted_by, found),
        said="" if told is None else f"Promised for {day_words(told)}.",
        has_promise=told is not None,
        is_new=told != found.latest,
    )


def _line(line: LineNow, order: OrderNow, day: date) -> LineShown:
    is_open = not (line.is_dropped or order.is_closed)
    return LineShown(
        position=line.position,
        words=line_words(line),
        size=skein_words(line.skein_g)
        + (f", {line.gone} of {line.skeins} went out" if line.gone else ""),
        as_said=line.as_said,
        is_dropped=line.is_dropped,
        shares=tuple(map(_share, line.shares)),
        offers=tuple(map(_share, line.offers)) if is_open else (),
        to_dye=line.to_dye,
        trouble=trouble_of(line),
        put_on=put_on_day(day, line=line.id)
        if line.to_dye and not line.trouble
        else "",
        share_address=reverse("order-share", args=[order.number, line.position]),
    )


def _share(share: ShareNow) -> ShareRow:
    given = share.given
    is_short = 0 < share.kept < share.skeins
    skeins = f"{share.kept} of {share.skeins}" if is_short else str(share.skeins)
    page = "lot" if given.is_on_shelf or given.is_drying else "bath"
    return ShareRow(
        number=given.number,
        address=reverse(page, args=[given.number]),
        skeins=skeins,
        words=share_words(share),
        take=share.skeins,
    )


def _facts(order: OrderNow) -> Iterator[tuple[str, str]]:
    if order.due_on is not None:
        yield "Wanted by", day_words(order.due_on)
    if order.promised_on is not None:
        yield "Promised for", day_words(order.promised_on)
    if order.notes:
        yield "What they said", order.notes
    by = f" by {order.created_by}" if order.created_by else ""
    yield "Written down", f"{moment(order.created_at)}{by}"
