"""The forms of the acts on a bottle; each field is named as its verb's argument."""

from typing import Any

from django import forms

from shadewright.core.quantities import amount_text, volume_ml
from shadewright.web.amounts import (
    AmountField,
    mass_field,
    strength_field,
    volume_field,
)
from shadewright.web.forms import DayInput, DeedForm
from shadewright.web.templatetags.house import day
from shadewright.web.tool_choices import (
    by_weight_choices,
    offer,
    offer_usual,
    scale_choices,
    tool_field,
    ware_choices,
)
from shadewright.workflows.bottles import Look
from shadewright.workflows.jars import jars
from shadewright.workflows.mending import usual_stock_tool
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.usual_tools import usual_tools
from shadewright.workflows.weighing_bottles import last_weighing

_FEW_LINES = {"rows": 2}
_TO_WORK_OUT = "Write it and press “Work it out”."


def _note(help_text: str = "") -> forms.CharField:
    return forms.CharField(
        label="Note", max_length=300, required=False, help_text=help_text
    )


class BottleForm(DeedForm):
    """A form that knows its bottle; ``lacks`` says why it cannot be filled in.

    ``instead`` is then the act that comes first, and its words.
    """

    lacks = ""
    instead: tuple[str, str] | None = None

    def __init__(self, *args: Any, bottle: ShelfBottle, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        self.bottle = bottle

    def offer(self, name: str, choices: list[tuple[str, str]]) -> None:
        """Set what a field offers."""
        field = self.fields[name]
        assert isinstance(field, forms.ChoiceField)  # ruff: ignore[assert] - typed
        field.choices = choices


class DrawForm(BottleForm):
    """What was drawn."""

    volume_ml = volume_field(label="Drawn")
    note = _note("What for: the bath, the swatch.")

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        if self.bottle.is_settled:
            self.lacks = "Nothing is drawn from it until it is clear again."
            self.instead = ("look", "Re-warm it and look")


class LookForm(BottleForm):
    """What was seen or done; the key that was pressed says which."""

    look = forms.ChoiceField(
        choices=[(look.value, look.value) for look in Look], widget=forms.HiddenInput
    )
    note = _note()


class StrengthForm(BottleForm):
    """A strength that was tested."""

    strength_percent = strength_field(
        label="Strength found",
        help_text="Dyed beside fresh stock of the same dye: 1.1 times as deep from the "
        "same ml means 1.1 times its strength.",
    )
    note = _note("How it was tested.")


class LevelForm(BottleForm):
    """The level that was read."""

    volume_ml = AmountField(
        unit="ml", read=volume_ml, label="Level read", help_text="0 if it is empty."
    )
    is_evaporated = forms.TypedChoiceField(
        label="What happened",
        choices=[
            ("yes", "Water evaporated: the stock is stronger now"),
            ("no", "Only counted: spilled, or never written down"),
        ],
        coerce=lambda value: value == "yes",
        widget=forms.RadioSelect,
    )
    tool_id = tool_field(label="Read from")
    note = _note()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        offer(self, "tool_id", ware_choices())


class WeighForm(BottleForm):
    """What the whole bottle weighs."""

    gross_g = mass_field(label="The bottle weighs")
    scale = forms.TypedChoiceField(coerce=int, empty_value=None, required=False)
    note = _note()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        usual = usual_tools().yarn_scale
        self.offer("scale", [("", "Another, in steps of 1 g"), *scale_choices()])
        self.fields["scale"].initial = None if usual is None else usual.id
        before = last_weighing(self.bottle.code)
        self.fields["gross_g"].help_text = (
            "With its cap, dry outside. The next weighing then shows what has gone."
            if before is None
            else f"With its cap, dry outside. {day(before.on)} it weighed "
            f"{amount_text(before.gross_g, 'g')}, and nothing was drawn since."
        )


class WaterForm(BottleForm):
    """Water that goes in."""

    want_percent = strength_field(
        label="Strength wanted", required=False, help_text=_TO_WORK_OUT
    )
    volume_ml = volume_field(label="Water added")
    tool_id = tool_field(label="Measured with")
    note = _note()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        offer_usual(self, "tool_id", _filled_with(), usual_tools().fill_tool)


class PowderForm(BottleForm):
    """Powder that goes in."""

    jar = forms.TypedChoiceField(
        label="From the jar", coerce=int, empty_value=None, required=False
    )
    want_percent = strength_field(
        label="Strength wanted", required=False, help_text=_TO_WORK_OUT
    )
    powder_g = mass_field(label="Powder added")
    tool_id = tool_field(label="Weighed on")
    note = _note()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        offered = [
            (str(jar.id), f"{jar.code}, {amount_text(jar.left_g, 'g')} left")
            for jar in jars(dye_id=self.bottle.dye_id)
            if jar.left_g > 0
        ]
        self.offer("jar", [*offered, ("", "No jar in the records")])
        offer_usual(self, "tool_id", scale_choices(), usual_tools().powder_scale)


class StockForm(BottleForm):
    """Stock of a stronger bottle that goes in."""

    from_code = forms.ChoiceField(label="From the bottle")
    want_percent = strength_field(
        label="Strength wanted", required=False, help_text=_TO_WORK_OUT
    )
    volume_ml = volume_field(label="Stock poured over")
    tool_id = tool_field(label="Measured with")

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        stronger = [
            one
            for one in others(self.bottle)
            if one.strength_percent > self.bottle.strength_percent
        ]
        self.offer("from_code", [_choice(one) for one in stronger])
        offer_usual(self, "tool_id", _filled_with(), usual_stock_tool())
        if not stronger:
            self.lacks = "No stronger bottle of this dye stands on the shelf."


class DiluteForm(BottleForm):
    """A weaker bottle of its own."""

    want_percent = strength_field(label="Strength of the new bottle")
    volume_ml = volume_field(label="Made up to")
    tool_id = tool_field(label="Stock measured with")
    ware_id = tool_field(label="Made up in")
    place = forms.CharField(max_length=40, required=False)
    discard_by = forms.DateField(label="Discard by", required=False, widget=DayInput())

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        offer_usual(self, "tool_id", _filled_with(), usual_stock_tool())
        offer_usual(self, "ware_id", _filled_with(), usual_tools().fill_tool)


class MergeForm(BottleForm):
    """Bottles that are poured into this one, to the last drop."""

    from_codes = forms.MultipleChoiceField(
        label="Pour over and empty", widget=forms.CheckboxSelectMultiple
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        rest = others(self.bottle)
        self.offer("from_codes", [_choice(one) for one in rest])
        if not rest:
            self.lacks = "No other bottle of this dye with stock stands on the shelf."


class PourForm(BottleForm):
    """A bottle that is emptied for good."""

    note = _note("Why: mould, too old, the dye changed.")


class ParticularsForm(BottleForm):
    """What stands beside a bottle's strength."""

    place = forms.CharField(max_length=40, required=False)
    water = forms.CharField(max_length=80, required=False)
    discard_by = forms.DateField(label="Discard by", required=False, widget=DayInput())
    dead_volume_ml = AmountField(
        unit="ml",
        read=volume_ml,
        label="Last drops",
        help_text="What no syringe reaches.",
    )
    notes = forms.CharField(
        max_length=2000, required=False, widget=forms.Textarea(attrs=_FEW_LINES)
    )


def _filled_with() -> list[tuple[str, str]]:
    return [*ware_choices(), *by_weight_choices()]


def others(bottle: ShelfBottle) -> list[ShelfBottle]:
    """Return the other bottles of the same dye on the shelf that hold stock."""
    same = [one for one in shelf() if one.dye_id == bottle.dye_id]
    return [one for one in same if one.volume_ml > 0 and one.code != bottle.code]


def _choice(bottle: ShelfBottle) -> tuple[str, str]:
    said = f"{bottle.code}, {amount_text(bottle.strength_percent, '%')}"
    return (bottle.code, f"{said}, {amount_text(bottle.volume_ml, 'ml')} left")
