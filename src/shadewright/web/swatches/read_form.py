"""What is asked of a colour: the simplest first, the rest folded away."""

from collections.abc import Mapping
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.web.forms import DeedForm
from shadewright.web.swatches.colour_fields import (
    ColourCell,
    pick_field,
    said_colour,
    way_field,
    way_of,
)
from shadewright.web.swatches.words import WHY_NOT_WET
from shadewright.workflows.shades.readings import ReadWords

_FURTHER = {"A": "Lab under lamp light (A)", "FL11": "Lab under shop tubes (FL11)"}
"""Lights under which some meters give Lab too."""


def _area(rows: int, **attrs: str) -> forms.Textarea:
    plain = {"autocomplete": "off", "autocapitalize": "off", "spellcheck": "false"}
    return forms.Textarea(attrs={"rows": rows, **plain, **attrs})


def _further(light: str) -> forms.CharField:
    return forms.CharField(
        label=_FURTHER[light],
        max_length=60,
        required=False,
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )


class ReadForm(DeedForm):
    """One colour, however it was come by."""

    pick = pick_field("the colour")
    texts = forms.CharField(
        label="Colour",
        max_length=2000,
        required=False,
        widget=_area(2, **{"data-typed": ""}),
        help_text="Pick it, or type it like #a0522d. From a meter type L, a, b like "
        "50, 12.5, −8; several readings, one a line, are averaged.",
    )
    is_wet = forms.BooleanField(
        label="The yarn is wet", required=False, help_text=WHY_NOT_WET
    )
    spectrum_text = forms.CharField(
        label="A spectrum",
        max_length=20_000,
        required=False,
        widget=_area(3),
        help_text="As the meter’s program copies it: the bands from 400 to 700 nm by "
        "10 nm, one after the other, or a whole CGATS text.",
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        self.fields["way"] = way_field("How did you get it?")
        self.fields |= {f"further_{light}": _further(light) for light in _FURTHER}
        self.speak_plainly()

    @property
    def colour(self) -> ColourCell:
        """The picker and the words."""
        return ColourCell(pick=self["pick"], typed=self["texts"], what="the yarn")

    @property
    def further(self) -> tuple[BoundField, ...]:
        """The fields of the further lights."""
        return tuple(self[f"further_{light}"] for light in _FURTHER)

    @property
    def has_more(self) -> bool:
        """Whether what is folded away holds something."""
        names = (*(f"further_{light}" for light in _FURTHER), "spectrum_text")
        return any(self[name].value() or self[name].errors for name in names)

    @property
    def is_said(self) -> bool:
        """Whether any colour was given at all."""
        return bool(self._texts() or self.cleaned_data.get("spectrum_text"))

    def read_words(self) -> ReadWords:
        """Return what the form says of the colour."""
        sent = self.cleaned_data
        way = way_of(sent["way"])
        further = {light: sent[f"further_{light}"] for light in _FURTHER}
        return ReadWords(
            read_by=way.read_by,
            texts=self._texts(),
            meter_id=way.meter_id,
            further={light: text for light, text in further.items() if text},
            spectrum_text=sent["spectrum_text"],
            is_wet=sent["is_wet"],
        )

    def _texts(self) -> tuple[str, ...]:
        said = said_colour(
            typed=self.cleaned_data.get("texts") or "",
            picked=self.cleaned_data.get("pick") or "",
        )
        return tuple(line.strip() for line in said.splitlines() if line.strip())
