"""What temperature does to an acid, to water and to the ions in it."""

from math import log, log10

from shadewright.core.quantities import require_between, water_density_g_per_ml
from shadewright.core.tables.acidity import (
    AT_C,
    DEBYE_HUCKEL,
    GAS_CONSTANT_KJ_PER_MOL_K,
    MALMBERG,
    MARSHALL_A_TO_G,
    ZERO_C_IN_K,
    AcidFamily,
)


def pka_at(*, family: AcidFamily, temperature_c: float) -> tuple[float, ...]:
    """Return the pKa of each step of an acid at a temperature.

    pKa = pKa(25 °C) + (ΔH / R ln 10) (1/T − 1/298.15)         (1)

    Parameters
    ----------
    family : AcidFamily
        The acid with all its steps. [-]
    temperature_c : float
        Temperature, T in kelvin; from 0 to 100. [°C]

    Returns
    -------
    tuple of float
        pKa, the step of the most protons first. [-]

    Raises
    ------
    OutOfRangeError
        If water is not liquid at that temperature.

    Notes
    -----
    van 't Hoff's equation with an enthalpy that stays the same, which it does
    not quite: near the boil acetic acid is by 0.15 weaker than this (from
    memory). Ammonium, which moves most, is right within 0.02.

    References
    ----------
    .. [goldberg2002] eq. 6, without its term for the heat capacity

    Examples
    --------
    >>> from shadewright.core.tables.acidity import AMMONIA
    >>> [round(pka, 2) for pka in pka_at(family=AMMONIA, temperature_c=98.0)]
    [7.45]
    """
    warmer = 1 / _kelvin(temperature_c) - 1 / _kelvin(AT_C)
    return tuple(
        pka + heat / (GAS_CONSTANT_KJ_PER_MOL_K * log(10)) * warmer
        for pka, heat in zip(family.pka, family.enthalpy_kj_per_mol, strict=True)
    )


def pkw_at(*, temperature_c: float) -> float:
    """Return pKw, minus the logarithm of water's ion product.

    −pKw = A + B/T + C/T² + D/T³ + (E + F/T + G/T²) log10 ρ     (2)

    Parameters
    ----------
    temperature_c : float
        Temperature, T in kelvin; from 0 to 100. [°C]

    Returns
    -------
    float
        pKw. [-]

    Raises
    ------
    OutOfRangeError
        If water is not liquid at that temperature.

    References
    ----------
    .. [marshall1981] eq. 4, with the density ρ of [kell1975]_

    Examples
    --------
    >>> round(pkw_at(temperature_c=25.0), 3)
    13.995
    """
    kelvin = _kelvin(temperature_c)
    a, b, c, d, e, f, g = MARSHALL_A_TO_G
    by_density = e + f / kelvin + g / kelvin**2
    density = water_density_g_per_ml(temperature_c=temperature_c)
    return -(
        a + b / kelvin + c / kelvin**2 + d / kelvin**3 + by_density * log10(density)
    )


def debye_huckel_factor(*, temperature_c: float) -> float:
    """Return the factor of the Debye-Hückel limiting law, for mol/L.

    A = 1.8246·10⁶ / (ε T)^1.5                                  (3)

    Parameters
    ----------
    temperature_c : float
        Temperature, T in kelvin; from 0 to 100. [°C]

    Returns
    -------
    float
        Factor, A. [(L/mol)^0.5]

    Raises
    ------
    OutOfRangeError
        If water is not liquid at that temperature.

    Notes
    -----
    ε, the dielectric constant of water, is the cubic of [malmberg1956]_.

    References
    ----------
    .. [robinson1959] chapter 9 and appendix 7.1

    Examples
    --------
    >>> round(debye_huckel_factor(temperature_c=25.0), 3)
    0.511
    """
    kelvin = _kelvin(temperature_c)
    dielectric = sum(c * temperature_c**power for power, c in enumerate(MALMBERG))
    return float(DEBYE_HUCKEL / (dielectric * kelvin) ** 1.5)


def _kelvin(temperature_c: float) -> float:
    require_between(
        temperature_c,
        least=0.0,
        most=100.0,
        unit="°C",
        name="Temperature",
        argument="temperature_c",
    )
    return temperature_c + ZERO_C_IN_K
