"""What is asked before a lot goes back into a bath."""

from typing import Any

from django import forms

from shadewright.web.amounts import PriceField, mass_field
from shadewright.web.forms import DayInput, DeedForm, StudioForm, WholeNumberInput
from shadewright.workflows.choices import pots_in_use
from shadewright.workflows.lots import MOST_SKEINS


class KeepForm(DeedForm):
    """The yarn that goes back into a bath, and when; the doses as an address says."""

    mix = forms.CharField(widget=forms.HiddenInput, max_length=300)
    becomes = forms.CharField(widget=forms.HiddenInput, max_length=9, required=False)
    grams = mass_field(
        label="Yarn, weighed dry", help_text="Weigh it: the doses follow."
    )
    skeins = forms.IntegerField(
        required=False,
        min_value=1,
        max_value=MOST_SKEINS,
        widget=WholeNumberInput(),
    )
    pot = forms.ChoiceField(required=False)
    dyed_on = forms.DateField(label="Day", widget=DayInput)

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        pots = [(str(pot.id), pot.words) for pot in pots_in_use()]
        self.fields["pot"].choices = [("", "Not chosen yet"), *pots]  # type: ignore[attr-defined]


class PriceForm(StudioForm):
    """What a skein of this lot would bring."""

    price = PriceField(label="Price of a skein")
    less = forms.IntegerField(
        label="Per cent less as a one-off",
        required=False,
        initial=15,
        min_value=0,
        max_value=100,
        widget=WholeNumberInput(),
    )


class AimForm(StudioForm):
    """The colour that a lot should have, where no standard says."""

    colour = forms.CharField(
        label="The colour it should have",
        max_length=60,
        help_text="Like #a0522d; or L, a, b like 50, 12.5, −8 (D65, 10°, dry).",
    )


class RestockForm(StudioForm):
    """An old lot by its number, or an old skein by its colour."""

    lot = forms.CharField(
        label="Lot on the tag",
        max_length=16,
        required=False,
        help_text="Like 261125-B2.",
    )
    colour = forms.CharField(
        label="Or the colour of the old skein",
        max_length=60,
        required=False,
        help_text="Like 50, 12.5, −8 from a meter (D65, 10°, dry), or #a0522d.",
    )
