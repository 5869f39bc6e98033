"""The fields of one line of a card, and how sentences call them."""

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from datetime import date
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from shadewright.core.baths.blanks import Blank, blanks_of
from shadewright.core.baths.rounds import RoundStep
from shadewright.core.quantities import require_between
from shadewright.core.quantities.reading import Asked, written
from shadewright.core.solutions.codes import typed_code
from shadewright.errors import InputError, UnitError
from shadewright.web.amounts import (
    AmountField,
    Reader,
    some_mass,
    some_volume,
    temperature_field,
)
from shadewright.web.cards.clock import ClockField
from shadewright.web.forms import WholeNumberInput
from shadewright.workflows.typed_cards import MOST_RINSES

PLANNED, MISSED = "planned", "missed"
_MOST_LOOKED = 200
_MOST_TITLE = 40
_MOST_PH = 14.0
_WORDS = {
    Blank.AMOUNT: "the amount",
    Blank.TIME: "the time",
    Blank.BOTTLE: "the other bottle",
    Blank.TEMPERATURE: "the temperature",
    Blank.PH: "the pH",
    Blank.LOOKED: "what it looked like",
    Blank.RINSES: "the rinses",
    Blank.RACK: "the time on the rack",
}


class CodeField(forms.CharField):
    """A bottle's code, however it is written."""

    def clean(self, value: Any) -> str:  # ruff: ignore[any-type]
        """Return the code in its printed form, or nothing."""
        text = super().clean(value)
        if not text:
            return ""
        try:
            return typed_code(text)
        except InputError as error:
            sentence = f"{self.label}: {error.sentence}"
            raise ValidationError(sentence) from error


class StockField(AmountField):
    """Stock as it was measured or weighed: 60 ml, 60.5 g, or in the planned unit."""

    def clean(self, value: Any) -> Any:  # ruff: ignore[any-type]
        """Return the amount and its unit, or nothing."""
        text = str(value or "").strip()
        if not text:
            return None
        try:
            return _stock(text, name=str(self.label), unit=self.unit)
        except InputError as error:
            raise ValidationError(error.sentence) from error


def name_of(step: RoundStep, blank: Blank | str) -> str:
    """Return the name of a line's field."""
    return f"{step.key}-{blank.name.lower() if isinstance(blank, Blank) else blank}"


def line_fields(place: int, step: RoundStep, *, day: date) -> Mapping[str, forms.Field]:
    """Return the fields of a line, in the order of the card."""
    line = f"Line {place}, {step.title[:_MOST_TITLE]}"
    ticks: dict[str, forms.Field] = {
        name_of(step, PLANNED): forms.BooleanField(
            label=line, required=False, initial=True
        ),
        name_of(step, MISSED): forms.BooleanField(label=line, required=False),
    }
    return ticks | blank_fields(place, step, blanks_of(step), day=day)


def blank_fields(
    place: int, step: RoundStep, blanks: Iterable[Blank], *, day: date
) -> dict[str, forms.Field]:
    """Return the fields of a line's blanks, without its ticks."""
    line = f"Line {place}, {step.title[:_MOST_TITLE]}"
    return {
        name_of(step, blank): _field(blank, step, f"{line}: {_WORDS[blank]}", day)
        for blank in blanks
    }


def _field(blank: Blank, step: RoundStep, label: str, day: date) -> forms.Field:
    makers: Mapping[Blank, Callable[[], forms.Field]] = {
        Blank.AMOUNT: lambda: _amount(step, label),
        Blank.TIME: lambda: ClockField(label=label, day=day),
        Blank.BOTTLE: lambda: _text(CodeField, label, 8),
        Blank.TEMPERATURE: lambda: temperature_field(label=label, required=False),
        Blank.PH: lambda: AmountField(unit="", read=_ph, label=label, required=False),
        Blank.LOOKED: lambda: _text(forms.CharField, label, _MOST_LOOKED),
        Blank.RINSES: lambda: _rinses(label),
        Blank.RACK: lambda: ClockField(label=label, day=day),
    }
    return makers[blank]()


def _rinses(label: str) -> forms.IntegerField:
    return forms.IntegerField(
        label=label,
        required=False,
        min_value=0,
        max_value=MOST_RINSES,
        widget=WholeNumberInput(),
    )


def _text(kind: type[forms.CharField], label: str, most: int) -> forms.CharField:
    widget = forms.TextInput(attrs={"autocomplete": "off"})
    return kind(label=label, required=False, max_length=most, widget=widget)


def _amount(step: RoundStep, label: str) -> AmountField:
    kind = StockField if step.code else AmountField
    return kind(unit=step.unit, read=_READERS[step.unit], label=label, required=False)


def _stock(text: str, *, name: str, unit: str) -> tuple[float, str]:
    """Return an amount of stock with its unit, g or ml, whichever was written."""
    other = "ml" if unit == "g" else "g"
    try:
        return _READERS[unit](text, name=name, default_unit=unit), unit
    except UnitError as error:
        with suppress(UnitError):
            return _READERS[other](text, name=name, default_unit=unit), other
        raise error from None


def _litres(text: str, *, name: str, default_unit: str = "l") -> float:
    return some_volume(text, name=name, default_unit=default_unit) / 1000


_READERS: Mapping[str, Reader] = {"g": some_mass, "ml": some_volume, "l": _litres}


def _ph(text: str, *, name: str, default_unit: str = "") -> float:
    asked = Asked(name=name, example="a number alone, such as 4.5")
    found = written(text, asked=asked)
    if found.unit:
        raise asked.refusal(text)
    del default_unit  # pH has none
    return require_between(found.number, least=0.0, most=_MOST_PH, unit="", name=name)
