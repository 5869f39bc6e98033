"""The form of the dye room."""

from typing import Any

from django import forms

from shadewright.web.amounts import share_field
from shadewright.web.dye_days.forms import time_field
from shadewright.web.forms import NumberInput, StudioForm
from shadewright.workflows.days.room import Room


def _count(label: str, *, least: int, most: int, help_text: str = "") -> Any:  # ruff: ignore[any-type]
    return forms.IntegerField(
        label=label,
        min_value=least,
        max_value=most,
        widget=NumberInput(),
        help_text=help_text,
    )


class RoomForm(StudioForm):
    """When it opens, what it holds, how its yarn dries: the usual day."""

    opens_at = time_field("Opens", required=True)
    closes_at = time_field("Closes", required=True)
    sinks = _count("Sinks", least=1, most=20)
    rack_slots = _count(
        "Places on the rack", least=0, most=5000, help_text="A place holds one skein."
    )
    washout_min = _count(
        "Washing a pot out",
        least=0,
        most=120,
        help_text="Minutes, before another colour or a paler one.",
    )
    dry_hours = _count(
        "Drying", least=1, most=500, help_text="Hours that a skein hangs."
    )
    pack_days = _count(
        "Reskeining and packing", least=0, most=90, help_text="Days after it is dry."
    )
    seconds_percent = share_field(
        label="Seconds", help_text="Of all skeins, those that you sell as seconds."
    )
    spare_percent = share_field(
        label="Spare stock", help_text="What you make more than the day needs."
    )
    look_every_min = _count(
        "Look at least every",
        least=5,
        most=240,
        help_text="Minutes; the desk rings when nobody ticked anything for so long.",
    )
    cools_overnight = forms.BooleanField(
        label="Baths usually cool overnight in their pots", required=False
    )

    def room(self) -> Room:
        """Return the room as the form describes it."""
        return Room(**self.cleaned_data)
