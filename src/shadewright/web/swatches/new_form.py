"""What is asked of a swatch that no bath of the studio tells of."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.web.amounts import AmountField
from shadewright.web.days import PastDayField
from shadewright.web.swatches.on_base import OnBaseForm
from shadewright.web.swatches.read_form import ReadForm
from shadewright.web.swatches.start_form import swatch_depth
from shadewright.workflows.shades.entering_swatches import SwatchWords, last_base

MOST_DYES = 4


@dataclass(frozen=True, kw_only=True)
class DyeRow:
    """The fields of one dye."""

    dye: BoundField
    depth: BoundField


class NewForm(OnBaseForm, ReadForm):
    """A swatch with its doses and, if it was read, its colour."""

    label = forms.CharField(
        max_length=60, required=False, help_text="What stands on its tag."
    )
    dyed_on = PastDayField(
        label="Dyed on", help_text="Swatches of one day share what that day was off by."
    )
    note = forms.CharField(max_length=300, required=False)

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial={"base": last_base(), **(initial or {})})
        for number in range(1, MOST_DYES + 1):
            self.fields |= _dye_fields(number)
        self.speak_plainly()

    @property
    def dye_rows(self) -> tuple[DyeRow, ...]:
        """The rows of the dyes; all empty, it is bare yarn."""
        return tuple(
            DyeRow(dye=self[f"dye_{n}"], depth=self[f"depth_{n}"])
            for n in range(1, MOST_DYES + 1)
        )

    def clean(self) -> dict[str, Any]:
        """See that each row is whole."""
        sent = super().clean() or self.cleaned_data
        for number in range(1, MOST_DYES + 1):
            self._clean_row(number)
        return sent

    def swatch_words(self) -> SwatchWords:
        """Return what the form says of the swatch."""
        sent = self.cleaned_data
        rows = [(sent[f"dye_{n}"], sent[f"depth_{n}"]) for n in range(1, MOST_DYES + 1)]
        return SwatchWords(
            base=sent["base"],
            fibres=sent["fibres"],
            doses=tuple((dye, depth) for dye, depth in rows if dye),
            label=sent["label"],
            dyed_on=sent["dyed_on"],
            note=sent["note"],
        )

    def _clean_row(self, number: int) -> None:
        dye, depth = f"dye_{number}", f"depth_{number}"
        sent = self.cleaned_data
        if sent.get(dye) and sent.get(depth) is None and depth not in self.errors:
            self.add_error(depth, "The depth is missing: type it in %.")
        if sent.get(depth) is not None and not sent.get(dye):
            self.add_error(dye, "The dye is missing: write its name.")


def _dye_fields(number: int) -> dict[str, forms.Field]:
    attrs = {"list": "known-dyes", "autocomplete": "off", "autocapitalize": "words"}
    return {
        f"dye_{number}": forms.CharField(
            label="Dye",
            max_length=60,
            required=False,
            widget=forms.TextInput(attrs=attrs),
        ),
        f"depth_{number}": AmountField(
            unit="%", read=swatch_depth, label="Depth", required=False
        ),
    }
