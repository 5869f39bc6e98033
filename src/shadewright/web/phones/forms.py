"""What a phone is asked at the door."""

from django import forms

from shadewright.web.forms import StudioForm


class DoorForm(StudioForm):
    """The code that the desk shows, and a name for the phone."""

    code = forms.CharField(
        label="The code at the desk",
        max_length=20,
        widget=forms.TextInput(
            attrs={"inputmode": "numeric", "autocomplete": "one-time-code"}
        ),
    )
    name = forms.CharField(
        label="A name for this phone",
        max_length=40,
        help_text="It stands on the desk’s list, such as Ines’ phone.",
    )
