"""The form of a heat source."""

from typing import ClassVar

from django import forms

from shadewright.core.quantities import power_kw, require_above_zero
from shadewright.records.models import HeatSource
from shadewright.web.amounts import AmountField
from shadewright.web.catalogue.item_form import ItemForm

_MOST_KW = 100.0


def some_power(text: str, *, name: str, default_unit: str = "kW") -> float:
    """Return a power above zero, in kilowatts."""
    value = power_kw(text, name=name, default_unit=default_unit)
    return require_above_zero(value, most=_MOST_KW, unit="kW", name=name)


class SourceForm(ItemForm):
    """A burner, a ring, a plate."""

    power_kw = AmountField(
        unit="kW",
        read=some_power,
        label="Power",
        help_text="As on its plate or in its booklet, at the highest setting.",
    )

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "kind"),
        ("power_kw",),
        ("notes",),
    )

    class Meta:
        model = HeatSource
        fields = ("name", "kind", "power_kw", "notes")
        labels = {"name": "Your name for it", "kind": "What it is"}
        help_texts = {"name": "One ring, one name: left front, right back."}
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}
