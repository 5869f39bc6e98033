"""What is asked of skeins that go out, and of a complaint."""

from typing import Any

from django import forms

from shadewright.web.forms import DayInput, DeedForm, StudioForm, WholeNumberInput
from shadewright.workflows.buyers.complaints import ComplaintAbout, ComplaintWords
from shadewright.workflows.lot_skeins import Sending
from shadewright.workflows.lots import MOST_SKEINS


def lot_field(
    *, required: bool = False, help_text: str = "Like 261125-B2."
) -> forms.CharField:
    """Return a field for the number on a tag, in capitals or not."""
    return forms.CharField(
        label="Lot on the tag",
        max_length=16,
        required=required,
        help_text=help_text,
        widget=forms.TextInput(
            attrs={"autocapitalize": "characters", "autocomplete": "off"}
        ),
    )


_OR_WHO_ORDERED = "A name or a shop. Empty: to whoever gave the order below."


class OutForm(DeedForm):
    """Skeins of a lot that go to somebody."""

    skeins = forms.IntegerField(
        min_value=1,
        max_value=MOST_SKEINS,
        widget=WholeNumberInput(),
    )
    to_whom = forms.CharField(
        label="To whom",
        max_length=80,
        help_text="A name, a shop, or “the fair at …”.",
        widget=forms.TextInput(attrs={"list": "buyers", "autocomplete": "off"}),
    )
    reach = forms.CharField(
        label="How to reach them",
        max_length=120,
        required=False,
        help_text="For a recall: mail, phone, or the number of a web order.",
    )
    line = forms.ChoiceField(label="For an order", required=False)
    note = forms.CharField(max_length=300, required=False)

    def __init__(
        self,
        *args: Any,  # ruff: ignore[any-type]
        lines: tuple[tuple[str, str], ...],
        **kwargs: Any,  # ruff: ignore[any-type]
    ) -> None:
        super().__init__(*args, **kwargs)
        if lines:
            choices = [("", "No order"), *lines]
            self.fields["line"].choices = choices  # type: ignore[attr-defined]
            self.fields["to_whom"].required = False
            self.fields["to_whom"].help_text = _OR_WHO_ORDERED
        else:
            del self.fields["line"]

    @property
    def said(self) -> Sending:
        """What was typed, for the verb."""
        sent = self.cleaned_data
        line = sent.get("line")
        return Sending(
            skeins=sent["skeins"],
            to_whom=sent["to_whom"],
            reach=sent["reach"],
            line_id=int(line) if line else None,
            note=sent["note"],
        )


class ComplaintForm(DeedForm):
    """What a buyer wrote."""

    from_whom = forms.CharField(label="From whom", max_length=80)
    about = forms.ChoiceField(choices=ComplaintAbout.choices, widget=forms.RadioSelect)
    lot = lot_field(help_text="Like 261125-B2. Empty if the tag is gone.")
    said = forms.CharField(
        label="What they wrote",
        max_length=4000,
        required=False,
        widget=forms.Textarea(attrs={"rows": 5}),
    )
    came_on = forms.DateField(label="Came on", required=False, widget=DayInput)
    photo = forms.FileField(
        required=False,
        widget=forms.FileInput(attrs={"accept": "image/*"}),
        help_text="JPEG, PNG or WebP. The place and the time that a phone writes "
        "into it are left out.",
        error_messages={"empty": "The photo is empty; take it again."},
    )

    @property
    def words(self) -> ComplaintWords:
        """What was typed, for the verb."""
        sent = self.cleaned_data
        photo = sent["photo"]
        return ComplaintWords(
            from_whom=sent["from_whom"],
            about=ComplaintAbout(sent["about"]),
            lot=sent["lot"],
            said=sent["said"],
            came_on=sent["came_on"],
            photo=b"" if photo is None else photo.read(),
        )


class NameLotForm(StudioForm):
    """The lot of a complaint, once the buyer found the tag."""

    lot = lot_field(required=True)


class CloseForm(StudioForm):
    """How a complaint ended."""

    outcome = forms.CharField(
        label="How it ended",
        max_length=300,
        help_text="New skeins sent, money back, nothing found.",
    )
