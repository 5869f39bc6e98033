"""What a number may be, and the sentence when it is not.

Every chapter asks here, so that the same fault is told in the same words. Not
a number and infinity are refused everywhere.
"""

from math import isfinite
from typing import Protocol

from shadewright.core.quantities.writing import NO_BREAK, amount_text, number_text
from shadewright.errors import OutOfRangeError

_LARGER = {"g": "kg", "ml": "l"}
_MANY = 100_000.0


class Guard(Protocol):
    """A guard for one kind of amount, as ``require_mass`` is."""

    def __call__(self, value: float, /, *, name: str, argument: str) -> float:
        """Return the value, or refuse it."""


def _refuse(
    value: float,
    unit: str,
    allowed: str,
    *,
    limits: tuple[float, ...],
    name: str,
    argument: str,
    advice: str,
) -> OutOfRangeError:
    return OutOfRangeError(
        name=name,
        given=_apart(value, unit, limits),
        allowed=allowed,
        advice=advice,
        argument=argument,
    )


def _apart(value: float, unit: str, limits: tuple[float, ...]) -> str:
    """Return an amount in as many digits as tell it from its limits."""
    taken = {_said(limit, unit) for limit in limits}
    said = _said(value, unit)
    for digits in (6, 9, 17):
        if said not in taken:
            break
        said = f"{number_text(value, digits=digits)}{NO_BREAK}{unit}".rstrip()
    return said


def _said(value: float, unit: str) -> str:
    """Return an amount; of grams and millilitres without end, in kg and l."""
    larger = _LARGER.get(unit)
    if larger and abs(value) >= _MANY:
        return amount_text(value / 1000.0, larger)
    return amount_text(value, unit)


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
    allowed = f"above 0 and at most {_said(most, unit)}"
    raise _refuse(
        value,
        unit,
        allowed,
        limits=(0.0, most),
        name=name,
        argument=argument,
        advice=advice,
    )


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
    allowed = f"from {_said(least, unit)} to {_said(most, unit)}"
    raise _refuse(
        value,
        unit,
        allowed,
        limits=(least, most),
        name=name,
        argument=argument,
        advice=advice,
    )
