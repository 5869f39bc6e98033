"""Type a card back, line by line, and take it back whole."""

from collections.abc import Iterator
from urllib.parse import urlencode
from uuid import UUID

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from shadewright.core.baths.blanks import Blank, blank_unit
from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.cards.fields import MISSED, PLANNED, name_of
from shadewright.web.cards.forms import (
    CardForm,
    card_form,
    is_typed,
    open_blanks,
)
from shadewright.web.cards.pages import CardBlank, CardLine, CardPage, CardTicks
from shadewright.web.cards.words import card_fact, done_words, outcome_words, title_of
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows.bath_pages import BathNow, BathStatus, StepNow, bath_now
from shadewright.workflows.typed_cards import take_card_back, write_card

ALL, NEXT = "all", "next"


def type_card(request: HttpRequest, number: str) -> HttpResponse:
    """Show a card's lines; what is sent is written in one go, or not at all."""
    bath = bath_now(number)
    if request.method != "POST":
        return show(request, _page(bath, card_form(bath)(), is_first_shown=True))
    form = card_form(bath)(request.POST)
    go = request.POST.get("go", "")
    if form.is_valid() and go == NEXT:
        form.wait_in()
        return show(request, _page(bath, form))
    if form.is_valid():
        try:
            return _written(request, bath, form, is_all=go == ALL)
        except StudioError as error:
            form.refuse(error)
    return show(request, _page(bath, form), status=422)


@require_POST
def take_back(request: HttpRequest, number: str, deed: UUID) -> HttpResponse:
    """Take a whole card back."""
    take_card_back(bath=number, deed=deed, by=person_id(request))
    say(request, f"The card of {number} is taken back. The ledgers keep both lines")
    card = reverse("type-card", args=[number])
    return HttpResponseRedirect(way_back(request, otherwise=card))


def _written(
    request: HttpRequest, bath: BathNow, form: CardForm, *, is_all: bool
) -> HttpResponse:
    deed = form.cleaned_data["deed"]
    card = form.card(bath.number, is_all=is_all)
    outcome = write_card(card, deed=deed, by=person_id(request))
    undo = reverse("undo-card", args=[bath.number, deed])
    say(request, outcome_words(bath, outcome), undo=undo)
    return redirect(_way_on(bath_now(bath.number)))


def _way_on(bath: BathNow) -> str:
    """Lead to the lot once all but the lot is written, else to the bath."""
    after = bath.next_step
    is_ready = after is not None and after.step.kind is StepKind.FINISH
    is_ready = is_ready and not bath.has_lot
    return reverse("finish-bath" if is_ready else "bath", args=[bath.number])


def _page(bath: BathNow, form: CardForm, *, is_first_shown: bool = False) -> CardPage:
    asked = urlencode({"number": bath.number})
    return CardPage(
        title=f"Card of {bath.number}",
        fact=card_fact(bath),
        crumbs=(
            Link(words="Dye days", address=reverse("days")),
            Link(words=bath.number, address=reverse("bath", args=[bath.number])),
        ),
        form=form,
        lines=tuple(_lines(bath, form)),
        bench=reverse("bench", args=[bath.number]),
        printed=f"{reverse('bath-cards')}?{asked}",
        is_open=any(is_typed(each) and not each.is_done for each in bath.steps),
        is_given_up=bath.status is BathStatus.GIVEN_UP,
        is_first_shown=is_first_shown,
    )


def _lines(bath: BathNow, form: CardForm) -> Iterator[CardLine]:
    for place, each in enumerate(bath.steps, start=1):
        is_open = is_typed(each) and not each.is_done
        step = each.step
        yield CardLine(
            place=place,
            title=title_of(each),
            amount="" if step.amount is None else amount_text(step.amount, step.unit),
            code=step.code,
            ticks=_ticks(each, form) if is_open else None,
            blanks=tuple(_blanks(bath, each, form)),
            said="" if is_open else done_words(bath, each),
        )


def _ticks(each: StepNow, form: CardForm) -> CardTicks:
    return CardTicks(
        planned=form[name_of(each.step, PLANNED)],
        missed=form[name_of(each.step, MISSED)],
    )


def _blanks(bath: BathNow, each: StepNow, form: CardForm) -> Iterator[CardBlank]:
    for blank in open_blanks(bath, each):
        yield CardBlank(
            words=str(blank),
            field=form[name_of(each.step, blank)],
            unit=blank_unit(blank, each.step),
            is_wide=blank is Blank.LOOKED,
        )
