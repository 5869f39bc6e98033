"""Entering a bottle that stands on the shelf already."""

from datetime import date, timedelta

from django import forms

from shadewright.web.amounts import strength_field, volume_field
from shadewright.web.days import PastDayField
from shadewright.web.forms import DeedForm
from shadewright.workflows.stamps import today

_ABOUT = {
    "": "not known",
    "0": "today",
    "7": "about a week ago",
    "30": "about a month ago",
    "91": "about 3 months ago",
    "182": "about 6 months ago",
    "365": "about a year ago",
    "730": "about 2 years ago",
}


class EnterForm(DeedForm):
    """A bottle as it is: what its label says, what is left, how old it may be."""

    dye = forms.CharField(
        max_length=60,
        widget=forms.TextInput(
            attrs={"list": "known-dyes", "autocomplete": "off", "autofocus": True}
        ),
    )
    is_new_dye = forms.BooleanField(
        label="A new dye: add it under this name", required=False
    )
    strength_percent = strength_field(label="Strength as labelled")
    volume_ml = volume_field(label="Left in it")
    made_about = forms.ChoiceField(
        label="Made", choices=list(_ABOUT.items()), required=False
    )
    made_on = PastDayField(label="Or on the day")
    place = forms.CharField(
        max_length=40, required=False, help_text="Shelf, box or fridge."
    )

    def made(self) -> tuple[date | None, bool]:
        """Return the day it was made, and whether that is only about."""
        exact, about = self.cleaned_data["made_on"], self.cleaned_data["made_about"]
        if exact is not None or not about:
            return exact, False
        days = int(about)
        return today() - timedelta(days=days), days > 0
