"""The colours of a set, asked for on one page: a line for each swatch not yet read."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from django.forms import CharField

from shadewright.errors import StudioError
from shadewright.web.forms import DeedForm
from shadewright.web.swatches.colour_fields import (
    ColourCell,
    pick_field,
    said_colour,
    typed_field,
    way_field,
    way_of,
)
from shadewright.workflows.shades.plan_pages import SetSwatch
from shadewright.workflows.shades.plan_results import SwatchResult
from shadewright.workflows.shades.readings import ReadWords, reading_from
from shadewright.workflows.shades.ways_to_read import Way


@dataclass(frozen=True, kw_only=True)
class ResultRow:
    """A swatch and the field of its colour."""

    swatch: SetSwatch
    colour: ColourCell


class ResultsForm(DeedForm):
    """Colours in the order of the set; a line that stays empty is passed over."""

    def __init__(
        self, swatches: Sequence[SetSwatch], data: Mapping[str, Any] | None = None
    ) -> None:
        super().__init__(data)
        self.swatches = tuple(swatches)
        self.fields["way"] = way_field("How did you get the colours?")
        for each in self.swatches:
            self.fields |= _fields(each)
        self.speak_plainly()

    @property
    def rows(self) -> tuple[ResultRow, ...]:
        """The lines, one a swatch."""
        return tuple(
            ResultRow(
                swatch=each,
                colour=ColourCell(
                    pick=self[f"pick_{each.place}"],
                    typed=self[f"colour_{each.place}"],
                    what=f"swatch {each.place}",
                ),
            )
            for each in self.swatches
        )

    def clean(self) -> dict[str, Any]:
        """See that there is a colour, and that each can be read."""
        sent = super().clean() or self.cleaned_data
        said = [each for each in self.swatches if self._said(each)]
        if not said and not self.errors and self.swatches:
            name = f"colour_{self.swatches[0].place}"
            self.add_error(name, "No colour is filled in yet: pick or type one.")
        if "way" in sent:
            for each in said:
                self._try(each)
        return sent

    def results(self) -> tuple[SwatchResult, ...]:
        """Return what the form says."""
        return tuple(
            SwatchResult(bath_number=each.bath_number, read=self._read(each))
            for each in self.swatches
            if self._said(each)
        )

    def _said(self, each: SetSwatch) -> str:
        return said_colour(
            typed=self.cleaned_data.get(f"colour_{each.place}") or "",
            picked=self.cleaned_data.get(f"pick_{each.place}") or "",
        )

    @cached_property
    def _way(self) -> Way:
        return way_of(self.cleaned_data["way"])

    def _read(self, each: SetSwatch) -> ReadWords:
        return ReadWords(
            read_by=self._way.read_by,
            texts=(self._said(each),),
            meter_id=self._way.meter_id,
        )

    def _try(self, each: SetSwatch) -> None:
        try:
            reading_from(self._read(each))
        except StudioError as error:
            self.add_error(f"colour_{each.place}", error.sentence)


def _fields(each: SetSwatch) -> dict[str, CharField]:
    what = f"the colour of swatch {each.place}"
    return {
        f"pick_{each.place}": pick_field(what),
        f"colour_{each.place}": typed_field("Colour"),
    }
