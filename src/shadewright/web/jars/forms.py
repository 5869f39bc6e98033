"""Receiving a jar, weighing it anew, handing it in."""

from typing import Any

from django import forms

from shadewright.web.amounts import (
    PriceField,
    mass_field,
    powder_strength_field,
    reading_field,
)
from shadewright.web.days import PastDayField
from shadewright.web.forms import DeedForm
from shadewright.workflows.dyes import dyes


class ReceiveForm(DeedForm):
    """A jar that comes into the studio."""

    dye = forms.TypedChoiceField(coerce=int)
    powder_g = mass_field(
        label="Powder in the jar",
        help_text="As the supplier says. Do not open the jar for it.",
    )
    lot = forms.CharField(
        label="Lot",
        max_length=40,
        required=False,
        help_text="The supplier’s batch: another lot can dye another shade.",
    )
    opened_on = PastDayField(
        label="Opened on", help_text="Empty while it is still sealed."
    )
    strength_percent = powder_strength_field(
        label="Powder strength",
        help_text="100 % for most jars. Where the supplier calls this lot stronger or "
        "weaker than the standard, write that: at 110 % less is weighed.",
    )
    price = PriceField(label="Price", help_text="What the jar cost.")
    notes = forms.CharField(
        max_length=2000, required=False, widget=forms.Textarea(attrs={"rows": 2})
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        choice = self.fields["dye"]
        assert isinstance(choice, forms.ChoiceField)  # ruff: ignore[assert] - typed
        offered = [(str(dye.id), dye.name) for dye in dyes()]
        choice.choices = [("", "Choose a dye"), *offered]


class WeighForm(DeedForm):
    """What the scale says is left in a jar."""

    reading_g = reading_field(
        label="Powder left", help_text="Without the jar: take its weight off."
    )
    note = forms.CharField(max_length=300, required=False)
