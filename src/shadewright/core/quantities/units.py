"""The words for units, and what each is worth in grams, millilitres, °C or kW.

Words are looked up in small letters with single blanks ("UK fl oz" is
``uk fl oz``). A liquid measure without a country is the US one, as in most
hand-dyeing recipes that use them at all.
"""

from collections.abc import Mapping

from shadewright.core.tables import units as table


def _with_names(
    worth: float, *names: str, before: tuple[str, ...] = ("",)
) -> dict[str, float]:
    """Return each name, with each word that may stand before it."""
    return {f"{word} {name}".strip(): worth for word in before for name in names}


_US = ("", "us")
_UK = ("uk", "imperial")
_METRIC = ("metric",)
_SPOON = ("tbsp", "tbsps", "tablespoon", "tablespoons")
_LITTLE_SPOON = ("tsp", "tsps", "teaspoon", "teaspoons")
_CUP = ("cup", "cups")

MASS_G: Mapping[str, float] = {
    **_with_names(1.0, "g", "gm", "gram", "grams", "gramme", "grammes"),
    **_with_names(1000.0, "kg", "kilo", "kilos", "kilogram", "kilograms"),
    **_with_names(0.001, "mg", "milligram", "milligrams"),
    **_with_names(table.GRAMS_PER_OUNCE, "oz", "ounce", "ounces"),
    **_with_names(table.GRAMS_PER_POUND, "lb", "lbs", "pound", "pounds"),
    **_with_names(table.GRAMS_PER_GRAIN, "grain", "grains"),
}

SPOON_ML: Mapping[str, float] = {
    **_with_names(table.ML_PER_US_CUP, *_CUP, before=_US),
    **_with_names(table.ML_PER_US_TABLESPOON, *_SPOON, before=_US),
    **_with_names(table.ML_PER_US_TEASPOON, *_LITTLE_SPOON, before=_US),
    **_with_names(table.ML_PER_UK_CUP, *_CUP, before=_UK),
    **_with_names(table.ML_PER_METRIC_CUP, *_CUP, before=_METRIC),
    **_with_names(table.ML_PER_METRIC_TABLESPOON, *_SPOON, before=(*_METRIC, *_UK)),
    **_with_names(
        table.ML_PER_METRIC_TEASPOON, *_LITTLE_SPOON, before=(*_METRIC, *_UK)
    ),
}

VOLUME_ML: Mapping[str, float] = {
    **_with_names(1.0, "ml", "cc", "millilitre", "millilitres"),
    **_with_names(1.0, "milliliter", "milliliters"),
    **_with_names(10.0, "cl"),
    **_with_names(100.0, "dl"),
    **_with_names(1000.0, "l", "litre", "litres", "liter", "liters"),
    **_with_names(table.ML_PER_US_FLUID_OUNCE, "fl oz", "floz", before=_US),
    **_with_names(table.ML_PER_US_PINT, "pt", "pint", "pints", before=_US),
    **_with_names(table.ML_PER_US_QUART, "qt", "quart", "quarts", before=_US),
    **_with_names(table.ML_PER_US_GALLON, "gal", "gallon", "gallons", before=_US),
    **_with_names(table.ML_PER_UK_FLUID_OUNCE, "fl oz", "floz", before=_UK),
    **_with_names(table.ML_PER_UK_PINT, "pt", "pint", "pints", before=_UK),
    **_with_names(table.ML_PER_UK_QUART, "qt", "quart", "quarts", before=_UK),
    **_with_names(table.ML_PER_UK_GALLON, "gal", "gallon", "gallons", before=_UK),
    **SPOON_ML,
}

PERCENT: Mapping[str, float] = _with_names(1.0, "%", "percent", "per cent")

POWER_KW: Mapping[str, float] = {
    **_with_names(1.0, "kw", "kilowatt", "kilowatts"),
    **_with_names(0.001, "w", "watt", "watts"),
}

_DEGREE = ("", "°", "° ", "º", "º ", "deg", "deg ")  # º stands on some keyboards for °
CELSIUS = frozenset({"celsius", "℃", *(f"{degree}c" for degree in _DEGREE)})
FAHRENHEIT = frozenset({"fahrenheit", "℉", *(f"{degree}f" for degree in _DEGREE)})
