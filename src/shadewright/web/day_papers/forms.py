"""The forms of a day's meters and note, and of all off."""

from django import forms

from shadewright.core.quantities import require_between
from shadewright.core.quantities.reading import Asked, written
from shadewright.web.amounts import AmountField
from shadewright.web.forms import DeedForm
from shadewright.workflows.days.day_ledger import MOST_READ

_MOST_NOTE = 300


class ReadForm(DeedForm):
    """What the meters show, and a note; each may stay empty."""

    water = AmountField(
        unit="m³",
        read=lambda text, *, name, default_unit: _shown(text, name, default_unit),
        label="Water meter",
        required=False,
    )
    power = AmountField(
        unit="kWh",
        read=lambda text, *, name, default_unit: _shown(text, name, default_unit),
        label="Power meter",
        required=False,
    )
    note = forms.CharField(label="Note", required=False, max_length=_MOST_NOTE)


class OffForm(DeedForm):
    """All off: nothing is asked but the tap."""


def _shown(text: str, name: str, unit: str) -> float:
    """Return what a meter shows, in its own unit."""
    asked = Asked(name=name, example=f"a number such as 1204.5 {unit}")
    found = written(text, asked=asked)
    if found.unit not in {"", unit, unit.replace("³", "3").lower(), unit.lower()}:
        raise asked.refusal(text)
    return require_between(
        found.number, least=0.0, most=MOST_READ, unit=unit, name=name
    )
