"""Amounts as a dyer writes them, turned into grams, millilitres, %, °C and kW.

Each function reads one kind. ``name`` is the quantity in the dyer's words, for
the sentence when it cannot be read; ``argument`` is the field or option at
fault; ``default_unit`` is the unit that is printed beside a field, where a
bare number is enough.
"""

from collections.abc import Mapping

from shadewright.core.quantities import units
from shadewright.core.quantities.ranges import (
    MOST_MASS_G,
    MOST_VOLUME_ML,
    require_between,
)
from shadewright.core.quantities.reading import Asked, Written, written
from shadewright.core.quantities.temperature import temperature_from_fahrenheit_c

_MASS = "a weight such as 5 g, 0.5 kg or 1.5 oz"
_BY_THE_SPOON = (
    "a weight such as 5 g, never by the spoon or the cup (powders lie more or "
    "less dense: weigh it)"
)
_VOLUME = "a volume such as 500 ml, 0.5 l, 16 fl oz or 16 uk fl oz"
_PERCENT = "a percentage such as 1 % or 0.5 %"
_TEMPERATURE = "a temperature such as 40 °C or 104 °F"
_POWER = "a power such as 1.8 kW or 1800 W"


def _with_unit(text: str, asked: Asked, default_unit: str | None) -> Written:
    """Return what was written, with the printed unit where none was typed."""
    found = written(text, asked=asked)
    if found.unit or default_unit is None:
        return found
    return Written(number=found.number, unit=default_unit.casefold())


def _amount(
    text: str,
    asked: Asked,
    words: Mapping[str, float],
    default_unit: str | None,
) -> float:
    """Return the amount in the unit whose worth is 1."""
    found = _with_unit(text, asked, default_unit)
    if found.unit not in words:
        raise asked.refusal(text)
    return found.number * words[found.unit]


def mass_g(
    text: str, *, name: str, argument: str = "", default_unit: str | None = None
) -> float:
    """Return a mass in grams from what was written.

    Parameters
    ----------
    text : str
        A weight: ``5.2 g``, ``1,5oz``, ``2 lb``, ``0.5 kg``, ``80 grains``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        Unit of a bare number; without it a bare number is refused. [-]

    Returns
    -------
    float
        The mass; zero or more. [g]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If it is no weight. Spoons and cups are refused with the reason.
    OutOfRangeError
        If it is below zero or above a tonne.

    Notes
    -----
    Factors as in ``core.tables.units``. A spoon of powder is no measure: its
    bulk density differs between dyes and with how it was filled (common
    practice: weigh).

    Examples
    --------
    >>> mass_g("1,5oz", name="Powder")
    42.5242846875
    """
    asked = Asked(name=name, example=_MASS, argument=argument)
    if _with_unit(text, asked, default_unit).unit in units.SPOON_ML:
        raise asked.refusal(text, allowed=_BY_THE_SPOON)
    value = _amount(text, asked, units.MASS_G, default_unit)
    return require_between(
        value, least=0.0, most=MOST_MASS_G, unit="g", name=name, argument=argument
    )


def volume_ml(
    text: str, *, name: str, argument: str = "", default_unit: str | None = None
) -> float:
    """Return a volume in millilitres from what was written.

    Parameters
    ----------
    text : str
        A volume: ``500ml``, ``0.5 l``, ``16 fl oz`` (US), ``1 uk pt``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        Unit of a bare number; without it a bare number is refused. [-]

    Returns
    -------
    float
        The volume; zero or more. [mL]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If it is no volume. A bare ``oz`` is a weight, so it is refused.
    OutOfRangeError
        If it is below zero or above 1000 l.

    Notes
    -----
    Factors as in ``core.tables.units``. Measures without a country are US.

    Examples
    --------
    >>> volume_ml("0.5 l", name="Volume")
    500.0
    >>> volume_ml("16 uk fl oz", name="Volume")
    454.609
    """
    asked = Asked(name=name, example=_VOLUME, argument=argument)
    value = _amount(text, asked, units.VOLUME_ML, default_unit)
    return require_between(
        value, least=0.0, most=MOST_VOLUME_ML, unit="ml", name=name, argument=argument
    )


def percent(
    text: str, *, name: str, argument: str = "", default_unit: str | None = None
) -> float:
    """Return a percentage from what was written.

    Parameters
    ----------
    text : str
        A percentage: ``1%``, ``0,5 %``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        ``"%"`` where the sign is printed beside the field. [-]

    Returns
    -------
    float
        The percentage; zero or more. [%]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If the sign is missing or another unit stands there.
    OutOfRangeError
        If it is below zero or above 10 000 %.

    Notes
    -----
    What a percentage is *of* (100 ml of stock, the weight of fibre) is the
    caller's business, and so is its narrower range.

    Examples
    --------
    >>> percent("0,5 %", name="Strength")
    0.5
    """
    asked = Asked(name=name, example=_PERCENT, argument=argument)
    value = _amount(text, asked, units.PERCENT, default_unit)
    return require_between(
        value, least=0.0, most=10_000.0, unit="%", name=name, argument=argument
    )


def temperature_c(
    text: str, *, name: str, argument: str = "", default_unit: str | None = None
) -> float:
    """Return a temperature in degrees Celsius from what was written.

    Parameters
    ----------
    text : str
        A temperature: ``40C``, ``40 °C``, ``104F``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        ``"C"`` or ``"F"`` where it is printed beside the field. [-]

    Returns
    -------
    float
        The temperature. [°C]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If neither °C nor °F stands there.
    OutOfRangeError
        If it lies outside −50 to 400 °C: no dye pot is there.

    Notes
    -----
    C = (F − 32)/1.8, exact by definition.

    Examples
    --------
    >>> temperature_c("104F", name="Temperature")
    40.0
    """
    asked = Asked(name=name, example=_TEMPERATURE, argument=argument)
    found = _with_unit(text, asked, default_unit)
    if found.unit in units.CELSIUS:
        value = found.number
    elif found.unit in units.FAHRENHEIT:
        value = temperature_from_fahrenheit_c(temperature_f=found.number)
    else:
        raise asked.refusal(text)
    return require_between(
        value, least=-50.0, most=400.0, unit="°C", name=name, argument=argument
    )


def power_kw(
    text: str, *, name: str, argument: str = "", default_unit: str | None = None
) -> float:
    """Return a power in kilowatts from what was written.

    Parameters
    ----------
    text : str
        A power: ``1.8kW``, ``1800 W``. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    default_unit : str or None
        ``"kW"`` where it is printed beside the field. [-]

    Returns
    -------
    float
        The power; zero or more. [kW]

    Raises
    ------
    MissingError
        If nothing was written.
    UnitError
        If it is no power.
    OutOfRangeError
        If it is below zero or above 1000 kW.

    Notes
    -----
    1 kW = 1000 W, exact.

    Examples
    --------
    >>> power_kw("1800 W", name="Heater")
    1.8
    """
    asked = Asked(name=name, example=_POWER, argument=argument)
    value = _amount(text, asked, units.POWER_KW, default_unit)
    return require_between(
        value, least=0.0, most=1000.0, unit="kW", name=name, argument=argument
    )
