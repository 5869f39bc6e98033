"""The amounts that only a recipe asks for."""

from shadewright.core.baths.depth import MOST_DEPTH_PERCENT
from shadewright.core.quantities import (
    percent,
    require_above_zero,
    require_between,
)
from shadewright.core.quantities.reading import Asked, written


def depth(text: str, *, name: str, default_unit: str = "%") -> float:
    """Return a depth of shade: above 0, at most 50 %."""
    value = percent(text, name=name, default_unit=default_unit)
    return require_above_zero(value, most=MOST_DEPTH_PERCENT, unit="%", name=name)


def plain(text: str, *, name: str, default_unit: str = "") -> float:
    """Return an amount above zero whose unit is chosen beside it."""
    value = _number(text, name, default_unit)
    return require_above_zero(value, most=500.0, unit="", name=name)


def pace(text: str, *, name: str, default_unit: str = "°C/min") -> float:
    """Return degrees a minute."""
    value = _number(text, name, default_unit)
    return require_between(value, least=0.05, most=20.0, unit=default_unit, name=name)


def minutes(text: str, *, name: str, default_unit: str = "min") -> float:
    """Return minutes, at most ten hours."""
    value = _number(text, name, default_unit)
    return require_between(value, least=0.0, most=600.0, unit=default_unit, name=name)


def _number(text: str, name: str, unit: str) -> float:
    example = f"a number such as 2 {unit}".rstrip()
    asked = Asked(name=name, example=example)
    found = written(text, asked=asked)
    if found.unit.strip("°") not in {"", unit.casefold().strip("°")}:
        raise asked.refusal(text)
    return found.number
