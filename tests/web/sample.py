"""An address book for the tests of the frame: our own, and a page of every part."""

from dataclasses import dataclass
from pathlib import Path
from typing import ClassVar

from django import forms
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.template import engines
from django.urls import include, path

from shadewright import drawing
from shadewright.core.solutions.age import AgeClass
from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.web.forms import DayInput, DeedForm, NumberInput
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution, Chip, Measured, Step, measured, steps
from shadewright.web.sorting import Order, arrange, read_order
from shadewright.web.toasts import say

HOSTILE = "<script>alert(1)</script>'\"&"
SOURCE = Path(__file__).with_name("sample.html").read_text(encoding="utf-8")


class WeighForm(DeedForm):
    powder_g = forms.FloatField(label="Powder weighed", widget=NumberInput())
    water = forms.CharField(required=False, max_length=20, help_text="Tap or rain")
    made_on = forms.DateField(label="Day made", widget=DayInput())
    look = forms.ChoiceField(
        choices=[("clear", "Clear"), ("settled", "Settled")], widget=forms.RadioSelect
    )
    is_fresh = forms.BooleanField(label="Mix fresh for the day", required=False)
    notes = forms.CharField(required=False, widget=forms.Textarea)


@dataclass(frozen=True, kw_only=True)
class Row:
    dye: str
    left_ml: float
    age_days: int | None


@dataclass(frozen=True, kw_only=True)
class PartsPage(Page):
    template: ClassVar[str] = "sample.html"
    place: ClassVar[str] = "Shelf"

    form: WeighForm
    order: Order
    rows: tuple[Row, ...]
    bottles: tuple[drawing.Bottle, ...]
    ages: tuple[AgeClass, ...]
    strengths: tuple[Measured, ...]
    chips: tuple[Chip, ...]
    notes: tuple[Caution, ...]
    steps: tuple[Step, ...]


ROWS = (
    Row(dye="Slate", left_ml=85, age_days=21),
    Row(dye="Gorse", left_ml=440, age_days=4),
    Row(dye=HOSTILE, left_ml=0.5, age_days=None),
)
KEYS = {
    "dye": lambda row: row.dye.lower(),
    "left": lambda row: row.left_ml,
    "age": lambda row: row.age_days,
}
BOTTLES = tuple(
    drawing.Bottle(code=code, full=full, age=age, reserved=draw, is_settled=lees)
    for code, full, age, draw, lees in (
        ("G4R", 0.88, AgeClass.FRESH, 0.1, False),
        ("B5X", 0.6, AgeClass.WEEKS, 0.0, False),
        ("N8P", 0.5, AgeClass.OLD, 0.0, True),
        ("P6H", 0.2, AgeClass.PAST, 0.0, False),
    )
)
STRENGTHS = (
    measured(1.04, "%"),
    Measured(number="1.02", unit="%", spread="0.02", relative_spread=0.017),
    Measured(number="1.0", unit="%", spread="0.2", relative_spread=0.2),
)
CHIPS = (
    Chip(words="clear", kind="good"),
    Chip(words="look first", kind="caution"),
    Chip(words="settled", kind="problem"),
    Chip(words="guess", kind="guess"),
    Chip(words=HOSTILE),
)
NOTES = (
    Caution(
        title="Dry dye powder is open",
        text="Respirator (N95/FFP2 or better), goggles and gloves on until it is wet. "
        "Follow the dye’s safety data sheet and your local rules.",
    ),
    Caution(title=HOSTILE, text="Nothing was written down.", kind="problem"),
)
STEPS = ("Lay out", "Weigh the powder", "Paste", "Label")


def parts(request: HttpRequest) -> HttpResponse:
    sent = request.POST if request.method == "POST" else None
    form = WeighForm(sent)
    if sent is not None and form.is_valid():
        say(request, f"Weighed {form.cleaned_data['powder_g']} g", undo="/sample/undo/")
        return redirect("/sample/")
    if sent is not None and "powder_g" in form.cleaned_data:
        form.refuse(ConflictError(why="The jar holds less than that."))
    order = read_order(request, KEYS, default="dye")
    page = PartsPage(
        title="Parts",
        fact="Every part once.",
        crumbs=(Link(words="Shelf", address="/shelf/"),),
        form=form,
        order=order,
        rows=arrange(ROWS, order, KEYS),
        bottles=BOTTLES,
        ages=tuple(AgeClass),
        strengths=STRENGTHS,
        chips=CHIPS,
        notes=NOTES,
        steps=steps(STEPS, now=2),
    )
    template = engines["django"].from_string(SOURCE)
    status = 422 if form.errors else 200
    return HttpResponse(template.render({"page": page}, request), status=status)


def undo(request: HttpRequest) -> HttpResponse:
    say(request, "Taken back")
    return redirect("/sample/")


def lost(_request: HttpRequest) -> HttpResponse:
    raise NotFoundError(kind="bottle", key=HOSTILE)


def conflict(_request: HttpRequest) -> HttpResponse:
    raise ConflictError(why="The bottle has been poured away.")


def out_of_range(_request: HttpRequest) -> HttpResponse:
    raise OutOfRangeError(name="Strength", given="-1 %", allowed="above 0 %")


def broken(_request: HttpRequest) -> HttpResponse:
    message = "the secret inside"
    raise ZeroDivisionError(message)


def forbidden(_request: HttpRequest) -> HttpResponse:
    raise PermissionDenied


urlpatterns = [
    path("", include("shadewright.web.urls")),
    path("sample/", parts),
    path("sample/undo/", undo),
    path("sample/lost/", lost),
    path("sample/conflict/", conflict),
    path("sample/range/", out_of_range),
    path("sample/broken/", broken),
    path("sample/forbidden/", forbidden),
]
handler400 = "shadewright.web.faults.bad_request"
handler403 = "shadewright.web.faults.forbidden"
handler404 = "shadewright.web.faults.not_found"
handler500 = "shadewright.web.faults.broken"
