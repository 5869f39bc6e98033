"""The lights of the CIE under which yarn is looked at, nanometre by nanometre."""

from enum import StrEnum
from itertools import pairwise
from math import exp

from shadewright.core.tables import lights as table
from shadewright.core.tables.lights import FIRST_NM, LAST_NM


class Light(StrEnum):
    """A light of the CIE, under the name that is written beside a colour."""

    A = "A"
    D50 = "D50"
    D65 = "D65"
    FL11 = "FL11"
    LED_B3 = "LED-B3"


_TABULATED = {
    Light.D50: (table.D50_FROM_360, 360),
    Light.D65: (table.D65_FROM_360, 360),
    Light.FL11: (table.FL11_FROM_380, 380),
    Light.LED_B3: (table.LED_B3_FROM_380, 380),
}


def light_power(light: Light) -> list[float]:
    """Return a light's relative power at each nanometre from 360 to 780.

    S(λ) = 100 (560/λ)⁵ (exp(c2/(560 T)) − 1) / (exp(c2/(λ T)) − 1)   (1)

    is light A, with c2 = 1.435·10⁷ nm K and T = 2848 K. The others run straight between
    the numbers of their tables; FL11 and LED-B3 give nothing below 380 nm.

    Parameters
    ----------
    light : Light
        The light. [-]

    Returns
    -------
    list of float
        421 numbers; their scale does not matter. [1]

    References
    ----------
    .. [cie15] 4.1 for A, 4.2 and the annex for the others

    Examples
    --------
    >>> light_power(Light.D65)[200], round(light_power(Light.A)[200], 3)
    (100.0, 100.0)
    """
    if light is Light.A:
        return [_bulb(nanometres) for nanometres in range(FIRST_NM, LAST_NM + 1)]
    numbers, first = _TABULATED[light]
    dark = [0.0] * (first - FIRST_NM)
    return dark + _straight_between(numbers)


def _bulb(nanometres: int) -> float:
    """Return the power of light A (equation 1)."""
    c2, kelvin, at = table.A_NANOMETRE_KELVIN, table.A_KELVIN, table.A_REFERENCE_NM
    over, under = exp(c2 / (at * kelvin)) - 1, exp(c2 / (nanometres * kelvin)) - 1
    return 100.0 * (at / nanometres) ** 5 * over / under


def _straight_between(numbers: tuple[float, ...]) -> list[float]:
    step = table.STEP_NM
    between = [
        (low * (step - part) + high * part) / step
        for low, high in pairwise(numbers)
        for part in range(step)
    ]
    return [*between, numbers[-1]]
