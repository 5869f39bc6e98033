"""The form of a water, and which one baths are usually filled with."""

from typing import ClassVar

from django import forms
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from shadewright.core.baths.acidity import require_alkalinity
from shadewright.core.quantities import require_between
from shadewright.core.quantities.reading import Asked, written
from shadewright.records.models import Water
from shadewright.web.amounts import AmountField
from shadewright.web.catalogue.item_form import ItemForm
from shadewright.web.days import PastDayField
from shadewright.web.toasts import say
from shadewright.workflows.waters import make_usual


def carbonate(text: str, *, name: str, default_unit: str = "mg/l") -> float:
    """Return mg/l as calcium carbonate, from none to what no tap gives."""
    asked = Asked(name=name, example="a number in mg/l as calcium carbonate, like 120")
    found = written(text, asked=asked)
    if found.unit not in {"", "mg/l", "ppm"}:
        raise asked.refusal(text)
    del default_unit  # printed beside the field
    return require_alkalinity(found.number, name=name, argument="")


def ph(text: str, *, name: str, default_unit: str = "") -> float:
    """Return a pH from 0 to 14."""
    asked = Asked(name=name, example="a number from 0 to 14, like 7.6")
    found = written(text, asked=asked)
    if found.unit:
        raise asked.refusal(text)
    return require_between(
        found.number, least=0.0, most=14.0, unit=default_unit, name=name
    )


class WaterForm(ItemForm):
    """A water that baths are filled with."""

    alkalinity_mg_per_l = AmountField(
        unit="mg/l",
        read=carbonate,
        label="Alkalinity",
        required=False,
        help_text="As calcium carbonate: it takes up acid. In the water supplier’s "
        "report, perhaps as bicarbonate: times 0.82.",
    )
    hardness_mg_per_l = AmountField(
        unit="mg/l",
        read=carbonate,
        label="Hardness",
        required=False,
        help_text="As calcium carbonate. 1 German degree is 17.8 mg/l.",
    )
    ph = AmountField(unit="", read=ph, label="pH from the tap", required=False)
    tested_on = PastDayField(label="Report or test of")

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "tested_on"),
        ("alkalinity_mg_per_l", "hardness_mg_per_l"),
        ("ph",),
        ("notes",),
    )

    class Meta:
        model = Water
        fields = (
            "name",
            "tested_on",
            "alkalinity_mg_per_l",
            "hardness_mg_per_l",
            "ph",
            "notes",
        )
        labels = {"name": "Your name for it"}
        help_texts = {"name": "Like tap, or rain butt."}
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}


@require_POST
def use_water(request: HttpRequest, item_id: int) -> HttpResponse:
    """Fill baths with this water where nothing else is said."""
    chosen = make_usual(item_id)
    say(request, f"Baths are filled with {chosen.name} unless you say otherwise")
    return HttpResponseRedirect(reverse("water", args=[item_id]))
