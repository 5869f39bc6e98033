"""Warmth as a dyer writes it: temperatures in °C or °F, power in kW or W."""

from shadewright.core.quantities import units
from shadewright.core.quantities.ranges import Guard, require_between
from shadewright.core.quantities.reading import Asked, read_amount, with_unit
from shadewright.core.quantities.temperature import temperature_from_fahrenheit_c

_TEMPERATURE = "a temperature such as 40 °C or 104 °F"
_POWER = "a power such as 1.8 kW or 1800 W"


def temperature_c(
    text: str,
    *,
    name: str,
    argument: str = "",
    default_unit: str | None = None,
    guard: Guard | None = None,
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
    guard : Guard or None
        What the temperature may be; without it the range below. [-]

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
        If it lies outside −50 to 400 °C, where no dye pot is, or is not as the
        guard will have it.

    Notes
    -----
    C = (F − 32)/1.8, exact by definition.

    Examples
    --------
    >>> temperature_c("104F", name="Temperature")
    40.0
    """
    asked = Asked(name=name, example=_TEMPERATURE, argument=argument)
    found = with_unit(text, asked=asked, default_unit=default_unit)
    if found.unit in units.CELSIUS:
        value = found.number
    elif found.unit in units.FAHRENHEIT:
        value = temperature_from_fahrenheit_c(temperature_f=found.number)
    else:
        raise asked.refusal(text)
    if guard is not None:
        return guard(value, name=name, argument=argument)
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
    value = read_amount(
        text, asked=asked, worth=units.POWER_KW, default_unit=default_unit
    )
    return require_between(
        value, least=0.0, most=1000.0, unit="kW", name=name, argument=argument
    )
