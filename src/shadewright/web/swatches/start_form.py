"""The form that a palette begins from: one yarn, and a row for each swatch."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.core.mixing.swatches import MOST_DEPTH_PERCENT
from shadewright.core.quantities import percent, require_above_zero
from shadewright.web.amounts import AmountField
from shadewright.web.swatches.colour_fields import (
    ColourCell,
    pick_field,
    typed_field,
)
from shadewright.web.swatches.many_colours import ManyColoursForm
from shadewright.web.swatches.on_base import OnBaseForm
from shadewright.workflows.bases import bases
from shadewright.workflows.shades.starting import StartRow, StartWords

FIRST_ROWS, MORE_ROWS, MOST_ROWS = 6, 3, 24
_BARE = "bare"


@dataclass(frozen=True, kw_only=True)
class SwatchRow:
    """The fields of one swatch."""

    number: int
    dye: BoundField
    depth: BoundField
    colour: ColourCell


def swatch_depth(text: str, *, name: str, default_unit: str = "%") -> float:
    """Return the depth of a swatch: above 0, at most what a palette can learn."""
    return percent(text, name=name, default_unit=default_unit, guard=_learnable)


def _learnable(value: float, /, *, name: str, argument: str) -> float:
    return require_above_zero(
        value, most=MOST_DEPTH_PERCENT, unit="%", name=name, argument=argument
    )


class StartForm(OnBaseForm, ManyColoursForm):
    """All of it on one page; rows that stay empty are passed over."""

    rows = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        said = data if data is not None else initial or {}
        self.count = _row_count(said.get("rows"))
        first = {"base": _only_base(), **(initial or {}), "rows": self.count}
        super().__init__(data, initial=first)
        self.ask_way()
        self.fields |= _colour_fields(_BARE, "Bare yarn", "the colour of the bare yarn")
        for number in self._numbers:
            self.fields |= _swatch_fields(number)
        self.speak_plainly()

    @property
    def bare(self) -> ColourCell:
        """The colour of the undyed yarn."""
        return self.cell(_BARE, "the bare yarn")

    @property
    def swatch_rows(self) -> tuple[SwatchRow, ...]:
        """The rows of the swatches."""
        return tuple(
            SwatchRow(
                number=n,
                dye=self[f"dye_{n}"],
                depth=self[f"depth_{n}"],
                colour=self.cell(str(n), f"swatch {n}"),
            )
            for n in self._numbers
        )

    def clean(self) -> dict[str, Any]:
        """See that each row is whole and each colour can be read."""
        sent = super().clean() or self.cleaned_data
        for number in self._numbers:
            self._clean_row(number)
        self.clean_colour(_BARE)
        if not self.errors and not any(row.doses for row in self._rows()):
            self.add_error(
                "dye_1",
                "No swatch is filled in yet: one dye, its depth and its colour.",
            )
        return sent

    def words(self) -> StartWords:
        """Return what the form says."""
        sent = self.cleaned_data
        return StartWords(
            base=sent["base"], fibres=sent["fibres"], rows=tuple(self._rows())
        )

    @property
    def _numbers(self) -> range:
        return range(1, self.count + 1)

    def _clean_row(self, number: int) -> None:
        dye, colour = self.cleaned_data.get(f"dye_{number}"), self.said(str(number))
        if dye and not colour:
            self.add_error(
                f"colour_{number}", f"The colour of {dye} is missing: pick or type it."
            )
        if colour and not dye:
            self.add_error(f"dye_{number}", "The dye is missing: write its name.")
        self.clean_colour(str(number))

    def _rows(self) -> Iterator[StartRow]:
        if self.said(_BARE):
            yield StartRow(doses=(), read=self.read(_BARE))
        for number in self._numbers:
            dye = self.cleaned_data.get(f"dye_{number}")
            if dye and self.said(str(number)):
                depth = self.cleaned_data[f"depth_{number}"]
                yield StartRow(doses=((dye, depth),), read=self.read(str(number)))


def _swatch_fields(number: int) -> dict[str, forms.Field]:
    attrs = {
        "list": "known-dyes",
        "autocomplete": "off",
        "autocapitalize": "words",
    }
    return {
        f"dye_{number}": forms.CharField(
            label="Dye",
            max_length=60,
            required=False,
            widget=forms.TextInput(attrs=attrs),
        ),
        f"depth_{number}": AmountField(
            unit="%", read=swatch_depth, label="Depth", initial="1"
        ),
        **_colour_fields(str(number), "Colour", f"the colour of swatch {number}"),
    }


def _colour_fields(key: str, label: str, what: str) -> dict[str, forms.Field]:
    return {f"pick_{key}": pick_field(what), f"colour_{key}": typed_field(label)}


def _only_base() -> str:
    known = bases()
    return known[0].name if len(known) == 1 else ""


def _row_count(said: object) -> int:
    text = str(said or "")
    count = int(text) if text.isdecimal() and len(text) < 4 else FIRST_ROWS
    return min(max(count, 1), MOST_ROWS)
