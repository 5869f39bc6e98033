"""Write an order down, or change it."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.frame import person_id
from shadewright.web.orders.forms import OrderForm, initial_of
from shadewright.web.orders.listing import DAYS, ORDERS, order_address
from shadewright.web.orders.pages import WriteOrderPage
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.workflows.choices import bases_in_use
from shadewright.workflows.days.order_pages import OrderNow, customers, order_now
from shadewright.workflows.days.orders import change_order, write_order
from shadewright.workflows.recipes import has_recipes
from shadewright.workflows.stamps import stamp_now

Keep = Callable[[OrderForm], int]


@require_http_methods(["GET", "POST"])
def new_order(request: HttpRequest) -> HttpResponse:
    """Ask for an order and write it down."""

    def keep(form: OrderForm) -> int:
        deed = form.cleaned_data["deed"]
        stamp = stamp_now(by=person_id(request), deed=deed)
        number = write_order(wish=form.wish(), stamp=stamp)
        say(request, f"Order {number} is written down")
        return number

    if request.method != "POST":
        return show(request, _page(OrderForm(initial=_begun(request))))
    return _answered(request, keep)


@require_http_methods(["GET", "POST"])
def change(request: HttpRequest, number: int) -> HttpResponse:
    """Ask what is different of an order and write it down."""
    order = order_now(number)

    def keep(form: OrderForm) -> int:
        seen, deed = form.cleaned_data["seen"], form.cleaned_data["deed"]
        stamp = stamp_now(by=person_id(request), deed=deed)
        wish = form.wish()
        if change_order(number=number, wish=wish, seen=seen, stamp=stamp):
            undo = reverse("undo", args=[deed])
            say(request, f"Order {number} is changed", undo=undo)
        else:
            say(request, f"Order {number} stays as it is: nothing was different")
        return number

    if request.method != "POST":
        form = OrderForm(initial=initial_of(order), before=order)
        return show(request, _page(form, order))
    return _answered(request, keep, order)


def _answered(
    request: HttpRequest, keep: Keep, order: OrderNow | None = None
) -> HttpResponse:
    if request.POST.get("act") == "more":
        typed = request.POST.dict()
        count = OrderForm(initial=typed, before=order).count + 1
        form = OrderForm(initial={**typed, "rows": count}, before=order)
        return show(request, _page(form, order))
    form = OrderForm(request.POST, before=order)
    if form.is_valid():
        try:
            number = keep(form)
        except StudioError as error:
            form.refuse(error)
        else:
            return redirect("order", number)
    return show(request, _page(form, order), status=422)


def _begun(request: HttpRequest) -> dict[str, str]:
    """Return what an address says of the first line, and for whom it is."""
    said = request.GET.dict()
    names = [name for name in ("recipe", "base", "skeins") if name in said]
    return {"for_whom": said.get("for_whom", "")} | {f"{x}_1": said[x] for x in names}


def _page(form: OrderForm, order: OrderNow | None = None) -> WriteOrderPage:
    crumbs: tuple[Link, ...] = (DAYS, ORDERS)
    if order is not None:
        here = order_address(order.number)
        crumbs = (*crumbs, Link(words=f"Order {order.number}", address=here))
    return WriteOrderPage(
        title="A new order" if order is None else f"Change order {order.number}",
        fact="Who, what, how many: the rest can wait."
        if order is None
        else "A line is never lost: tick what is not wanted any more.",
        crumbs=crumbs,
        form=form,
        customers=customers(),
        has_choices=has_recipes() and bool(bases_in_use()),
        back=reverse("orders") if order is None else order_address(order.number),
    )
