"""Many colours on one form, all come by in one way; a line that is empty is none."""

from functools import cached_property

from shadewright.errors import StudioError
from shadewright.web.forms import DeedForm
from shadewright.web.swatches.colour_fields import (
    ColourCell,
    said_colour,
    way_field,
    way_of,
)
from shadewright.workflows.shades.readings import ReadWords, reading_from
from shadewright.workflows.shades.ways_to_read import Way


class ManyColoursForm(DeedForm):
    """Colours, each by a key: its fields are ``pick_<key>`` and ``colour_<key>``."""

    def ask_way(self) -> None:
        """Ask how all of the colours were come by."""
        self.fields["way"] = way_field("How did you get the colours?")

    def cell(self, key: str, what: str) -> ColourCell:
        """Return the two fields of a colour; ``what`` names it."""
        return ColourCell(
            pick=self[f"pick_{key}"], typed=self[f"colour_{key}"], what=what
        )

    def said(self, key: str) -> str:
        """Return what was sent of a colour, or nothing."""
        return said_colour(
            typed=self.cleaned_data.get(f"colour_{key}") or "",
            picked=self.cleaned_data.get(f"pick_{key}") or "",
        )

    def read(self, key: str) -> ReadWords:
        """Return a colour as it is to be kept."""
        return ReadWords(
            read_by=self._way.read_by,
            texts=(self.said(key),),
            meter_id=self._way.meter_id,
        )

    def clean_colour(self, key: str) -> None:
        """See that a colour can be read, if one was said."""
        if not self.said(key) or "way" not in self.cleaned_data:
            return
        try:
            reading_from(self.read(key))
        except StudioError as error:
            self.add_error(f"colour_{key}", error.sentence)

    @cached_property
    def _way(self) -> Way:
        return way_of(self.cleaned_data["way"])
