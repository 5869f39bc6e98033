"""The colours of a set, asked for on one page: a line for each swatch not yet read."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.forms import CharField

from shadewright.web.swatches.colour_fields import (
    ColourCell,
    pick_field,
    typed_field,
)
from shadewright.web.swatches.many_colours import ManyColoursForm
from shadewright.workflows.shades.plan_pages import SetSwatch
from shadewright.workflows.shades.plan_results import SwatchResult


@dataclass(frozen=True, kw_only=True)
class ResultRow:
    """A swatch and the field of its colour."""

    swatch: SetSwatch
    colour: ColourCell


class ResultsForm(ManyColoursForm):
    """Colours in the order of the set; a line that stays empty is passed over."""

    def __init__(
        self, swatches: Sequence[SetSwatch], data: Mapping[str, Any] | None = None
    ) -> None:
        super().__init__(data)
        self.swatches = tuple(swatches)
        self.ask_way()
        for each in self.swatches:
            self.fields |= _fields(each)
        self.speak_plainly()

    @property
    def rows(self) -> tuple[ResultRow, ...]:
        """The lines, one a swatch."""
        return tuple(
            ResultRow(
                swatch=each,
                colour=self.cell(str(each.place), f"swatch {each.place}"),
            )
            for each in self.swatches
        )

    def clean(self) -> dict[str, Any]:
        """See that there is a colour, and that each can be read."""
        sent = super().clean() or self.cleaned_data
        said = [each for each in self.swatches if self.said(str(each.place))]
        if not said and not self.errors and self.swatches:
            name = f"colour_{self.swatches[0].place}"
            self.add_error(name, "No colour is filled in yet: pick or type one.")
        for each in said:
            self.clean_colour(str(each.place))
        return sent

    def results(self) -> tuple[SwatchResult, ...]:
        """Return what the form says."""
        return tuple(
            SwatchResult(bath_number=each.bath_number, read=self.read(str(each.place)))
            for each in self.swatches
            if self.said(str(each.place))
        )


def _fields(each: SetSwatch) -> dict[str, CharField]:
    what = f"the colour of swatch {each.place}"
    return {
        f"pick_{each.place}": pick_field(what),
        f"colour_{each.place}": typed_field("Colour"),
    }
