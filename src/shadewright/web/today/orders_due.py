"""Orders that wait today: late ones, and those wanted within a week."""

from datetime import timedelta

from django.urls import reverse

from shadewright.web.orders.words import line_words, wanted_words
from shadewright.web.today.pages import Waiting
from shadewright.workflows.days.order_pages import OrderNow, orders
from shadewright.workflows.stamps import today

_SOON = timedelta(days=7)
_MOST = 3


def orders_due() -> tuple[Waiting, ...]:
    """Return what asks for a hand, the soonest first; many stand in one line."""
    due = [
        order
        for order in orders()
        if order.wanted_by is not None and order.wanted_by <= today() + _SOON
    ]
    return (_many(due),) if len(due) > _MOST else tuple(map(_waiting, due))


def _many(due: list[OrderNow]) -> Waiting:
    named = ", ".join(f"{each.number} {each.for_whom}" for each in due[:_MOST])
    return Waiting(
        icon="yarn",
        what=f"{len(due)} orders are late or wanted within a week",
        why=f"{named} and {len(due) - _MOST} more",
        key="See the orders",
        address=reverse("orders"),
    )


def _waiting(order: OrderNow) -> Waiting:
    lines = ", ".join(map(line_words, order.wanted)) or "no colourway chosen yet"
    return Waiting(
        icon="yarn",
        what=f"Order {order.number} for {order.for_whom}: {lines}",
        why=f"Wanted by {wanted_words(order)}. {_state(order)}",
        key="See the order",
        address=reverse("order", args=[order.number]),
    )


def _state(order: OrderNow) -> str:
    if 0 < order.skeins <= order.gone:
        return "All of it went out: close it."
    if order.is_all_there or order.is_to_take:
        return "All of it is there: pack it."
    if order.to_dye:
        return f"{order.to_dye} of {order.skeins} are on no day yet."
    return f"{order.on_shelf} of {order.skeins} are there, the rest is in baths."
