"""What is asked while a stock is planned and made."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from shadewright.core.quantities import amount_text
from shadewright.errors import OutOfRangeError
from shadewright.web.amounts import mass_field, strength_field, volume_field
from shadewright.web.days import PastDayField
from shadewright.web.forms import DayInput, DeedForm, StudioForm
from shadewright.web.tool_choices import (
    by_weight_choices,
    offer,
    scale_choices,
    tool_field,
    ware_choices,
)
from shadewright.workflows.dyes import dyes
from shadewright.workflows.jars import ShelfJar, jars
from shadewright.workflows.stamps import today
from shadewright.workflows.stock_spreads import MadeWith, made_with

NO_JAR = ("", "No jar: the powder came from elsewhere")


class PlanForm(DeedForm):
    """What stock is wanted, and from which jar; jars are those of the dye."""

    dye = forms.TypedChoiceField(label="Dye", coerce=int)
    jar = forms.TypedChoiceField(
        label="Jar", coerce=int, required=False, widget=forms.RadioSelect
    )
    strength_percent = strength_field(label="Strength")
    volume_ml = volume_field(label="Volume")
    scale = tool_field(label="Powder is weighed on")
    ware = tool_field(label="Made up in")

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        offer(self, "scale", scale_choices())
        offer(self, "ware", [*ware_choices(), *by_weight_choices()])
        known = [(str(dye.id), dye.name) for dye in dyes()]
        self.fields["dye"].choices = [("", "Choose a dye"), *known]  # type: ignore[attr-defined]
        chosen = (data or initial or {}).get("dye", "")
        self.fields["jar"].choices = jar_choices(str(chosen))  # type: ignore[attr-defined]

    @property
    def jar_id(self) -> int | None:
        """The jar that was chosen, if any."""
        return self.cleaned_data.get("jar") or None

    @property
    def made_with(self) -> MadeWith:
        """The tools that were chosen; a scale to make up on means by weight."""
        return made_with(self.cleaned_data["scale"], self.cleaned_data["ware"])


class MadeForm(PlanForm):
    """A stock that was made before anybody wrote it down."""

    powder_g = mass_field(label="Powder weighed")
    final_ml = volume_field(label="Made up to")
    made_on = PastDayField(label="Day made")

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        self.fields["volume_ml"].required = False


class StepForm(DeedForm):
    """Any step of the making: which one was shown when it was sent."""

    step = forms.CharField(widget=forms.HiddenInput)


class WeighForm(StepForm):
    """The reading of the scale."""

    powder_g = mass_field(label="What the scale really shows")
    scale = tool_field(label="Weighed on")

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        offer(self, "scale", scale_choices())


class FillForm(StepForm):
    """The mark that the cold stock reached."""

    final_ml = volume_field(label="What it really came to")
    ware = tool_field(label="Read at the mark of")
    is_cold = forms.BooleanField(
        label="It is cold: the vessel feels no warmer than the room", required=False
    )
    water = forms.CharField(label="Water used", max_length=80, required=False)

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        offer(self, "ware", ware_choices())


class FillByWeightForm(StepForm):
    """What the finished stock weighs."""

    filled_g = mass_field(label="What the scale really shows")
    water = forms.CharField(label="Water used", max_length=80, required=False)


class LabelForm(StepForm):
    """What is written on the bottle beside its strength."""

    place = forms.CharField(label="Place on the shelf", max_length=40, required=False)
    discard_by = forms.DateField(label="Discard by", widget=DayInput(), required=False)
    notes = forms.CharField(
        label="Notes",
        max_length=2000,
        required=False,
        widget=forms.Textarea(attrs={"rows": 3}),
    )

    def clean_discard_by(self) -> date | None:
        """Refuse a day that is over."""
        day: date | None = self.cleaned_data["discard_by"]
        if day is not None and day < today():
            refusal = OutOfRangeError(
                name="The discard-by day",
                given=f"{day.day} {day:%B} {day.year}",
                allowed="today or later",
            )
            raise ValidationError(refusal.sentence)
        return day


class GiveUpForm(StudioForm):
    """Where the powder of a stock that is given up went."""

    powder = forms.ChoiceField(
        choices=[("back", "back in the jar"), ("away", "thrown away")]
    )


def jar_choices(dye_id: str) -> list[tuple[str, str]]:
    """Return the jars of a dye, with what is left in each, and 'no jar'."""
    return [*((str(jar.id), _jar_words(jar)) for jar in _jars_of(dye_id)), NO_JAR]


def usual_jar(dye_id: str) -> str:
    """Return the first jar of a dye that still holds powder."""
    held = (str(jar.id) for jar in _jars_of(dye_id) if jar.left_g > 0)
    return next(held, "")


def _jars_of(dye_id: str) -> tuple[ShelfJar, ...]:
    is_known = dye_id in {str(dye.id) for dye in dyes()}
    return jars(dye_id=int(dye_id)) if is_known else ()


def _jar_words(jar: ShelfJar) -> str:
    factor = amount_text(jar.strength_percent, "%")
    words = (
        f"{jar.code}: {amount_text(jar.left_g, 'g')} left",
        f"lot {jar.lot}" if jar.lot else "",
        "" if jar.strength_percent == 100 else f"powder strength {factor}",
    )
    return ", ".join(filter(None, words))
