"""A swatch: what was dyed, on what, when, and what was read of it.

Readings differ in how much they tell. A spectrum tells what each band does; Lab under
three lights nearly as much; one Lab leaves a family of spectra open; a colour off a
screen is a guess at one Lab, and a chart does not even say how deep it was dyed.
"""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from math import sqrt

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.colour.spectra.weights import weight_table
from shadewright.core.mixing.model.seeing import SPECTRUM, Seen, seen_under
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.errors import MissingError


class Evidence(StrEnum):
    """What a colour rests on, the poorest first."""

    SCREEN = "screen"
    LAB = "lab"
    THREE_LIGHTS = "three lights"
    SPECTRUM = "spectrum"

    @property
    def rank(self) -> int:
        """0 for the poorest."""
        return list(Evidence).index(self)


Doses = tuple[tuple[str, float], ...]
"""Dyes by name with their depths on weight of fibre. [%]"""

LIGHTS = (Light.D65, Light.A, Light.FL11)
"""Lights under which Lab is read, in this order. [-]"""

SCREEN_SD = 6.0
"""How far a chart's colour is off, as a CIELAB distance (common practice). [1]"""
SCREEN_DOSE = 0.5
"""How unsure a chart's depth is, as a relative standard error (our guess). [1]"""
LEAST_LAB_SD = 0.3
"""A meter's own spread on yarn, as a CIELAB distance (our choice). [1]"""
SPECTRUM_SD = 0.1
"""Spread of 116 R^(1/3), a band (our choice). [1]"""
DOSE_ERROR = 0.02
"""Relative standard error of a swatch's dose (common practice). [1]"""
MOST_DOSE_ERROR = 1.0
MOST_DEPTH_PERCENT = 20.0


@dataclass(frozen=True, kw_only=True)
class Reading:
    """What was read: the spectrum, or Lab under the lights of ``LIGHTS`` in order.

    ``values`` are 31 reflectances from 400 to 700 nm, or three numbers a light;
    ``repeat`` readings were averaged; ``sd`` is the standard deviation of a single
    reading as a CIELAB distance, None where nobody said. A colour that ``is_carried``
    was brought over from another light or eye: all of one dye then err alike.
    """

    evidence: Evidence
    values: tuple[float, ...]
    repeat: int = 1
    sd: float | None = None
    is_carried: bool = False

    @property
    def noise(self) -> float:
        """Standard deviation of each number that is fitted to."""
        if self.evidence is Evidence.SPECTRUM:
            return max(SPECTRUM_SD, self._stated)
        if self.evidence is Evidence.SCREEN and self.sd is None:
            return SCREEN_SD / sqrt(3.0)
        return max(LEAST_LAB_SD / sqrt(3.0), self._stated)

    @property
    def dose_error(self) -> float:
        """Relative standard error of the doses behind it."""
        is_chart = self.evidence is Evidence.SCREEN and self.sd is None
        return SCREEN_DOSE if is_chart else DOSE_ERROR

    @property
    def _stated(self) -> float:
        return 0.0 if self.sd is None else self.sd / sqrt(3.0 * self.repeat)


@dataclass(frozen=True, kw_only=True)
class Swatch:
    """A swatch; ``number`` is how its owner finds it again (a line of a file).

    ``dose_error`` is the relative standard error of its doses where somebody knows how
    well they were measured; None where it is as usual for such a reading.
    """

    number: int
    base: str
    doses: Doses
    reading: Reading
    session: str = ""
    dose_error: float | None = None

    @property
    def dose_spread(self) -> float:
        """Relative standard error of its doses, as the fit takes it."""
        said = self.dose_error
        return self.reading.dose_error if said is None else said


@dataclass(frozen=True, kw_only=True)
class Mix:
    """Dyes that are to be dyed on a base, on a day that the palette knows or not."""

    base: str
    doses: Doses
    session: str = ""


@cache
def seen_under_lights(*lights: Light) -> Seen:
    """Return Lab under some lights, for the 10° observer from 400 to 700 nm.

    Parameters
    ----------
    *lights : Light
        One or more lights. [-]

    Returns
    -------
    Seen
        Lab under each, in order. [-]
    """
    import numpy as np

    tables = [weight_table(light=light) for light in lights]
    return seen_under([(table.rows, np.array(table.white)) for table in tables])


def seen_of(evidence: Evidence, *, daylight: Light = Light.D65) -> Seen:
    """Return how a kind of evidence is seen.

    Parameters
    ----------
    evidence : Evidence
        Spectrum, Lab under three lights, Lab, or a screen's colour. [-]
    daylight : Light
        The light that Lab stands for where no other is named. [-]

    Returns
    -------
    Seen
        The spectrum, or Lab under the lights in question. [-]
    """
    if evidence is Evidence.SPECTRUM:
        return SPECTRUM
    further = LIGHTS[1:] if evidence is Evidence.THREE_LIGHTS else ()
    return seen_under_lights(daylight, *further)


def checked_swatch(swatch: Swatch) -> Swatch:
    """Return a swatch, or refuse one that cannot be.

    Parameters
    ----------
    swatch : Swatch
        What was dyed and read. [%]

    Returns
    -------
    Swatch
        The same. [%]

    Raises
    ------
    MissingError
        If it names no base.
    OutOfRangeError
        If a depth, a spread or a reading cannot be.
    """
    if not swatch.base:
        raise MissingError(
            name="Base", advice="Name the yarn that was dyed.", argument="base"
        )
    checked_doses(swatch.doses)
    if swatch.reading.sd is not None:
        require_above_zero(
            swatch.reading.sd, most=50.0, unit="", name="Spread (sd)", argument="sd"
        )
    if swatch.dose_error is not None:
        require_above_zero(
            swatch.dose_error,
            most=MOST_DOSE_ERROR,
            unit="",
            name="Spread of the doses",
            argument="dose_error",
        )
    _require_readable(swatch.reading)
    return swatch


def checked_doses(doses: Doses) -> Doses:
    """Return the doses of a mix, or refuse one that cannot be.

    Parameters
    ----------
    doses : tuple of (str, float)
        Dye and depth. [%]

    Returns
    -------
    tuple of (str, float)
        The same. [%]

    Raises
    ------
    OutOfRangeError
        If a depth is not above 0, or above 20 %.
    """
    for dye, depth in doses:
        require_above_zero(
            depth,
            most=MOST_DEPTH_PERCENT,
            unit="%",
            name=f"Depth of {dye}",
            argument="doses",
        )
    return doses


def _require_readable(reading: Reading) -> None:
    if reading.evidence is Evidence.SPECTRUM:
        for value in reading.values:
            require_between(
                value,
                least=0.0005,
                most=1.2,
                unit="",
                name="Reflectance",
                argument="reflectance",
                advice="Reflectances are fractions: 0.5 for 50 %.",
            )
        return
    for place in range(0, len(reading.values), 3):
        light, (l_star, a_star, b_star) = (
            LIGHTS[place // 3],
            reading.values[place : place + 3],
        )
        require_between(
            l_star, least=0.0, most=100.5, unit="", name=f"L* under {light}"
        )
        for name, value in (("a*", a_star), ("b*", b_star)):
            require_between(
                value, least=-130.0, most=130.0, unit="", name=f"{name} under {light}"
            )
