"""Weights: one number for each band that a meter reads, and each of X, Y and Z.

XYZ is a sum over every nanometre, and a meter reads every tenth. What lies between is
put in by Lagrange's curve through the bands around it. Since the curve is linear in
the bands, light, eye and curve together become one table of weights, reckoned once;
the colour is then a plain sum (ASTM E2022). Where a meter stops short of 360 or
780 nm, the weights beyond its ends are added to its first and last band (ASTM E308).
"""

from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import XYZ
from shadewright.core.colour.spectra.lights import Light, light_power
from shadewright.core.tables.lights import FIRST_NM, LAST_NM
from shadewright.errors import OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

STEPS_NM = (5, 10, 20)
"""Steps that meters read in. [nm]"""

LATEST_FIRST_NM = 400
EARLIEST_LAST_NM = 700


class Observer(IntEnum):
    """A standard observer of the CIE, by the degrees of its field."""

    TWO_DEGREES = 2
    TEN_DEGREES = 10


@dataclass(frozen=True, kw_only=True, eq=False)
class WeightTable:
    """Weights for one light, one observer and the bands of one meter.

    ``rows`` has shape (bands, 3). ``name`` says which table it is and is kept with
    every colour that was summed with it.
    """

    light: Light
    observer: Observer
    first_nm: int
    last_nm: int
    step_nm: int
    rows: "Floats"

    @property
    def name(self) -> str:
        """What the table is called in a record, as ``E2022 D65/10 400-700/10``."""
        eye = f"{self.light}/{self.observer:d}"
        return f"E2022 {eye} {self.first_nm}-{self.last_nm}/{self.step_nm}"

    @property
    def wavelengths_nm(self) -> range:
        """The middle of each band in nanometres."""
        return range(self.first_nm, self.last_nm + 1, self.step_nm)

    @property
    def white(self) -> XYZ:
        """The XYZ of a perfect white: the sums of the weights."""
        return XYZ(*(float(total) for total in self.rows.sum(axis=0)))


@cache
def weight_table(
    *,
    light: Light = Light.D65,
    observer: Observer = Observer.TEN_DEGREES,
    first_nm: int = 400,
    last_nm: int = 700,
    step_nm: int = 10,
) -> WeightTable:
    """Return the weights for a light, an observer and the bands of a meter.

    W_i = k Σ_λ S(λ) x(λ) L_i(λ),  k = 100 / Σ_λ S(λ) y(λ)           (2)

    and likewise for y and z; L_i is what band i has in the curve at λ.

    Parameters
    ----------
    light : Light
        The light, S. [-]
    observer : Observer
        The eye: x, y, z. [-]
    first_nm : int
        First band, 360 to 400, a whole number of steps from 360. [nm]
    last_nm : int
        Last band, 700 to 780, a whole number of steps from 360. [nm]
    step_nm : int
        Distance of two bands: 5, 10 or 20. [nm]

    Returns
    -------
    WeightTable
        The weights; their sums are the white. [1]

    Raises
    ------
    OutOfRangeError
        If no meter reads in such bands.

    Notes
    -----
    For spectra that the meter has not corrected for the width of its bands, use them
    all the same: what E308 prints in its second set of tables is not reckoned here.

    References
    ----------
    .. [astme2022] 6, weighting factors by Lagrange interpolation
    .. [astme308] 7.3, abridged data and missing ends

    Examples
    --------
    >>> table = weight_table()
    >>> table.name, [round(part, 3) for part in table.white]
    ('E2022 D65/10 400-700/10', [94.811, 100.0, 107.305])
    """
    _require_bands(first_nm, last_nm, step_nm)
    whole = _whole_table(light, observer, step_nm)
    start = (first_nm - FIRST_NM) // step_nm
    end = (last_nm - FIRST_NM) // step_nm
    rows = whole[start : end + 1].copy()
    rows[0] += whole[:start].sum(axis=0)
    rows[-1] += whole[end + 1 :].sum(axis=0)
    rows.flags.writeable = False
    return WeightTable(
        light=light,
        observer=observer,
        first_nm=first_nm,
        last_nm=last_nm,
        step_nm=step_nm,
        rows=rows,
    )


@cache
def _whole_table(light: Light, observer: Observer, step_nm: int) -> "Floats":
    """Return the weights from 360 to 780 nm (equation 2)."""
    import numpy as np

    from shadewright.core.tables.observers import (
        CIE_1931_2_DEGREES,
        CIE_1964_10_DEGREES,
    )

    is_wide = observer is Observer.TEN_DEGREES
    eye = np.array(CIE_1964_10_DEGREES if is_wide else CIE_1931_2_DEGREES)
    seen = np.array(light_power(light))[:, None] * eye
    scale = 100.0 / seen[:, 1].sum()
    whole: Floats = scale * (_lagrange(step_nm).T @ seen)
    return whole


def _lagrange(step_nm: int) -> "Floats":
    """Return what each band has in the curve at each nanometre, L.

    Through four bands around, three at the ends; see ``weight_table``.
    """
    import numpy as np

    bands = (LAST_NM - FIRST_NM) // step_nm + 1
    parts = np.zeros((LAST_NM - FIRST_NM + 1, bands))
    for row in range(len(parts)):
        at = row / step_nm
        before = int(at)
        first, last = max(before - 1, 0), min(before + 2, bands - 1)
        near = range(first, last + 1)
        parts[row, first : last + 1] = [_basis(at, band, near) for band in near]
    return parts


def _basis(at: float, band: int, near: range) -> float:
    """Return Lagrange's polynomial of one band: 1 there, 0 at the others."""
    part = 1.0
    for other in near:
        if other != band:
            part *= (at - other) / (band - other)
    return part


def _require_bands(first_nm: int, last_nm: int, step_nm: int) -> None:
    if step_nm not in STEPS_NM:
        raise OutOfRangeError(
            name="The step of a spectrum",
            given=f"{step_nm} nm",
            allowed="5, 10 or 20 nm",
            argument="step_nm",
        )
    is_wide = FIRST_NM <= first_nm <= LATEST_FIRST_NM
    if not is_wide or not EARLIEST_LAST_NM <= last_nm <= LAST_NM:
        raise OutOfRangeError(
            name="A spectrum",
            given=f"one from {first_nm} to {last_nm} nm",
            allowed="one that begins at 360 to 400 nm and ends at 700 to 780 nm",
            argument="first_nm",
        )
    if (first_nm - FIRST_NM) % step_nm or (last_nm - FIRST_NM) % step_nm:
        raise OutOfRangeError(
            name="The ends of a spectrum",
            given=f"{first_nm} and {last_nm} nm",
            allowed=f"whole steps of {step_nm} nm away from {FIRST_NM} nm",
            argument="first_nm",
        )
