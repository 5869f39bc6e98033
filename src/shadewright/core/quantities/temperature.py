"""Temperature: its two scales, and what it does to water."""

from shadewright.core.quantities.ranges import require_between
from shadewright.core.tables.water import KELL_A, KELL_B


def temperature_from_fahrenheit_c(*, temperature_f: float) -> float:
    """Return a temperature in °C from one in °F.

    C = (F − 32)/1.8                                             (1)

    Parameters
    ----------
    temperature_f : float
        Temperature, F. [°F]

    Returns
    -------
    float
        Temperature, C. [°C]

    Notes
    -----
    Exact by definition; NIST SP 811, appendix B.

    References
    ----------
    .. [thompson2008] appendix B.8

    Examples
    --------
    >>> temperature_from_fahrenheit_c(temperature_f=185.0)
    85.0
    """
    return (temperature_f - 32.0) / 1.8


def temperature_f(*, temperature_c: float) -> float:
    """Return a temperature in °F from one in °C.

    F = 1.8 C + 32                                               (2)

    Parameters
    ----------
    temperature_c : float
        Temperature, C. [°C]

    Returns
    -------
    float
        Temperature, F. [°F]

    Notes
    -----
    Exact by definition; NIST SP 811, appendix B.

    References
    ----------
    .. [thompson2008] appendix B.8

    Examples
    --------
    >>> temperature_f(temperature_c=100.0)
    212.0
    """
    return 1.8 * temperature_c + 32.0


def water_density_g_per_ml(*, temperature_c: float) -> float:
    """Return the density of water.

    rho = (a0 + a1 t + a2 t² + a3 t³ + a4 t⁴ + a5 t⁵)/(1 + b t)  (3)

    Parameters
    ----------
    temperature_c : float
        Temperature of the water, t, from 0 to 100. [°C]

    Returns
    -------
    float
        Density of air-free water at one atmosphere, rho. [g/mL]

    Raises
    ------
    OutOfRangeError
        If the temperature is not that of liquid water.

    Notes
    -----
    The formula holds from 0 to 150 °C; above 100 °C water boils away here.
    Tap water is heavier by a few parts in ten thousand, which no jug shows.

    References
    ----------
    .. [kell1975] equation 16 (from memory)

    Examples
    --------
    >>> round(water_density_g_per_ml(temperature_c=20.0), 4)
    0.9982
    """
    t = require_between(
        temperature_c,
        least=0.0,
        most=100.0,
        unit="°C",
        name="Temperature",
        argument="temperature_c",
    )
    above = sum(a * t**power for power, a in enumerate(KELL_A))
    return above / (1.0 + KELL_B * t) / 1000.0
