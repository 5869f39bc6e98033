"""The forms of a heat source and of the circuit that it hangs on."""

from typing import Any, ClassVar

from django import forms
from django.db.models import Q

from shadewright.core.quantities import power_kw, require_above_zero
from shadewright.records.models import Circuit, HeatSource
from shadewright.records.models.catalogue import SourceKind
from shadewright.web.amounts import AmountField, mass_field
from shadewright.web.catalogue.item_form import ItemForm

_MOST_KW = 100.0


def some_power(text: str, *, name: str, default_unit: str = "kW") -> float:
    """Return a power above zero, in kilowatts."""
    value = power_kw(text, name=name, default_unit=default_unit)
    return require_above_zero(value, most=_MOST_KW, unit="kW", name=name)


class CircuitForm(ItemForm):
    """A fuse, and what it bears."""

    limit_kw = AmountField(
        unit="kW",
        read=some_power,
        label="Bears",
        help_text="Ask whoever knows the house: amperes on the fuse times volts, less "
        "what else hangs on it. 16 A at 230 V are 3.6 kW.",
    )

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "limit_kw"),
        ("notes",),
    )

    class Meta:
        model = Circuit
        fields = ("name", "limit_kw", "notes")
        labels = {"name": "Your name for it"}
        help_texts = {"name": "As the fuse box has it: cooker, kitchen wall."}
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}


class SourceForm(ItemForm):
    """A burner, a ring, a plate, a steamer."""

    power_kw = AmountField(
        unit="kW",
        read=some_power,
        label="Power",
        help_text="As on its plate or in its booklet, at the highest setting.",
    )
    room_g = mass_field(
        label="Yarn that it takes at once",
        required=False,
        help_text="Of a steamer: dry yarn on all its trays.",
    )

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "kind"),
        ("power_kw", "circuit"),
        ("room_g",),
        ("notes",),
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        own = Q(pk=self.instance.circuit_id)
        known = Circuit.objects.filter(Q(is_retired=False) | own)
        self.fields["circuit"].queryset = known  # type: ignore[attr-defined]
        self.fields["circuit"].empty_label = "Its own, or not known"  # type: ignore[attr-defined]

    def clean(self) -> dict[str, Any]:
        """Keep room for yarn of a steamer alone."""
        sent = super().clean() or self.cleaned_data
        if sent.get("kind") != SourceKind.STEAMER:
            sent["room_g"] = None
        return sent

    class Meta:
        model = HeatSource
        fields = ("name", "kind", "power_kw", "circuit", "room_g", "notes")
        labels = {
            "name": "Your name for it",
            "kind": "What it is",
            "circuit": "Circuit",
        }
        help_texts = {
            "name": "One ring, one name: left front, right back.",
            "circuit": "The fuse that it shares with others.",
        }
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}
