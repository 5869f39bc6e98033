"""What is asked before labels are printed, and while a bottle is looked for."""

from collections.abc import Mapping
from typing import Any

from django import forms

from shadewright.core.quantities import amount_text
from shadewright.paper import LABEL_FORMATS
from shadewright.web.forms import StudioForm, WholeNumberInput
from shadewright.workflows.shelf import ShelfBottle, shelf

Choices = list[tuple[str, str]]


class LabelsForm(StudioForm):
    """Which bottles, on what paper, and where on the sheet to begin."""

    codes = forms.MultipleChoiceField(
        label="Bottles", widget=forms.CheckboxSelectMultiple
    )
    format = forms.ChoiceField(
        label="Label paper", choices=[(one.key, one.name) for one in LABEL_FORMATS]
    )
    skip_first = forms.IntegerField(
        label="Labels already used on the sheet",
        initial=0,
        widget=WholeNumberInput(),
        help_text="Counted row by row from the top left; 0 for a whole sheet.",
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        self.fields["codes"].choices = _grouped(shelf())  # type: ignore[attr-defined]
        self.fields["codes"].error_messages["required"] = "Tick at least one bottle."
        self.fields["skip_first"].error_messages["invalid"] = (
            "The number of labels already used is a whole number, such as 0 or 5."
        )


class CodeForm(StudioForm):
    """The code on a label, typed."""

    code = forms.CharField(
        label="Code or number",
        max_length=60,
        widget=forms.TextInput(
            attrs={
                "autocomplete": "off",
                "autocapitalize": "characters",
                "autocorrect": "off",
                "spellcheck": "false",
                "enterkeyhint": "go",
            }
        ),
    )


class PhotoForm(StudioForm):
    """A photo of a label."""

    photo = forms.FileField(
        label="Photo of the label or card",
        widget=forms.FileInput(attrs={"accept": "image/*", "capture": "environment"}),
        error_messages={"empty": "The photo is an empty file; take it again."},
    )


def _grouped(bottles: tuple[ShelfBottle, ...]) -> list[tuple[str, Choices]]:
    wanted = [bottle for bottle in bottles if bottle.wants_label]
    others = [bottle for bottle in bottles if not bottle.wants_label]
    groups = (("Wanting a label", wanted), ("With a label that holds", others))
    return [(title, [_choice(one) for one in part]) for title, part in groups if part]


def _choice(bottle: ShelfBottle) -> tuple[str, str]:
    strength = amount_text(bottle.strength_percent, "%")
    words = f"{bottle.code} · {bottle.dye_name}, {strength}"
    said = bottle.labelled_percent
    if said is not None and bottle.wants_label:
        words += f"; its label says {amount_text(said, '%')}"
    return bottle.code, words
