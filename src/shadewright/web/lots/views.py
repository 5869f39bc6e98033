"""Lots: the list, one of them, and what is written of it."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.colours import colour_of_reading
from shadewright.web.depths import depth_rows
from shadewright.web.finding import asked
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.lots.forms import ColourForm, LotForm, PhotoForm
from shadewright.web.lots.pages import CheckOfLot, LotPage, LotsPage, ReadOfLot
from shadewright.web.lots.paging import page_asked, pages_of
from shadewright.web.pages import Link, show
from shadewright.web.photos import jpeg
from shadewright.web.sorting import read_order
from shadewright.web.standings import standing_chip
from shadewright.web.toasts import say
from shadewright.web.verdicts import difference_words, verdict_chip
from shadewright.workflows import lot_pages
from shadewright.workflows.costs import cost_words
from shadewright.workflows.days.order_pages import orders_of_bath
from shadewright.workflows.judging.dry_checks import last_check
from shadewright.workflows.lot_pages import LotNow, LotRow, is_rate_set, lot_now
from shadewright.workflows.lots import (
    ColourEvidence,
    add_photo,
    change_lot,
    note_colour,
    photo_bytes,
)
from shadewright.workflows.shades.entering_swatches import swatch_id_of_bath
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.stamps import Stamp, stamp_now

_COLUMNS = ("lot", "recipe", "base", "day", "grade", "grams", "place")
_KEYS: dict[str, Callable[[LotRow], object]] = dict.fromkeys(
    _COLUMNS, lambda row: row.number
)


@require_safe
def lots(request: HttpRequest) -> HttpResponse:
    """Show the lots, the newest first."""
    query, order = asked(request), read_order(request, _KEYS, default="-day")
    sign = "-" if order.is_descending else ""
    found = lot_pages.lots(
        query=query, order=f"{sign}{order.column}", page=page_asked(request)
    )
    page = LotsPage(
        title="Lots",
        fact="One bath, one lot: what came out of each pot.",
        rows=found.rows,
        order=order,
        query=query,
        pages=pages_of(request, page=found.page, pages=found.pages),
    )
    return show(request, page)


@require_safe
def lot(request: HttpRequest, number: str) -> HttpResponse:
    """Show one lot."""
    return show(request, _page(lot_now(number)))


@require_POST
def change(request: HttpRequest, number: str) -> HttpResponse:
    """Write down what is different of a lot now."""
    form = LotForm(request.POST, is_timed=is_rate_set())

    def write(stamp: Stamp) -> str:
        is_new = change_lot(number=number, said=form.said, stamp=stamp)
        return f"Lot {number} is written anew" if is_new else ""

    if _written(request, form, write):
        return _to(number)
    return show(request, _page(lot_now(number), form=form), status=422)


@require_POST
def colour(request: HttpRequest, number: str) -> HttpResponse:
    """Note a lot's colour and what it rests on."""
    form = ColourForm(request.POST)

    def write(stamp: Stamp) -> str:
        sent = form.cleaned_data
        evidence = ColourEvidence(sent["evidence"])
        note_colour(
            number=number, colour=sent["colour"], evidence=evidence, stamp=stamp
        )
        return f"The colour of {number} is noted, {evidence.label}"

    if _written(request, form, write):
        return _to(number)
    return show(request, _page(lot_now(number), colour_form=form), status=422)


@require_POST
def photo(request: HttpRequest, number: str) -> HttpResponse:
    """Keep a photo of a lot."""
    form = PhotoForm(request.POST, request.FILES)

    def write(stamp: Stamp) -> str:
        content = form.cleaned_data["photo"].read()
        add_photo(number=number, photo=content, stamp=stamp)
        return f"The photo of {number} is kept"

    if _written(request, form, write):
        return _to(number)
    return show(request, _page(lot_now(number), photo_form=form), status=422)


@require_safe
def picture(_request: HttpRequest, number: str, line_id: int) -> HttpResponse:
    """Send a photo of a lot: always a JPEG that was drawn here."""
    content = photo_bytes(number=number, line_id=line_id)
    return jpeg(content, name=f"lot-{line_id}")


def _written(
    request: HttpRequest, form: DeedForm, write: Callable[[Stamp], str]
) -> bool:
    if not form.is_valid():
        return False
    deed = form.cleaned_data["deed"]
    try:
        said = write(stamp_now(by=person_id(request), deed=deed))
    except StudioError as error:
        form.refuse(error)
        return False
    if said:
        say(request, said, undo=reverse("undo", args=[deed]))
    else:
        say(request, "Nothing was different, so nothing was written")
    return True


def _page(
    lot: LotNow,
    *,
    form: LotForm | None = None,
    colour_form: ColourForm | None = None,
    photo_form: PhotoForm | None = None,
) -> LotPage:
    bath = lot.bath
    kind = ", a swatch" if bath.is_swatch else ""
    kind = f", out of lot {lot.was_lot}" if lot.was_lot else kind
    return LotPage(
        title=f"Lot {lot.number}",
        fact=f"{lot.sold_as} on {bath.base_name}{kind}.",
        crumbs=(Link(words="Lots", address=reverse("lots")),),
        lot=lot,
        read=_read(lot.number),
        check=_check(lot.number),
        cost=cost_words(lot.cost),
        depths=depth_rows(lot.number),
        facts=_facts(lot),
        form=form or _form(lot),
        colour_form=colour_form or ColourForm(),
        photo_form=photo_form or PhotoForm(),
        places=lot_pages.places(),
        own=reverse("lot", args=[lot.number]),
    )


def _read(number: str) -> ReadOfLot | None:
    swatch_id = swatch_id_of_bath(number)
    swatch = None if swatch_id is None else swatch_now(swatch_id)
    if swatch is None or swatch.reading is None:
        return None
    return ReadOfLot(
        seen=colour_of_reading(swatch.reading),
        standing=standing_chip(swatch, is_suspect=False),
        address=reverse("swatch", args=[swatch.id]),
    )


def _check(number: str) -> CheckOfLot | None:
    found = last_check(number)
    if found is None:
        return None
    said = filter(None, (found.words, difference_words(found)))
    return CheckOfLot(
        chip=None if found.verdict is None else verdict_chip(found.verdict),
        words=", ".join(said) or "read, with no standard to hold it against",
    )


def _form(lot: LotNow) -> LotForm:
    said = lot.held
    initial = {
        "grade": None if said.grade is None else said.grade.value,
        "grams": said.grams,
        "skeins": said.skeins,
        "place": said.place,
        "minutes": said.minutes,
    }
    return LotForm(initial=initial, is_timed=is_rate_set())


def _facts(lot: LotNow) -> tuple[tuple[str, Link], ...]:
    bath = lot.bath
    recipe = f"/recipes/{lot.recipe_id}/versions/{bath.version_number}/"
    words = f"{bath.recipe_name}, version {bath.version_number}"
    pot = bath.pot_name or "not written down"
    return (
        *(
            ("Yarn of", Link(words=f"lot {was}", address=reverse("lot", args=[was])))
            for was in filter(None, [lot.was_lot])
        ),
        *(
            ("Goes into", Link(words=f"bath {into}", address=f"/baths/{into}/"))
            for into in lot.into
        ),
        ("Recipe", Link(words=words, address=recipe)),
        ("Bath", Link(words=f"{lot.number} as dyed", address=f"/baths/{lot.number}/")),
        (
            "Base",
            Link(words=bath.base_name, address=reverse("base", args=[lot.base_id])),
        ),
        ("Mill lot", Link(words=bath.mill_lot or "not written down", address="")),
        ("Yarn dyed", Link(words=amount_text(bath.fibre_g, "g"), address="")),
        ("Pot", Link(words=pot, address="")),
        *(
            ("For", Link(words=f"Order {order}, {whom}", address=f"/orders/{order}/"))
            for order, whom in orders_of_bath(lot.number)
        ),
    )


def _to(number: str) -> HttpResponse:
    return HttpResponseRedirect(reverse("lot", args=[number]))
