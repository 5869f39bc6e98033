"""What is asked for tags and tests."""

from typing import Any

from django import forms

from shadewright.paper.skein_tags import MOST_TAGS, TAG_SHAPES
from shadewright.web.forms import DayInput, DeedForm, StudioForm, WholeNumberInput
from shadewright.workflows.judging.fastness import CLOTHS, FastnessKind, FastnessWords
from shadewright.workflows.tags.texts import MakerWords, Region, YarnWords

_GRADES = [("", "–"), *((f"{n / 2:g}", f"{n / 2:g}") for n in range(10, 1, -1))]
_LINES = forms.Textarea(attrs={"rows": 2})


class MakerForm(StudioForm):
    """What every tag says."""

    name = forms.CharField(label="Maker", max_length=80, required=False)
    address = forms.CharField(max_length=200, required=False)
    origin = forms.CharField(
        label="Where it was dyed",
        max_length=160,
        required=False,
        help_text="Honest words, such as “Dyed by hand in … ; yarn spun in …”.",
    )
    care = forms.CharField(
        label="Care, in words",
        max_length=300,
        required=False,
        widget=_LINES,
        help_text="Words only: care symbols are licensed marks.",
    )

    @property
    def said(self) -> MakerWords:
        """What was typed."""
        return MakerWords(**self.cleaned_data)


class YarnForm(StudioForm):
    """What tags of one yarn say."""

    fibre_content = forms.CharField(
        max_length=200,
        required=False,
        help_text="By the names that your buyers’ region wants, in per cent.",
    )
    care = forms.CharField(
        label="Care of this yarn",
        max_length=300,
        required=False,
        widget=_LINES,
        help_text="Empty: as on all tags.",
    )

    @property
    def said(self) -> YarnWords:
        """What was typed."""
        return YarnWords(**self.cleaned_data)


class PrintForm(StudioForm):
    """How many tags, and cut how."""

    count = forms.IntegerField(
        label="How many",
        min_value=1,
        max_value=MOST_TAGS,
        widget=WholeNumberInput(),
    )
    shape = forms.ChoiceField(choices=[(each.key, each.name) for each in TAG_SHAPES])
    paper = forms.ChoiceField(choices=[("a4", "A4"), ("letter", "US Letter")])


class RegionForm(StudioForm):
    """What a region asks of a tag."""

    name = forms.CharField(label="Region", max_length=60)
    asks = forms.CharField(
        label="What it asks, a line each",
        required=False,
        max_length=4000,
        widget=forms.Textarea(attrs={"rows": 8}),
    )
    source = forms.CharField(
        max_length=200, required=False, help_text="Where you read it."
    )
    checked_on = forms.DateField(label="Checked on", required=False, widget=DayInput)
    is_used = forms.BooleanField(label="We sell there", required=False)

    def region(self, region_id: int = 0) -> Region:
        """Return what was typed."""
        sent = self.cleaned_data
        return Region(
            id=region_id,
            name=sent["name"],
            asks=tuple(sent["asks"].splitlines()),
            source=sent["source"],
            checked_on=sent["checked_on"],
            is_used=sent["is_used"],
        )


class TestForm(DeedForm):
    """What came of a bleed or rub test."""

    __test__ = False

    kind = forms.ChoiceField(
        label="What was tried", choices=FastnessKind.choices, widget=forms.RadioSelect
    )
    change = forms.ChoiceField(
        label="Change of the yarn", choices=_GRADES, required=False
    )
    photo = forms.FileField(
        label="Photo of the cloths",
        required=False,
        widget=forms.FileInput(attrs={"accept": "image/*"}),
        error_messages={"empty": "The photo is empty; take it again."},
    )
    note = forms.CharField(max_length=300, required=False)

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        for cloth in CLOTHS:
            self.fields[f"on_{cloth}"] = forms.ChoiceField(
                label=f"White {cloth}", choices=_GRADES, required=False
            )
        self.speak_plainly()

    @property
    def cloths(self) -> list[Any]:
        """The fields of the cloths, for the template."""
        return [self[f"on_{cloth}"] for cloth in CLOTHS]

    @property
    def said(self) -> FastnessWords:
        """What was typed."""
        sent = self.cleaned_data
        photo = sent["photo"]
        return FastnessWords(
            kind=FastnessKind(sent["kind"]),
            staining={
                cloth: float(sent[f"on_{cloth}"])
                for cloth in CLOTHS
                if sent[f"on_{cloth}"]
            },
            change=float(sent["change"]) if sent["change"] else None,
            note=sent["note"],
            photo=b"" if photo is None else photo.read(),
        )
