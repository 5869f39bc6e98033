"""Form fields for amounts: a decimal comma or point, the unit printed beside.

The unit may also be typed, and another of its kind is turned over: ``1,5 oz``
in a field of grams. Reading is core's; so are the sentences.
"""

from collections.abc import Callable
from decimal import Decimal
from functools import partial
from typing import Any, Protocol

from django import forms
from django.core.exceptions import ValidationError

from shadewright.core.quantities import (
    MOST_MASS_G,
    mass_g,
    percent,
    require_above_zero,
    require_between,
    temperature_c,
    volume_ml,
)
from shadewright.core.quantities.reading import Asked, written
from shadewright.errors import InputError
from shadewright.web.forms import NumberInput

_MOST_PRICE = 99_999.0


class Reader(Protocol):
    """Reads an amount from a text, or refuses it in one sentence."""

    def __call__(self, text: str, *, name: str, default_unit: str) -> float:
        """Return the amount."""
        ...


class AmountField(forms.CharField):
    """A number with the unit that stands beside the field."""

    def __init__(self, *, unit: str, read: Reader, **kwargs: Any) -> None:  # ruff: ignore[any-type]
        super().__init__(widget=NumberInput(), **kwargs)
        self.unit = unit
        self._read = read

    def clean(self, value: Any) -> float | None:  # ruff: ignore[any-type]
        """Return the amount, or nothing where the field may stay empty."""
        text = super().clean(value)
        if not text:
            return None
        try:
            return self._read(text, name=str(self.label), default_unit=self.unit)
        except InputError as error:
            raise ValidationError(error.sentence) from error

    def prepare_value(self, value: Any) -> Any:  # ruff: ignore[any-type]
        """Show a number that is known without noise, and a text as it was typed."""
        return f"{value:.10g}" if isinstance(value, int | float) else value


def _guarded(read: Reader, unit: str, *, may_be_zero: bool) -> Reader:
    guard = partial(require_between, least=0.0) if may_be_zero else require_above_zero

    def guarded(text: str, *, name: str, default_unit: str) -> float:
        value = read(text, name=name, default_unit=default_unit)
        return guard(value, most=MOST_MASS_G, unit=unit, name=name)

    return guarded


def _field(unit: str, read: Reader) -> Callable[..., AmountField]:
    def field(
        *,
        label: str,
        required: bool = True,
        may_be_zero: bool = False,
        help_text: str = "",
    ) -> AmountField:
        return AmountField(
            unit=unit,
            read=_guarded(read, unit, may_be_zero=may_be_zero),
            label=label,
            required=required,
            help_text=help_text,
        )

    return field


def per_litre(text: str, *, name: str, default_unit: str = "g/l") -> float:
    """Return grams in a litre from ``40``, ``40 g/l`` or ``4 g/100 ml``."""
    return _in_words(text, name, default_unit, {"g/l": 1.0, "g/100 ml": 10.0})


def per_100_ml(text: str, *, name: str, default_unit: str = "g/100 ml") -> float:
    """Return grams in 100 ml from ``5``, ``5 %``, ``5 g/100 ml`` or ``50 g/l``."""
    words = {"g/100 ml": 1.0, "%": 1.0, "g/l": 0.1}
    value = _in_words(text, name, default_unit, words)
    return require_between(value, least=0.0, most=200.0, unit=default_unit, name=name)


def metres(text: str, *, name: str, default_unit: str = "m") -> float:
    """Return metres from ``400`` or ``400 m``."""
    value = _in_words(text, name, default_unit, {"m": 1.0, "yd": 0.9144})
    return require_between(value, least=0.0, most=100_000.0, unit="m", name=name)


def _in_words(
    text: str, name: str, default_unit: str, worth: dict[str, float]
) -> float:
    asked = Asked(name=name, example=f"a number such as 40 {default_unit}")
    found = written(text, asked=asked)
    unit = found.unit.replace("100ml", "100 ml") or default_unit
    if unit not in worth:
        raise asked.refusal(text)
    return found.number * worth[unit]


def share(text: str, *, name: str, default_unit: str = "%") -> float:
    """Return a share of the whole: 0 to 100 %."""
    value = percent(text, name=name, default_unit=default_unit)
    return require_between(value, least=0.0, most=100.0, unit="%", name=name)


mass_field = _field("g", mass_g)
volume_field = _field("ml", volume_ml)
percent_field = _field("%", percent)
share_field = _field("%", share)
per_litre_field = _field("g/l", per_litre)
per_100_ml_field = _field("g/100 ml", per_100_ml)
metres_field = _field("m", metres)


def temperature_field(*, label: str, required: bool = True) -> AmountField:
    """Return a field for degrees Celsius, or Fahrenheit where F is typed."""
    return AmountField(unit="°C", read=_temperature, label=label, required=required)


def _temperature(text: str, *, name: str, default_unit: str) -> float:
    value = temperature_c(text, name=name, default_unit=default_unit)
    return require_between(value, least=0.0, most=100.0, unit="°C", name=name)


class PriceField(AmountField):
    """A price in the studio's own money, to the cent."""

    def __init__(self, *, label: str, help_text: str = "") -> None:
        super().__init__(
            unit="in money",
            read=_price,
            label=label,
            required=False,
            help_text=help_text,
        )

    def clean(self, value: Any) -> Decimal | None:  # type: ignore[override]  # ruff: ignore[any-type]
        """Return the price to the cent."""
        price = super().clean(value)
        return None if price is None else Decimal(str(price)).quantize(Decimal("0.01"))

    def prepare_value(self, value: Any) -> Any:  # ruff: ignore[any-type]
        """Show a price as it stands."""
        return str(value) if isinstance(value, Decimal) else value


def _price(text: str, *, name: str, default_unit: str) -> float:
    asked = Asked(name=name, example="a number alone, such as 24.50")
    found = written(text, asked=asked)
    if found.unit:
        raise asked.refusal(text)
    del default_unit  # printed beside the field, never typed
    return require_between(
        found.number, least=0.0, most=_MOST_PRICE, unit="", name=name
    )
