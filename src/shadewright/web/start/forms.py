"""What a new studio is asked, and who joins it."""

from django import forms

from shadewright.web.amounts import PriceField, altitude_field
from shadewright.web.forms import StudioForm


class FoundForm(StudioForm):
    """A new studio: its name, its first person, its water."""

    name = forms.CharField(label="The studio’s name", max_length=80)
    person = forms.CharField(
        label="Your name",
        max_length=40,
        help_text="It stands beside what you write down. Others can join later.",
    )
    water = forms.CharField(
        label="The water you dye with",
        max_length=80,
        required=False,
        help_text="Tap, rain, softened: it is noted with each stock, because "
        "another water can give another shade.",
    )


class PersonForm(StudioForm):
    """Somebody who joins."""

    name = forms.CharField(label="Name", max_length=40)


class RateForm(StudioForm):
    """What an hour of work is worth."""

    rate_per_hour = PriceField(
        label="One hour",
        help_text="In your own money. Empty: no work is reckoned, and no minutes are "
        "asked for at the end of a bath.",
    )


class AltitudeForm(StudioForm):
    """How high the studio stands."""

    altitude_m = altitude_field(
        label="Height above the sea",
        required=False,
        help_text="In metres, or feet with ft behind it. Empty: at sea level.",
    )
