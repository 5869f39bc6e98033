"""A form field for a time on the card: hours and minutes of the dyeing day."""

import re
from datetime import date, datetime, time
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.utils import timezone

from shadewright.errors import InputError, OutOfRangeError, UnitError
from shadewright.web.forms import NumberInput

_WRITTEN = re.compile(r"(\d{1,2})\s*[:.,h ]?\s*(\d{2})", re.ASCII)
_WAY = "hours and minutes, such as 14:05"


class ClockField(forms.CharField):
    """A time as it is written on paper: 14:05, 14.05, 1405 or 9h30."""

    def __init__(self, *, label: str, day: date) -> None:
        super().__init__(label=label, required=False, widget=NumberInput())
        self._day = day

    def clean(self, value: Any) -> datetime | None:  # ruff: ignore[any-type]
        """Return the moment, or nothing where no time was written."""
        text = super().clean(value)
        if not text:
            return None
        try:
            return _moment(text, day=self._day, name=str(self.label))
        except InputError as error:
            raise ValidationError(error.sentence) from error


def _moment(text: str, *, day: date, name: str) -> datetime:
    found = _WRITTEN.fullmatch(text)
    hours, minutes = map(int, found.groups()) if found else (24, 0)
    if not found or hours > 23 or minutes > 59:
        raise UnitError(name=name, given=text[:20], allowed=_WAY)
    moment = timezone.make_aware(datetime.combine(day, time(hours, minutes)))
    now = timezone.localtime()
    if moment > now:
        raise OutOfRangeError(
            name=name,
            given=f"{hours:02}:{minutes:02} on {day.day} {day:%B}",
            allowed=f"not later than now, {now:%H:%M} on {now.day} {now:%B}",
        )
    return moment
