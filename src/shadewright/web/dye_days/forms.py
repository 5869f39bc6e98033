"""What is asked of a day: its hours and people, what is out, what a bath wishes."""

from collections.abc import Mapping
from datetime import time
from typing import Any

from django import forms

from shadewright.web.dye_days.words import clock
from shadewright.web.forms import DayInput, DeedForm, NumberInput, StudioForm
from shadewright.workflows.choices import pots_in_use, sources_in_use

_UNCHOSEN = ("", "As the plan finds best")
_NIGHT = (
    ("", "As the room usually does"),
    ("yes", "Overnight in its pot"),
    ("no", "Rinsed the same day"),
)
_STAY = (
    ("", "By its weight: over 10 kg it stays"),
    ("yes", "Cools where it stands"),
    ("no", "Is carried off the burner"),
)
_SAID = {"yes": True, "no": False, "": None}


class ClockInput(forms.TimeInput):
    """The browser's own clock."""

    input_type = "time"

    def __init__(self) -> None:
        super().__init__(format="%H:%M")


def time_field(label: str, *, required: bool = False, help_text: str = "") -> Any:  # ruff: ignore[any-type]
    """Return a field for a time of the day."""
    return forms.TimeField(
        label=label, required=required, widget=ClockInput(), help_text=help_text
    )


class DeedOnlyForm(DeedForm):
    """A key that makes a plan, in a word why, and which plan its page showed."""

    why = forms.CharField(max_length=120, required=False, widget=forms.HiddenInput)
    held = forms.IntegerField(required=False, widget=forms.HiddenInput)


class WishForm(DeedForm):
    """What is wished of a bath within its day."""

    pot = forms.ChoiceField(label="Pot", required=False)
    source = forms.ChoiceField(label="On", required=False)
    starts_at = time_field("Filling begins", help_text="Empty: when the plan says.")
    due_at = time_field("Rinsed by")
    night = forms.ChoiceField(label="Cooling", choices=_NIGHT, required=False)
    stay = forms.ChoiceField(label="While it cools", choices=_STAY, required=False)
    is_steamed = forms.BooleanField(label="Steamed, not in a pot", required=False)
    family = forms.CharField(
        label="Colour family",
        max_length=20,
        required=False,
        help_text="Between two families a pot is washed out. Empty: its main dye.",
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        pots = [(str(each.id), each.words) for each in pots_in_use()]
        sources = [(str(each.id), each.words) for each in sources_in_use()]
        self.fields["pot"].choices = [_UNCHOSEN, *pots]  # type: ignore[attr-defined]
        self.fields["source"].choices = [_UNCHOSEN, *sources]  # type: ignore[attr-defined]

    def said(self) -> dict[str, Any]:
        """Return what the form wishes."""
        sent = self.cleaned_data
        return {
            "pot_id": int(sent["pot"]) if sent["pot"] else None,
            "source_id": int(sent["source"]) if sent["source"] else None,
            "starts_at": sent["starts_at"],
            "due_at": sent["due_at"],
            "is_overnight": _SAID[sent["night"]],
            "cools_on_source": _SAID[sent["stay"]],
            "is_steamed": sent["is_steamed"],
            "family": sent["family"].strip(),
        }


class OutForm(DeedForm):
    """Something that cannot be used, from a time on or all day."""

    thing = forms.ChoiceField(label="What is out")
    starts_at = time_field("From", help_text="Empty: all day.")
    out_why = forms.CharField(label="Why", max_length=120, required=False)

    def __init__(self, data: Mapping[str, Any] | None = None) -> None:
        super().__init__(data)
        things = [(f"pot-{each.id}", each.words) for each in pots_in_use()]
        things += [(f"source-{each.id}", each.words) for each in sources_in_use()]
        self.fields["thing"].choices = [("", "Choose one"), *things]  # type: ignore[attr-defined]


class ClosedForm(StudioForm):
    """From when to when the studio is closed, and why."""

    first_on = forms.DateField(label="First day", widget=DayInput())
    last_on = forms.DateField(
        label="Last day",
        required=False,
        widget=DayInput(),
        help_text="Empty: that one day.",
    )
    why = forms.CharField(
        label="Why",
        max_length=80,
        required=False,
        help_text="Such as holidays, or a fair.",
    )


class HoursForm(StudioForm):
    """When a day opens and closes, and who is in: one line a person."""

    opens_at = time_field("Opens", required=True)
    closes_at = time_field("Closes", required=True)
    people = forms.CharField(
        label="Who is in",
        max_length=1000,
        required=False,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="A line each: Ines 08:00 to 17:00. Twice a day: two lines. "
        "Empty: everybody of the studio, all day.",
    )
    sinks = forms.IntegerField(
        label="Sinks", required=False, min_value=1, max_value=20, widget=NumberInput()
    )
    rack_slots = forms.IntegerField(
        label="Places on the rack",
        required=False,
        min_value=0,
        max_value=5000,
        widget=NumberInput(),
    )
    rack_used = forms.IntegerField(
        label="Of these taken already",
        required=False,
        min_value=0,
        max_value=5000,
        widget=NumberInput(),
        help_text="Empty: as the rack’s own list has it.",
    )


def said_time(value: time | None) -> str:
    """Return a time as a form holds it."""
    return "" if value is None else clock(value)


def said_flag(value: bool | None) -> str:  # ruff: ignore[boolean-type-hint-positional-argument]
    """Return yes, no or nothing as a form holds it."""
    return {True: "yes", False: "no", None: ""}[value]
