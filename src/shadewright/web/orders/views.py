"""One order: its promise, the lots that are for it, how it ends."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.errors import StudioError
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.orders.forms import PromiseForm, ShareForm
from shadewright.web.orders.showing import order_page
from shadewright.web.pages import show
from shadewright.web.parts import Caution
from shadewright.web.templatetags.house import day as day_words
from shadewright.web.toasts import say
from shadewright.workflows.days.order_pages import order_now
from shadewright.workflows.days.orders import (
    Closing,
    close_order,
    open_order_again,
    promise,
)
from shadewright.workflows.days.shares import line_at, share_bath
from shadewright.workflows.stamps import stamp_now


@require_safe
def order(request: HttpRequest, number: int) -> HttpResponse:
    """Show one order."""
    return show(request, order_page(order_now(number)))


@require_POST
def promised(request: HttpRequest, number: int) -> HttpResponse:
    """Note the day that was told to whoever ordered."""
    form = PromiseForm(request.POST)
    if form.is_valid():
        told = form.cleaned_data["promised_on"]
        stamp = stamp_now(by=person_id(request))
        try:
            is_new = promise(number=number, promised_on=told, stamp=stamp)
        except StudioError as error:
            form.refuse(error)
        else:
            words = "no day any more" if told is None else day_words(told)
            undo = reverse("undo", args=[stamp.deed]) if is_new else ""
            say(request, f"Promised: {words}", undo=undo)
            return redirect("order", number)
    page = order_page(order_now(number), promise_form=form)
    return show(request, page, status=422)


@require_POST
def share(request: HttpRequest, number: int, position: int) -> HttpResponse:
    """Let skeins of a lot or a bath be for a line, or let them go."""
    form = ShareForm(request.POST)
    if not form.is_valid():
        sentences = [str(each) for errors in form.errors.values() for each in errors]
        return _refused(request, number, " ".join(sentences))
    lot, skeins = form.cleaned_data["number"], form.cleaned_data["skeins"]
    try:
        line = line_at(number=number, position=position)
        share_bath(line_id=line, number=lot, skeins=skeins)
    except StudioError as error:
        return _refused(request, number, error.sentence)
    if skeins:
        say(request, f"{skeins} of {lot} are for order {number}")
    else:
        say(request, f"{lot} is no longer for order {number}")
    return redirect("order", number)


@require_POST
def close(request: HttpRequest, number: int) -> HttpResponse:
    """Close an order: sent, or called off."""
    form = DeedForm(request.POST)
    if form.is_valid():
        is_sent = request.POST.get("how") == "sent"
        how = Closing.SENT if is_sent else Closing.CALLED_OFF
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        close_order(number=number, how=how, stamp=stamp)
        back = reverse("order-open", args=[number])
        say(request, f"Order {number}: {how.value.lower()}", undo=back)
    return redirect("order", number)


@require_POST
def open_again(request: HttpRequest, number: int) -> HttpResponse:
    """Open a closed order; what was counted as sent is in its lots again."""
    open_order_again(number=number, stamp=stamp_now(by=person_id(request)))
    say(request, f"Order {number} is open again")
    return redirect("order", number)


def _refused(request: HttpRequest, number: int, sentence: str) -> HttpResponse:
    refusal = Caution(title="Not like this", text=sentence, kind="problem")
    page = order_page(order_now(number), refusal=refusal)
    return show(request, page, status=422)
