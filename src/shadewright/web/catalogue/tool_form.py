"""The form of a measuring tool."""

from typing import Any, ClassVar

from django import forms

from shadewright.core.quantities import mass_g, temperature_c, volume_ml
from shadewright.core.quantities.tools import CLASSED, STANDARDS
from shadewright.core.uncertainty.tools.spoons import SPOON_REASON
from shadewright.errors import InputError
from shadewright.records.models import MeasuringTool
from shadewright.records.models.catalogue import ToolKind
from shadewright.web.amounts import PriceField
from shadewright.web.catalogue.item_form import ItemForm
from shadewright.web.forms import NumberInput

_AMOUNTS = ("size", "readability", "own_error")


class MeasureField(forms.CharField):
    """An amount whose unit depends on the tool: grams, millilitres or degrees."""

    unit = "g, ml or °C"

    def __init__(self, *, label: str, help_text: str) -> None:
        super().__init__(
            label=label, help_text=help_text, required=False, widget=NumberInput()
        )

    def prepare_value(self, value: Any) -> Any:  # ruff: ignore[any-type]
        """Show a number that is known without noise."""
        return f"{value:.10g}" if isinstance(value, int | float) else value


class ToolForm(ItemForm):
    """A scale, a cylinder, a syringe: what a number is read from."""

    size = MeasureField(
        label="Largest that it measures",
        help_text="Grams for a scale, ml for a vessel, °C for a thermometer.",
    )
    readability = MeasureField(
        label="Smallest step", help_text="What the last figure or mark is worth."
    )
    tool_class = forms.ChoiceField(
        label="Class",
        required=False,
        choices=[("", "none, or not known: B"), ("A", "A"), ("B", "B")],
        help_text="Printed on glass that has one.",
    )
    standard = forms.ChoiceField(
        label="Standard",
        required=False,
        choices=[("", "not known: ISO"), *((name, name) for name in STANDARDS)],
        help_text="Printed beside the class. They differ up to twofold.",
    )
    own_error = MeasureField(
        label="How far it may be off",
        help_text="By its own sheet, either way. A check that you write down beats it.",
    )
    price = PriceField(label="Price", help_text="What it cost, or would cost again.")

    rows: ClassVar[tuple[tuple[str, ...], ...]] = (
        ("name", "kind"),
        ("size", "readability"),
        ("tool_class", "standard"),
        ("own_error", "price"),
        ("notes",),
    )
    side_title = "What each is taken for"
    side = (
        ("Scale", "Off by two of its steps, until a check weight says better."),
        (
            "Cylinder, flask, pipette",
            "As its class allows; of a cylinder as much at 10 ml as at 100 ml.",
        ),
        ("Syringe", "4 or 5 % of what is pressed out; more when it is nearly empty."),
        (
            "Beaker, jug, bottle mark",
            "5 to 10 % of what is read: no measure until you weigh its water.",
        ),
        ("Spoon", f"Not here. {SPOON_REASON}"),
    )

    class Meta:
        model = MeasuringTool
        fields = (
            "name",
            "kind",
            "size",
            "readability",
            "tool_class",
            "standard",
            "own_error",
            "price",
            "notes",
        )
        widgets = {"notes": forms.Textarea(attrs={"rows": 2})}

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        written = self.instance.standard
        self.initial["standard"] = next((s for s in STANDARDS if s in written), "")

    def clean_kind(self) -> str:
        """Keep the kind of a tool that was checked as what it is."""
        kind: str = self.cleaned_data["kind"]
        before = self.initial.get("kind")
        if self.instance.pk and kind != before and self.instance.checks.exists():
            message = "The kind stays: its checks were made as another. Add a new tool."
            raise forms.ValidationError(message)
        return kind

    def clean(self) -> dict[str, Any]:
        """Read the amounts in the tool's own unit; only glassware has a class."""
        sent = super().clean() or self.cleaned_data
        for name in _AMOUNTS:
            sent[name] = self._amount(name, sent)
        if sent.get("tool_class") and sent.get("kind") not in CLASSED:
            self.add_error(
                "tool_class",
                "Only a cylinder, a flask or a pipette has a class; choose none.",
            )
        self._require_smaller(
            "readability", "The smallest step must be smaller than the largest."
        )
        self._require_smaller(
            "own_error", "It can only be off by less than the largest it measures."
        )
        return sent

    def _require_smaller(self, name: str, said: str) -> None:
        value, size = self.cleaned_data[name], self.cleaned_data["size"]
        if value is not None and size is not None and value > size:
            self.add_error(name, said)

    def _amount(self, name: str, sent: dict[str, Any]) -> float | None:
        text = sent.get(name)
        if not text:
            return None
        try:
            return _measure(text, str(sent.get("kind")), str(self.fields[name].label))
        except InputError as error:
            self.add_error(name, error.sentence)
            return None


def _measure(text: str, kind: str, name: str) -> float:
    if kind == ToolKind.BALANCE:
        return mass_g(text, name=name, default_unit="g")
    if kind == ToolKind.THERMOMETER:
        return temperature_c(text, name=name, default_unit="C")
    return volume_ml(text, name=name, default_unit="ml")
