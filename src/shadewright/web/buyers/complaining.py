"""Complaints: the list, a new one, one with its kit, its end."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import (
    require_http_methods,
    require_POST,
    require_safe,
)

from shadewright.errors import StudioError
from shadewright.web.buyers.forms import CloseForm, ComplaintForm, NameLotForm
from shadewright.web.buyers.pages import (
    ComplaintPage,
    ComplaintsPage,
    NewComplaintPage,
)
from shadewright.web.buyers.recalling import reach_rows
from shadewright.web.frame import person_id
from shadewright.web.lot_crumbs import lots_link
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.web.photos import jpeg
from shadewright.web.templatetags.house import day
from shadewright.web.toasts import say
from shadewright.workflows.buyers.complaints import (
    ComplaintNow,
    close_complaint,
    complaint_now,
    complaint_photo,
    keep_complaint,
    name_lot,
)
from shadewright.workflows.buyers.complaints import complaints as all_complaints
from shadewright.workflows.stamps import stamp_now

_NO_LOT = Caution(
    title="The lot is not known.",
    text="Ask for the number on the tag; when it comes, write it down below.",
    kind="caution",
)


@require_safe
def complaints(request: HttpRequest) -> HttpResponse:
    """Show every complaint, the open ones first."""
    page = ComplaintsPage(
        title="Complaints",
        fact="What buyers wrote, and what became of it.",
        crumbs=(lots_link(),),
        rows=all_complaints(),
    )
    return show(request, page)


@require_http_methods(["GET", "POST"])
def new_complaint(request: HttpRequest) -> HttpResponse:
    """Write a complaint down."""
    if request.method == "POST":
        form = ComplaintForm(request.POST, request.FILES)
        number = _kept(request, form) if form.is_valid() else None
        if number is not None:
            return _to(number)
    else:
        form = ComplaintForm(initial={"lot": request.GET.get("lot", "")})
    page = NewComplaintPage(
        title="A complaint came",
        fact="Write it down as it was said; the answer comes after.",
        crumbs=(lots_link(), _all()),
        form=form,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_safe
def complaint(request: HttpRequest, number: int) -> HttpResponse:
    """Show one complaint with everything that helps to answer it."""
    return show(request, _page(number))


@require_POST
def close(request: HttpRequest, number: int) -> HttpResponse:
    """Close a complaint and say how it ended."""
    form = CloseForm(request.POST)
    if form.is_valid():
        try:
            close_complaint(number=number, outcome=form.cleaned_data["outcome"])
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"Complaint {number} is closed")
            return _to(number)
    return show(request, _page(number, end=form), status=422)


@require_POST
def its_lot(request: HttpRequest, number: int) -> HttpResponse:
    """Write down of which lot a complaint is."""
    form = NameLotForm(request.POST)
    if form.is_valid():
        try:
            name_lot(number=number, lot=form.cleaned_data["lot"])
        except StudioError as error:
            form.add_error("lot", error.sentence)
        else:
            say(request, f"The lot of complaint {number} is written down")
            return _to(number)
    return show(request, _page(number, lot=form), status=422)


@require_safe
def photo(_request: HttpRequest, number: int) -> HttpResponse:
    """Send the photo that came with a complaint: always a JPEG that was drawn here."""
    return jpeg(complaint_photo(number), name=f"complaint-{number}")


def _kept(request: HttpRequest, form: ComplaintForm) -> int | None:
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
    try:
        number = keep_complaint(said=form.words, stamp=stamp)
    except StudioError as error:
        field = "lot" if error.argument == "number" else error.argument
        form.add_error(field if field in form.fields else None, error.sentence)
        return None
    say(request, f"Complaint {number} is written down")
    return number


def _page(
    number: int, *, end: CloseForm | None = None, lot: NameLotForm | None = None
) -> ComplaintPage:
    now = complaint_now(number)
    entry = now.entry
    return ComplaintPage(
        title=f"Complaint {entry.number}",
        fact=f"{entry.about}, from {entry.from_whom}, {day(entry.came_on)}.",
        crumbs=(lots_link(), _all()),
        now=now,
        facts=tuple(_facts(now)),
        rows=reach_rows(entry.lot, now.reaches) if entry.lot else (),
        no_lot=None if entry.lot else _NO_LOT,
        form=end or CloseForm(),
        lot_form=None if entry.lot else lot or NameLotForm(),
    )


def _facts(now: ComplaintNow) -> list[tuple[str, Link]]:
    lot = now.entry.lot
    if not lot:
        return []
    return [
        ("Lot", Link(words=lot, address=reverse("lot", args=[lot]))),
        ("Colourway", Link(words=now.entry.colourway, address="")),
        ("What went in", Link(words="Trace", address=reverse("trace-lot", args=[lot]))),
        *((("Tested", Link(words=words, address=""))) for words in now.tests),
    ]


def _to(number: int) -> HttpResponse:
    return HttpResponseRedirect(reverse("complaint", args=[number]))


def _all() -> Link:
    return Link(words="Complaints", address=reverse("complaints"))
