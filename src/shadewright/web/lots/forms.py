"""What is said of a lot: at the finish of its bath, and later."""

from typing import Any

from django import forms

from shadewright.core.quantities import require_between
from shadewright.core.quantities.reading import Asked, written
from shadewright.web.amounts import AmountField, mass_field
from shadewright.web.forms import DeedForm, StudioForm
from shadewright.workflows.lots import MOST_SKEINS, ColourEvidence, Grade, LotWords

_MOST_MINUTES = 100_000.0


def _skeins(text: str, *, name: str, default_unit: str) -> float:
    return _whole(text, name, default_unit, MOST_SKEINS)


def _minutes(text: str, *, name: str, default_unit: str) -> float:
    return _whole(text, name, default_unit, _MOST_MINUTES)


def _whole(text: str, name: str, unit: str, most: float) -> float:
    asked = Asked(name=name, example=f"a whole number, such as 6 {unit}")
    found = written(text, asked=asked)
    if found.unit not in {"", unit} or found.number % 1:
        raise asked.refusal(text)
    return require_between(found.number, least=0.0, most=most, unit=unit, name=name)


class LotForm(DeedForm):
    """What a lot is now; each field is named as its verb's argument."""

    grade = forms.ChoiceField(
        label="Grade",
        choices=[(grade.value, grade.label) for grade in Grade],
        widget=forms.RadioSelect,
    )
    skeins = AmountField(
        unit="skeins",
        read=_skeins,
        label="Skeins",
        required=False,
        help_text="All that came out of the bath, sold ones too.",
    )
    grams = mass_field(
        label="Dry weight",
        required=False,
        help_text="Empty while it is not weighed yet.",
    )
    place = forms.CharField(
        max_length=80,
        required=False,
        help_text="Where it hangs or lies.",
        widget=forms.TextInput(attrs={"list": "places", "autocomplete": "off"}),
    )
    minutes = AmountField(
        unit="min",
        read=_minutes,
        label="Minutes of your hands",
        required=False,
        help_text="Not the pot’s time: yours. For the cost.",
    )
    note = forms.CharField(max_length=300, required=False)

    def __init__(self, *args: Any, is_timed: bool, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        if not is_timed:
            del self.fields["minutes"]

    @property
    def said(self) -> LotWords:
        """What was typed, for the verb."""
        sent = self.cleaned_data
        skeins = sent["skeins"]
        return LotWords(
            grade=Grade(sent["grade"]),
            grams=sent["grams"],
            skeins=None if skeins is None else int(skeins),
            place=sent["place"],
            minutes=sent.get("minutes"),
            note=sent["note"],
        )


class FinishForm(LotForm):
    """The end of a bath; asks once where nothing says that it was dyed."""

    is_sure = forms.BooleanField(label="Write the lot all the same", required=False)

    def __init__(self, *args: Any, is_doubtful: bool, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        if not is_doubtful:
            del self.fields["is_sure"]


class ColourForm(DeedForm):
    """A colour, and what it rests on."""

    colour = forms.CharField(
        max_length=60,
        help_text="Like #a0522d; or L, a, b like 50, 12.5, −8 (D65, 10°, dry).",
    )
    evidence = forms.ChoiceField(
        label="How it was found",
        choices=[(one.value, one.label.capitalize()) for one in ColourEvidence],
        widget=forms.RadioSelect,
    )


class PhotoForm(DeedForm):
    """A photo of the dry yarn."""

    photo = forms.FileField(
        widget=forms.FileInput(attrs={"accept": "image/*"}),
        help_text="JPEG, PNG or WebP, up to 12 MB. The place and the time that a "
        "phone writes into it are left out.",
        error_messages={"empty": "The photo is empty; take it again."},
    )


class CompareForm(StudioForm):
    """Two lots by their numbers."""

    a = forms.CharField(label="This lot", max_length=16)
    b = forms.CharField(label="Beside this one", max_length=16)
