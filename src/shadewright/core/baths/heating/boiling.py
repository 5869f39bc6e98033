"""The boiling point by altitude, and the tops that it forbids."""

from math import sqrt

from shadewright.core.quantities import amount_text, require_between
from shadewright.core.tables.boiling import (
    IF97_N,
    KELVIN,
    LAPSE_K_PER_M,
    PRESSURE_POWER,
    SEA_LEVEL_K,
    SEA_LEVEL_KPA,
)

_LEAST_M, _MOST_M = -430.0, 6000.0  # the Dead Sea's shore, and no town above
NEAR_C = 0.05
"""Two temperatures that a thermometer cannot tell apart."""


def air_pressure_kpa(*, altitude_m: float) -> float:
    """Return the pressure of the standard atmosphere.

    p = p_0 (1 − L h/T_0)^(g M/(R L))                              (4)

    Parameters
    ----------
    altitude_m : float
        Altitude above the sea, h, from −430 to 6000. [m]

    Returns
    -------
    float
        Pressure, p. [kPa]

    Raises
    ------
    OutOfRangeError
        If no studio can stand there.

    Notes
    -----
    Weather moves the true pressure by up to 3 kPa, and with it the boiling
    point by up to 1 °C (common practice).

    References
    ----------
    .. [usatmosphere1976] equation 33a (from memory)

    Examples
    --------
    >>> round(air_pressure_kpa(altitude_m=1000.0), 2)
    89.87
    """
    h = require_between(
        altitude_m,
        least=_LEAST_M,
        most=_MOST_M,
        unit="m",
        name="Altitude",
        argument="altitude_m",
    )
    warmth = 1.0 - LAPSE_K_PER_M * h / SEA_LEVEL_K
    return SEA_LEVEL_KPA * float(warmth**PRESSURE_POWER)


def boiling_at_pressure_c(*, pressure_kpa: float) -> float:
    """Return the temperature at which water boils under a pressure.

    β = (p/1 MPa)^¼;  E = β² + n₃β + n₆;  F = n₁β² + n₄β + n₇;
    G = n₂β² + n₅β + n₈;  D = 2G/(−F − √(F² − 4EG));
    T_s = (n₁₀ + D − √((n₁₀ + D)² − 4(n₉ + n₁₀D)))/2               (5)

    Parameters
    ----------
    pressure_kpa : float
        Pressure, p, from 0.7 to 22 000. [kPa]

    Returns
    -------
    float
        Boiling point, T_s. [°C]

    Raises
    ------
    OutOfRangeError
        If water does not boil at any temperature under that pressure.

    Notes
    -----
    Pure water; a dyebath's salt and acid raise it by less than 0.1 °C.

    References
    ----------
    .. [iapws1997] equation 31 and table 34

    Examples
    --------
    >>> round(boiling_at_pressure_c(pressure_kpa=101.325), 2)
    99.97
    """
    pressure = require_between(
        pressure_kpa,
        least=0.7,
        most=22_000.0,
        unit="kPa",
        name="Pressure",
        argument="pressure_kpa",
    )
    n = (0.0, *IF97_N)  # counted from 1, as printed
    beta = float((pressure / 1000.0) ** 0.25)
    e = beta**2 + n[3] * beta + n[6]
    f = n[1] * beta**2 + n[4] * beta + n[7]
    g = n[2] * beta**2 + n[5] * beta + n[8]
    d = 2.0 * g / (-f - sqrt(f**2 - 4.0 * e * g))
    return (n[10] + d - sqrt((n[10] + d) ** 2 - 4.0 * (n[9] + n[10] * d))) / 2 - KELVIN


def boiling_point_c(*, altitude_m: float = 0.0) -> float:
    """Return the temperature at which water boils at an altitude.

    Parameters
    ----------
    altitude_m : float
        Altitude above the sea, from −430 to 6000. [m]

    Returns
    -------
    float
        Boiling point in the standard atmosphere. [°C]

    Raises
    ------
    OutOfRangeError
        If no studio can stand there.

    Notes
    -----
    Equations 4 and 5 in a row; about 1 °C less for every 300 m.

    Examples
    --------
    >>> round(boiling_point_c(altitude_m=1600.0), 1)
    94.6
    """
    pressure_kpa = air_pressure_kpa(altitude_m=altitude_m)
    return boiling_at_pressure_c(pressure_kpa=pressure_kpa)


def boiling_caution(*, top_c: float, altitude_m: float) -> str | None:
    """Return a sentence where water boils before a top temperature, or None.

    Parameters
    ----------
    top_c : float
        The top temperature that is wanted. [°C]
    altitude_m : float
        Altitude of the studio. [m]

    Returns
    -------
    str or None
        What cannot be, and what to do instead; None where it can. [-]

    Raises
    ------
    OutOfRangeError
        If no studio can stand at that altitude.

    Notes
    -----
    How much longer a cooler hold must be is not known to us: the bath tells.

    Examples
    --------
    >>> boiling_caution(top_c=95.0, altitude_m=0.0) is None
    True
    """
    boils_c = boiling_point_c(altitude_m=altitude_m)
    if top_c <= boils_c + NEAR_C:
        return None
    return (
        f"{place_words(altitude_m).capitalize()} water boils at "
        f"{amount_text(boils_c, '°C')}: {amount_text(top_c, '°C')} cannot be reached. "
        "Hold just below the boil, and longer if the bath is not clear."
    )


def place_words(altitude_m: float) -> str:
    """Return an altitude as a sentence says it.

    Parameters
    ----------
    altitude_m : float
        Altitude above the sea. [m]

    Returns
    -------
    str
        At the sea, or at so many metres. [-]

    Notes
    -----
    For people only; no source.

    Examples
    --------
    >>> place_words(0.0)
    'at sea level'
    """
    return f"at {amount_text(altitude_m, 'm')}" if altitude_m else "at sea level"
