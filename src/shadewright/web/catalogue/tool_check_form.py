"""What is typed when a tool is checked: a known weight, or water weighed."""

from operator import attrgetter
from typing import Any

from django import forms

from shadewright.core.uncertainty.tools import weight_to_check_with
from shadewright.errors import StudioError
from shadewright.web.amounts import (
    mass_field,
    reading_field,
    temperature_field,
    volume_field,
)
from shadewright.web.forms import DeedForm
from shadewright.workflows.stock_tools import scales
from shadewright.workflows.tools import ToolNow

_READINGS = ("first_g", "second_g", "third_g")


class ReadingsForm(DeedForm):
    """Up to three readings, and what is to be said about them."""

    first_g = mass_field(label="First reading")
    second_g = mass_field(label="Second", required=False)
    third_g = mass_field(label="Third", required=False)
    note = forms.CharField(max_length=300, required=False)

    def readings_g(self) -> list[float]:
        """Return the readings that were typed."""
        typed = (self.cleaned_data[name] for name in _READINGS)
        return [reading for reading in typed if reading is not None]

    def refuse(self, error: StudioError) -> None:
        """Put what is wrong with a reading by its own field."""
        of_readings, _, place = error.argument.partition(".")
        if of_readings == "readings_g":
            typed = [name for name in _READINGS if self.cleaned_data.get(name)]
            self.add_error(typed[int(place or 0)], error.sentence)
        else:
            super().refuse(error)


class WeightForm(ReadingsForm):
    """A check weight on a scale."""

    nominal_g = mass_field(label="The weight says")
    tolerance_g = reading_field(
        label="It may be off by",
        help_text="As its class allows; filled in is class M3, the plainest.",
    )

    def __init__(self, *args: Any, tool: ToolNow, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        if tool.balance is not None:
            nominal_g, tolerance_g = weight_to_check_with(
                step_g=tool.balance.step_g, largest_g=tool.size
            )
            self.fields["nominal_g"].initial = nominal_g
            self.fields["tolerance_g"].initial = tolerance_g


class WaterForm(ReadingsForm):
    """The water of a mark, weighed."""

    nominal_ml = volume_field(label="Filled to the mark of")
    temperature_c = temperature_field(label="The water is")
    scale_id = forms.TypedChoiceField(label="Weighed on", coerce=int)

    def __init__(self, *args: Any, tool: ToolNow, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        on_hand = scales()
        choice = self.fields["scale_id"]
        assert isinstance(choice, forms.ChoiceField)  # ruff: ignore[assert] - typed
        offered = [(str(each.id), each.name) for each in on_hand]
        choice.choices = [("", "Choose a scale"), *offered]
        choice.initial = _suited(on_hand, for_ml=tool.size or 0.0)
        self.fields["nominal_ml"].initial = tool.size
        self.fields["temperature_c"].initial = 20


def check_form(tool: ToolNow, data: Any = None) -> WeightForm | WaterForm | None:  # ruff: ignore[any-type] - a QueryDict or nothing
    """Return the form of the check that suits a tool; None where none does."""
    if tool.balance is not None:
        return WeightForm(data, tool=tool)
    return None if tool.ware is None else WaterForm(data, tool=tool)


def _suited(on_hand: tuple[ToolNow, ...], *, for_ml: float) -> int | None:
    """Return the finest scale that carries the water and what it stands in."""
    strong = [each for each in on_hand if each.size is None or each.size >= 2 * for_ml]
    finest = min(strong, key=attrgetter("step_g"), default=None)
    return None if finest is None else finest.id
