"""The form of a dye."""

import re
from typing import Any, ClassVar

from django import forms
from django.core.files.uploadedfile import UploadedFile

from shadewright.records.models import Dye
from shadewright.records.models.catalogue import DyeClass
from shadewright.web.amounts import per_litre_field, temperature_field
from shadewright.web.catalogue.item_form import ItemForm
from shadewright.web.catalogue.sheets import ACCEPTED, safe_sheet
from shadewright.web.catalogue.words import CLASS_MEANINGS

_HEX = re.compile(r"#?[0-9a-fA-F]{6}")
_WITH_METAL = {DyeClass.METAL_COMPLEX_1_1, DyeClass.METAL_COMPLEX_1_2}


class DyeForm(ItemForm):
    """A dye, under the studio's own name for it."""

    solubility_g_per_l = per_litre_field(label="How much dissolves", required=False)
    solubility_at_c = temperature_field(label="Water temperature", required=False)
    data_sheet_file = forms.FileField(
        label="Safety data sheet as a file",
        required=False,
        widget=forms.FileInput(attrs={"accept": ACCEPTED}),
        help_text="A PDF or a picture, up to 10 MB.",
        error_messages={"empty": "The data sheet is empty; send it again."},
    )
    forget_sheet = forms.BooleanField(label="Take the file away", required=False)

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "chart_hex"),
        ("ci_name", "dye_class"),
        ("is_metal_complex", "is_mix_fresh"),
        ("solubility_g_per_l", "solubility_at_c"),
        ("solubility_source",),
        ("hazard_words",),
        ("data_sheet_link",),
        ("data_sheet_file", "forget_sheet"),
        ("notes",),
    )
    side_title = "What the classes mean"
    side = tuple((label, CLASS_MEANINGS[key]) for key, label in DyeClass.choices)

    class Meta:
        model = Dye
        fields = (
            "name",
            "chart_hex",
            "ci_name",
            "dye_class",
            "is_metal_complex",
            "is_mix_fresh",
            "solubility_g_per_l",
            "solubility_at_c",
            "solubility_source",
            "hazard_words",
            "data_sheet_link",
            "data_sheet_file",
            "notes",
        )
        labels = {
            "name": "Your name for it",
            "chart_hex": "Chart colour",
            "dye_class": "Class",
            "solubility_source": "Where that figure is from",
            "data_sheet_link": "Safety data sheet as a link",
        }
        help_texts = {
            "chart_hex": "Like #a0522d. Kept as a guess: a chart is no dyed yarn.",
            "ci_name": "The Colour Index name on the jar, like Acid Red 1.",
            "is_mix_fresh": "It settles when it cools: made for the day only.",
            "hazard_words": "As on the jar; they go on every label.",
        }
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        if not self.instance.data_sheet_file:
            del self.fields["forget_sheet"]

    def clean_chart_hex(self) -> str:
        """Return the colour as #rrggbb in small letters."""
        typed = self.cleaned_data["chart_hex"].strip()
        if not typed:
            return ""
        if not _HEX.fullmatch(typed):
            message = "The chart colour must be six figures or letters a to f, like "
            raise forms.ValidationError(message + "#a0522d.")
        return f"#{typed.lstrip('#').lower()}"

    def clean_data_sheet_file(self) -> object:
        """Keep a file only if it is a PDF or a picture, under a name of ours."""
        sent = self.cleaned_data["data_sheet_file"]
        return safe_sheet(sent) if isinstance(sent, UploadedFile) else sent

    def clean(self) -> dict[str, object]:
        """See that a solubility is whole, and that a metal dye counts as one."""
        sent = super().clean() or self.cleaned_data
        if sent.get("forget_sheet"):
            sent["data_sheet_file"] = False
        if sent.get("dye_class") in _WITH_METAL:
            sent["is_metal_complex"] = True
        if sent.get("solubility_g_per_l") is not None:
            self._require_whole_solubility(sent)
        return sent

    def _require_whole_solubility(self, sent: dict[str, object]) -> None:
        if sent.get("solubility_at_c") is None and "solubility_at_c" not in self.errors:
            self.add_error(
                "solubility_at_c",
                "The temperature is missing: hot water dissolves far more than cold.",
            )
        if not sent.get("solubility_source"):
            self.add_error(
                "solubility_source",
                "The source is missing: the data sheet, the supplier, or your trial.",
            )
