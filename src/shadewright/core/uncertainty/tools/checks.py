"""Checks of a tool: a known weight on a scale, the water of a mark weighed.

What a check finds is a correction and how sure it is. At the bench nobody corrects
a reading in the head, so the tool is taken to be off by both together: by as much
as it was found off, and by what the check itself leaves open.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import fmean, stdev

from shadewright.core.quantities import (
    Balance,
    require_between,
    require_mass,
    require_volume,
    water_density_g_per_ml,
)
from shadewright.core.tables.water import AIR_G_PER_ML, STEEL_G_PER_ML
from shadewright.core.uncertainty.combining import scaled, total
from shadewright.core.uncertainty.coverage import half_width
from shadewright.core.uncertainty.shapes import Shape
from shadewright.core.uncertainty.tools.scales import mass_read
from shadewright.core.uncertainty.values import Term, Value, bounded
from shadewright.errors import MissingError

_READING = "reading"


@dataclass(frozen=True, kw_only=True)
class Finding:
    """What a check says: in g of a scale, in ml of a mark.

    ``correction`` is to be added to what the tool shows, ``u`` its standard
    uncertainty, ``half_width`` how far the tool is off if nobody corrects it.
    """

    correction: float
    u: float
    half_width: float


def weight_check(
    *,
    step_g: float,
    nominal_g: float,
    tolerance_g: float,
    readings_g: Sequence[float],
) -> Finding:
    """Return what a check weight says about a scale.

    c = m − mean(readings)

    Parameters
    ----------
    step_g : float
        The step that the scale shows, d. [g]
    nominal_g : float
        Mass of the check weight, m. [g]
    tolerance_g : float
        How far the weight itself may be off; zero or more. [g]
    readings_g : sequence of float
        What the scale showed, each time set to nought before. [g]

    Returns
    -------
    Finding
        Correction c, its u, and the half-width without correcting. [-]

    Raises
    ------
    OutOfRangeError
        If the weight or a reading is not above zero, or the tolerance below it.
    MissingError
        If there is no reading.

    Notes
    -----
    Readings within one step of each other say nothing beyond the step. Wider ones
    count with √(1 + 1/n) of their standard deviation: the next weighing will
    scatter as they did.

    References
    ----------
    .. [jcgm100] 4.2 and 4.3.7

    Examples
    --------
    >>> found = weight_check(
    ...     step_g=0.1, nominal_g=100.0, tolerance_g=0.01, readings_g=[100.1] * 3
    ... )
    >>> round(found.correction, 2), round(found.half_width, 2)
    (-0.1, 0.18)
    """
    require_mass(nominal_g, name="Check weight", argument="nominal_g")
    require_between(
        tolerance_g,
        least=0.0,
        most=nominal_g,
        unit="g",
        name="What the weight may be off",
        argument="tolerance_g",
    )
    weight = bounded(
        nominal_g,
        half_width=tolerance_g,
        shape=Shape.RECTANGULAR,
        name="check weight",
        source="check weight",
    )
    shown = _shown(Balance(step_g=step_g, error_g=None), readings_g)
    return _finding(total(weight, scaled(shown, by=-1.0)))


def water_volume_ml(*, mass_g: float, temperature_c: float) -> float:
    """Return the volume of water from what a scale shows in air.

    V = (m/ρ) (1 − ρ_air/ρ_steel)/(1 − ρ_air/ρ)

    Parameters
    ----------
    mass_g : float
        What the scale shows, m. [g]
    temperature_c : float
        Temperature of the water, 0 to 100. [°C]

    Returns
    -------
    float
        Volume of the water, V. [mL]

    Raises
    ------
    OutOfRangeError
        If the mass is not above zero or the water not liquid.

    Notes
    -----
    Air carries a thousandth of the water's weight; the scale was set with steel,
    which it carries less. Ware is not brought to 20 °C: glass grows by a hundredth
    of what water does.

    References
    ----------
    .. [iso8655] part 6, annex A (from memory)

    Examples
    --------
    >>> round(water_volume_ml(mass_g=100.0, temperature_c=20.0), 2)
    100.29
    """
    require_mass(mass_g, name="Water on the scale", argument="mass_g")
    density = water_density_g_per_ml(temperature_c=temperature_c)
    push = (1.0 - AIR_G_PER_ML / STEEL_G_PER_ML) / (1.0 - AIR_G_PER_ML / density)
    return mass_g / density * push


def water_check(
    *,
    nominal_ml: float,
    readings_g: Sequence[float],
    temperature_c: float,
    scale: Balance,
) -> Finding:
    """Return what weighed water says about a mark, or about what is poured.

    c = mean(V) − V_mark

    Parameters
    ----------
    nominal_ml : float
        What the mark says. [mL]
    readings_g : sequence of float
        Net mass of the water of each fill. [g]
    temperature_c : float
        Temperature of the water. [°C]
    scale : Balance
        The scale, with its own error where that is known. [-]

    Returns
    -------
    Finding
        Correction c, its u, and the half-width without correcting. [-]

    Raises
    ------
    OutOfRangeError
        If the mark or a reading is not above zero, or the water not liquid.
    MissingError
        If there is no reading.

    Notes
    -----
    The scale's own error is one for all readings and does not average out.

    References
    ----------
    .. [iso8655] part 6 (method, from memory)

    Examples
    --------
    >>> found = water_check(
    ...     nominal_ml=500.0,
    ...     readings_g=[490.0, 491.0, 490.5],
    ...     temperature_c=20.0,
    ...     scale=Balance(step_g=1.0, error_g=1.0),
    ... )
    >>> round(found.correction, 1), round(found.half_width, 1)
    (-8.1, 9.4)
    """
    require_volume(nominal_ml, name="Mark", argument="nominal_ml")
    ml_per_g = water_volume_ml(mass_g=1.0, temperature_c=temperature_c)
    held = scaled(_shown(scale, readings_g), by=ml_per_g)
    return _finding(total(held, Value(value=-nominal_ml)))


def _shown(scale: Balance, readings_g: Sequence[float]) -> Value:
    """Return the mean of readings with the scale's terms and their scatter."""
    if not readings_g:
        raise MissingError(
            name="What the scale showed",
            advice="Write down at least one reading.",
            argument="readings_g",
        )
    for reading in readings_g:
        require_mass(reading, name="A reading", argument="readings_g")
    mean = mass_read(scale, fmean(readings_g), role="check", key="check")
    return total(mean, _scatter(readings_g, step_g=scale.step_g))


def _scatter(readings_g: Sequence[float], *, step_g: float) -> Value:
    """Return nought with the scatter of readings, if they differ beyond a step."""
    if max(readings_g) - min(readings_g) <= step_g * (1.0 + 1e-6):
        return Value(value=0.0)
    u = stdev(readings_g) * sqrt(1.0 + 1.0 / len(readings_g))
    return Value(value=0.0, terms=(Term(name=_READING, source=_READING, u=u),))


def _finding(correction: Value) -> Finding:
    return Finding(
        correction=correction.value,
        u=correction.u,
        half_width=abs(correction.value) + half_width(correction),
    )
