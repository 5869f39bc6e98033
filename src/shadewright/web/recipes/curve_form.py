"""How a recipe is heated: a start, stops on the way, the way to the top."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms import BoundField

from shadewright.core.baths import Curve, Leg, Programme
from shadewright.core.baths.heating import PROGRAMMES
from shadewright.core.quantities import number_text
from shadewright.errors import StudioError
from shadewright.web.amounts import AmountField, temperature_field
from shadewright.web.forms import DeedForm
from shadewright.web.recipes.amounts import minutes, pace

STOPS = 3
HEAT = ("start_c", "rise_c_per_min", "top_c", "hold_min")


@dataclass(frozen=True, kw_only=True)
class StopRow:
    """The fields of one stop on the way to the top."""

    to: BoundField
    rise: BoundField
    hold: BoundField


class CurveForm(DeedForm):
    """The heat of a version; stops that stay empty are passed over."""

    programme = forms.ChoiceField(
        label="A programme to begin from",
        required=False,
        choices=[("", "None"), *((key, each.name) for key, each in PROGRAMMES.items())],
    )
    start_c = temperature_field(label="Start", required=False)
    rise_c_per_min = AmountField(unit="°C/min", read=pace, label="Rise", required=False)
    top_c = temperature_field(label="Top", required=False)
    hold_min = AmountField(unit="min", read=minutes, label="Hold", required=False)

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(*args, **kwargs)
        for number in _NUMBERS:
            self.fields |= _stop_fields(number)

    @property
    def stop_rows(self) -> tuple[StopRow, ...]:
        """The rows of the stops."""
        return tuple(
            StopRow(
                to=self[f"stop_to_{n}"],
                rise=self[f"stop_rise_{n}"],
                hold=self[f"stop_hold_{n}"],
            )
            for n in _NUMBERS
        )

    @property
    def has_stops(self) -> bool:
        """Whether something stands in a stop already, or is wrong there."""
        names = [name for name in self.fields if name.startswith("stop_")]
        return any(self[name].value() or name in self.errors for name in names)

    @property
    def shown_curve(self) -> Curve | None:
        """The curve of what stands in the fields, if they say enough."""
        try:
            stops = tuple(self._stops(self._read))
            start_c, rise, top_c, hold_min = map(self._read, HEAT)
            return Programme(
                start_c=start_c,
                rise_c_per_min=rise,
                top_c=top_c,
                hold_min=hold_min,
                stops=stops,
            ).curve
        except (StudioError, forms.ValidationError):
            return None

    def clean(self) -> dict[str, Any]:
        """See that each stop is whole."""
        sent = super().clean() or self.cleaned_data
        for n in _NUMBERS:
            to_c, rise = sent.get(f"stop_to_{n}"), _rise(sent.get, n)
            is_said = (
                sent.get(f"stop_rise_{n}") is not None
                or sent.get(f"stop_hold_{n}") is not None
            )
            if to_c is None and is_said and f"stop_to_{n}" not in self.errors:
                self.add_error(f"stop_to_{n}", "Say how warm the bath is at this stop.")
            if (
                to_c is not None
                and rise is None
                and f"stop_rise_{n}" not in self.errors
            ):
                self.add_error(f"stop_rise_{n}", "Say how fast it rises to this stop.")
        return sent

    def stops(self) -> tuple[Leg, ...]:
        """Return the stops on the way, in the order of the rows."""
        return tuple(self._stops(self.cleaned_data.get))

    def _read(self, name: str) -> float | None:
        """Return what stands in a field, as the form would read it."""
        value = self[name].value()
        read = self.fields[name].clean(value) if isinstance(value, str) else value
        return None if read is None else float(read)

    def _stops(self, read: Any) -> Iterator[Leg]:  # ruff: ignore[any-type]
        for n in _NUMBERS:
            to_c, rise = read(f"stop_to_{n}"), _rise(read, n)
            if to_c is not None and rise is not None:
                hold_min = read(f"stop_hold_{n}") or 0.0
                yield Leg(to_c=to_c, rise_c_per_min=rise, hold_min=hold_min)


def stops_initial(stops: tuple[Leg, ...]) -> dict[str, Any]:
    """Return stops as their rows show them."""
    said: dict[str, Any] = {}
    for n, leg in enumerate(stops, start=1):
        said[f"stop_to_{n}"] = leg.to_c
        said[f"stop_rise_{n}"] = leg.rise_c_per_min
        said[f"stop_hold_{n}"] = leg.hold_min
    return said


def put_programme_in(typed: dict[str, Any]) -> str:
    """Fill the heat of a form from a programme, and say where it comes from."""
    programme = PROGRAMMES.get(str(typed.get("programme", "")))
    if programme is None:
        return "Choose a programme first; it fills the fields below."
    *stops, last = programme.curve.legs
    for name in [each for each in typed if each.startswith("stop_")]:
        typed[name] = ""
    said: Mapping[str, float] = {
        **stops_initial(tuple(stops)),
        "start_c": programme.curve.start_c,
        "rise_c_per_min": last.rise_c_per_min,
        "top_c": last.to_c,
        "hold_min": last.hold_min,
    }
    typed |= {name: number_text(value, digits=4) for name, value in said.items()}
    return (
        f"{programme.name}: a place to begin, {programme.source}. Change it to what "
        "your yarn shows."
    )


_NUMBERS = range(1, STOPS + 1)
_NO_RISE = 1.0


def _rise(read: Any, number: int) -> float | None:  # ruff: ignore[any-type]
    """Return the rise to a stop; where the bath only waits, any will do."""
    typed: float | None = read(f"stop_rise_{number}")
    to_c, start_c = read(f"stop_to_{number}"), read("start_c")
    is_waiting = to_c is not None and to_c == start_c
    return _NO_RISE if typed is None and is_waiting else typed


def _stop_fields(number: int) -> dict[str, forms.Field]:
    return {
        f"stop_to_{number}": temperature_field(
            label=f"Stop {number} at", required=False
        ),
        f"stop_rise_{number}": AmountField(
            unit="°C/min", read=pace, label=f"Rise to stop {number}", required=False
        ),
        f"stop_hold_{number}": AmountField(
            unit="min", read=minutes, label=f"Hold at stop {number}", required=False
        ),
    }
