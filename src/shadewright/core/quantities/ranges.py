"""What a number may be, and the sentence when it is not.

Every chapter asks here, so that the same fault is told in the same words. Not
a number and infinity are refused everywhere.
"""

from math import isfinite

from shadewright.core.quantities.writing import amount_text
from shadewright.errors import OutOfRangeError

MOST_STRENGTH_PERCENT = 50.0
MOST_POWDER_STRENGTH_PERCENT = 400.0
MOST_MASS_G = 1_000_000.0
MOST_VOLUME_ML = 1_000_000.0


def _refuse(
    value: float, unit: str, allowed: str, *, name: str, argument: str, advice: str
) -> OutOfRangeError:
    return OutOfRangeError(
        name=name,
        given=amount_text(value, unit),
        allowed=allowed,
        advice=advice,
        argument=argument,
    )


def require_above_zero(
    value: float,
    *,
    most: float,
    unit: str,
    name: str,
    argument: str = "",
    advice: str = "",
) -> float:
    """Return the value if it is above zero and at most ``most``.

    Parameters
    ----------
    value : float
        The number to look at. [in unit]
    most : float
        The largest that is allowed. [in unit]
    unit : str
        The unit, as it is written. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    advice : str
        What to do, as a whole sentence, or empty. [-]

    Returns
    -------
    float
        The value, unchanged. [in unit]

    Raises
    ------
    OutOfRangeError
        If the value is not finite, not above zero, or too large.

    Notes
    -----
    A guard, not a formula: no source.

    Examples
    --------
    >>> require_above_zero(2.0, most=50.0, unit="%", name="Strength")
    2.0
    """
    if isfinite(value) and 0.0 < value <= most:
        return value
    allowed = f"above 0 and at most {amount_text(most, unit)}"
    raise _refuse(value, unit, allowed, name=name, argument=argument, advice=advice)


def require_between(
    value: float,
    *,
    least: float,
    most: float,
    unit: str,
    name: str,
    argument: str = "",
    advice: str = "",
) -> float:
    """Return the value if it lies from ``least`` to ``most``, both allowed.

    Parameters
    ----------
    value : float
        The number to look at. [in unit]
    least : float
        The smallest that is allowed. [in unit]
    most : float
        The largest that is allowed. [in unit]
    unit : str
        The unit, as it is written. [-]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]
    advice : str
        What to do, as a whole sentence, or empty. [-]

    Returns
    -------
    float
        The value, unchanged. [in unit]

    Raises
    ------
    OutOfRangeError
        If the value is not finite or lies outside.

    Notes
    -----
    A guard, not a formula: no source.

    Examples
    --------
    >>> require_between(0.0, least=0.0, most=100.0, unit="°C", name="Temperature")
    0.0
    """
    if isfinite(value) and least <= value <= most:
        return value
    allowed = f"from {amount_text(least, unit)} to {amount_text(most, unit)}"
    raise _refuse(value, unit, allowed, name=name, argument=argument, advice=advice)


def require_mass(value_g: float, *, name: str, argument: str) -> float:
    """Return a mass in grams that is above zero and at most a tonne.

    Parameters
    ----------
    value_g : float
        The mass. [g]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The mass, unchanged. [g]

    Raises
    ------
    OutOfRangeError
        If the mass is not finite, not above zero, or above a tonne.

    Notes
    -----
    The tonne is a guard against slips of the finger, not a fact of the trade.

    Examples
    --------
    >>> require_mass(5.0, name="Powder", argument="powder_g")
    5.0
    """
    return require_above_zero(
        value_g, most=MOST_MASS_G, unit="g", name=name, argument=argument
    )


def require_volume(value_ml: float, *, name: str, argument: str) -> float:
    """Return a volume in millilitres that is above zero and at most 1000 l.

    Parameters
    ----------
    value_ml : float
        The volume. [mL]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The volume, unchanged. [mL]

    Raises
    ------
    OutOfRangeError
        If the volume is not finite, not above zero, or above 1000 l.

    Notes
    -----
    The 1000 l are a guard against slips of the finger.

    Examples
    --------
    >>> require_volume(500.0, name="Volume", argument="volume_ml")
    500.0
    """
    return require_above_zero(
        value_ml, most=MOST_VOLUME_ML, unit="ml", name=name, argument=argument
    )


def require_strength(
    value_percent: float, *, name: str = "Strength", argument: str = "strength_percent"
) -> float:
    """Return a stock's strength that is above zero and at most 50 %.

    Parameters
    ----------
    value_percent : float
        The strength, in g per 100 ml. [%]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The strength, unchanged. [%]

    Raises
    ------
    OutOfRangeError
        If the strength is not finite, not above zero, or above 50 %.

    Notes
    -----
    No acid dye is known to dissolve to 50 %: a guard, no measured limit.

    Examples
    --------
    >>> require_strength(1.0)
    1.0
    """
    return require_above_zero(
        value_percent,
        most=MOST_STRENGTH_PERCENT,
        unit="%",
        name=name,
        argument=argument,
    )


def require_powder_strength(
    value_percent: float, *, argument: str = "powder_strength_percent"
) -> float:
    """Return a powder's strength that is above zero and at most 400 %.

    Parameters
    ----------
    value_percent : float
        Strength against the dye's standard powder, 100 %. [%]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The strength, unchanged. [%]

    Raises
    ------
    OutOfRangeError
        If the strength is not finite, not above zero, or above 400 %.

    Notes
    -----
    Powders of 200 % and more are sold; 400 % is a guard.

    Examples
    --------
    >>> require_powder_strength(80.0)
    80.0
    """
    return require_above_zero(
        value_percent,
        most=MOST_POWDER_STRENGTH_PERCENT,
        unit="%",
        name="Powder strength",
        argument=argument,
    )
