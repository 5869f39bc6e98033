"""Form fields for days that have been: never tomorrow, never before all memory."""

from datetime import date
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from shadewright.errors import OutOfRangeError
from shadewright.web.forms import DayInput
from shadewright.workflows.stamps import past_date

_EARLIEST = date(1950, 1, 1)


class PastDayField(forms.DateField):
    """A day of today or earlier."""

    def __init__(self, *, label: str, help_text: str = "") -> None:
        super().__init__(
            widget=DayInput(), label=label, required=False, help_text=help_text
        )

    def clean(self, value: Any) -> date | None:  # ruff: ignore[any-type]
        """Return the day, or nothing where none was given."""
        found = super().clean(value)
        try:
            return _in_memory(past_date(found, name=str(self.label), argument=""))
        except OutOfRangeError as error:
            raise ValidationError(error.sentence) from error


def _in_memory(value: date | None) -> date | None:
    if value is not None and value < _EARLIEST:
        raise OutOfRangeError(
            name="The day",
            given=f"{value.day} {value:%B} {value.year}",
            allowed="in 1950 or later",
        )
    return value
