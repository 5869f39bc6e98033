"""Form fields for amounts: a decimal comma or point, the unit printed beside.

The unit may also be typed, and another of its kind is turned over: ``1,5 oz``
in a field of grams. Reading is core's; so are the sentences.
"""

from collections.abc import Callable, Mapping
from decimal import Decimal
from typing import Any, Protocol

from django import forms
from django.core.exceptions import ValidationError

from shadewright.core.quantities import (
    liquor_ratio_ml_per_g,
    mass_g,
    percent,
    require_above_zero,
    require_between,
    require_mass,
    require_powder_strength,
    require_strength,
    require_volume,
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


def _field(unit: str, read: Reader) -> Callable[..., AmountField]:
    def field(*, label: str, required: bool = True, help_text: str = "") -> AmountField:
        return AmountField(
            unit=unit, read=read, label=label, required=required, help_text=help_text
        )

    return field


def some_mass(text: str, *, name: str, default_unit: str = "g") -> float:
    """Return a weight above zero."""
    return mass_g(text, name=name, default_unit=default_unit, guard=require_mass)


def some_volume(text: str, *, name: str, default_unit: str = "ml") -> float:
    """Return a volume above zero."""
    return volume_ml(text, name=name, default_unit=default_unit, guard=require_volume)


def litres(text: str, *, name: str, default_unit: str = "l") -> float:
    """Return a volume above zero in litres."""
    return some_volume(text, name=name, default_unit=default_unit) / 1000


def kilograms(text: str, *, name: str, default_unit: str = "kg") -> float:
    """Return a weight above zero in kilograms."""
    return some_mass(text, name=name, default_unit=default_unit) / 1000


def strength(text: str, *, name: str, default_unit: str = "%") -> float:
    """Return a stock's strength: above 0, at most 50 %."""
    return percent(text, name=name, default_unit=default_unit, guard=require_strength)


def powder_strength(text: str, *, name: str, default_unit: str = "%") -> float:
    """Return a powder's strength against its standard: above 0, at most 400 %."""
    return percent(
        text, name=name, default_unit=default_unit, guard=require_powder_strength
    )


def share(text: str, *, name: str, default_unit: str = "%") -> float:
    """Return a share of the whole: 0 to 100 %."""
    return percent(text, name=name, default_unit=default_unit, guard=_up_to_all)


def _up_to_all(value: float, /, *, name: str, argument: str) -> float:
    return require_between(
        value, least=0.0, most=100.0, unit="%", name=name, argument=argument
    )


def ratio(text: str, *, name: str, default_unit: str = "") -> float:
    """Return a liquor ratio from ``30`` or ``1:30``."""
    del default_unit  # a ratio has none
    return liquor_ratio_ml_per_g(text, name=name)


def per_litre(text: str, *, name: str, default_unit: str = "g/l") -> float:
    """Return grams in a litre from ``40``, ``40 g/l`` or ``4 g/100 ml``."""
    value = _in_words(text, name, default_unit, {"g/l": 1.0, "g/100 ml": 10.0})
    return require_above_zero(value, most=2000.0, unit="g/l", name=name)


def per_100_ml(text: str, *, name: str, default_unit: str = "g/100 ml") -> float:
    """Return grams in 100 ml from ``5``, ``5 %``, ``5 g/100 ml`` or ``50 g/l``."""
    words = {"g/100 ml": 1.0, "%": 1.0, "g/l": 0.1}
    value = _in_words(text, name, default_unit, words)
    return require_above_zero(value, most=200.0, unit=default_unit, name=name)


def metres(text: str, *, name: str, default_unit: str = "m") -> float:
    """Return metres from ``400`` or ``400 m``."""
    value = _in_words(text, name, default_unit, {"m": 1.0, "yd": 0.9144})
    return require_above_zero(value, most=100_000.0, unit="m", name=name)


def _altitude(text: str, *, name: str, default_unit: str = "m") -> float:
    value = _in_words(text, name, default_unit, {"m": 1.0, "ft": 0.3048})
    return require_between(value, least=-430.0, most=6000.0, unit="m", name=name)


def _in_words(
    text: str, name: str, default_unit: str, worth: Mapping[str, float]
) -> float:
    asked = Asked(name=name, example=f"a number such as 40 {default_unit}")
    found = written(text, asked=asked)
    unit = found.unit.replace("100ml", "100 ml") or default_unit
    if unit not in worth:
        raise asked.refusal(text)
    return found.number * worth[unit]


def _temperature(text: str, *, name: str, default_unit: str) -> float:
    value = temperature_c(text, name=name, default_unit=default_unit.strip("°"))
    return require_between(value, least=0.0, most=100.0, unit="°C", name=name)


mass_field = _field("g", some_mass)
volume_field = _field("ml", some_volume)
litres_field = _field("l", litres)
kilograms_field = _field("kg", kilograms)
reading_field = _field("g", mass_g)
strength_field = _field("%", strength)
powder_strength_field = _field("%", powder_strength)
share_field = _field("%", share)
per_litre_field = _field("g/l", per_litre)
per_100_ml_field = _field("g/100 ml", per_100_ml)
metres_field = _field("m", metres)
temperature_field = _field("°C", _temperature)
altitude_field = _field("m", _altitude)


def ratio_field(*, label: str, help_text: str = "") -> AmountField:
    """Return a field for a liquor ratio; it may stay empty."""
    return AmountField(
        unit="ml a gram", read=ratio, label=label, required=False, help_text=help_text
    )


class PriceField(AmountField):
    """A price in the studio's own money, to the cent."""

    def __init__(self, *, label: str, help_text: str = "") -> None:
        super().__init__(
            unit="in your money",
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
