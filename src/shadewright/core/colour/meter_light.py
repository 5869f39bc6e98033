"""A meter set to another light or eye: its Lab as one set to D65 and 10° gives it.

Meters for print reckon Lab for D50 and the 2° observer, dyers use D65 and 10°. Where
the spectrum was not kept there is no exact way across; again the smoothest spectrum of
that colour is the guess, and what the other eye sees of it under the other light
follows by one matrix, as in ``observer_change``. Daylight becomes D65; a lamp or a
tube stays what it is, and only the eye changes.

The guess costs certainty, the more the more vivid the colour. Measured spectra of
paints and charts came to CIEDE2000 0.35 (D50, 10°), 0.6 (D65, 2°) and 0.9 (D50, 2°)
of the truth on average; the tests reckon it again, and the spread of equation 8.
"""

from functools import cache
from typing import TYPE_CHECKING, Final

from shadewright.core.colour.cielab import XYZ, Lab, lab_of_xyz, xyz_of_lab
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.colour.spectra.weights import Observer, weight_table

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

SPREAD: Final = {
    (Light.D65, Observer.TWO_DEGREES): (0.4, 0.05),
    (Light.D50, Observer.TEN_DEGREES): (0.25, 0.03),
    (Light.D50, Observer.TWO_DEGREES): (0.6, 0.075),
    (Light.A, Observer.TWO_DEGREES): (0.3, 0.04),
    (Light.FL11, Observer.TWO_DEGREES): (0.25, 0.03),
}
"""The spread of the guess, c0 and c1 of equation 8, from open spectra. [1]"""


def lab_of_meter(lab: Lab, *, light: Light, observer: Observer) -> Lab:
    """Return what a meter reads, as one set to the 10° observer reads it.

    R = argmin Σ (R_i+1 − R_i)²  with  WᵀR = XYZ;  XYZ' = W'ᵀR     (7)

    Parameters
    ----------
    lab : Lab
        The colour as the meter gives it. [1]
    light : Light
        The light that it reckons for; the weights of it and the eye are W. [-]
    observer : Observer
        The eye that it reckons for. [-]

    Returns
    -------
    Lab
        The colour to the 10° observer; under D65 where the meter reckons for D50,
        else under the same light. [1]

    Notes
    -----
    Greys stay grey. For D65 and 2° it is ``lab_10_of_2``.

    References
    ----------
    .. [burns2020] least slope squared, the linear method

    Examples
    --------
    >>> seen = lab_of_meter(
    ...     Lab(50.0, 40.0, 20.0), light=Light.D50, observer=Observer.TWO_DEGREES
    ... )
    >>> [round(part, 2) for part in seen]
    [48.0, 38.45, 15.24]
    """
    if not _is_step(light, observer):
        return lab
    before = weight_table(light=light, observer=observer)
    after = weight_table(light=_kept(light))
    xyz = xyz_of_lab(lab, white=before.white) @ _matrix(light, observer)
    return lab_of_xyz(XYZ(*map(float, xyz)), white=after.white)


def sd_of_meter(lab: Lab, *, light: Light, observer: Observer) -> float:
    """Return how far the step to the 10° observer and to D65 is off.

    s = c0 + c1 C                                                  (8)

    Parameters
    ----------
    lab : Lab
        The colour as the meter gives it; C is its chroma. [1]
    light : Light
        The light that it reckons for. [-]
    observer : Observer
        The eye that it reckons for. [-]

    Returns
    -------
    float
        Standard deviation, as a CIELAB distance; 0 where there is no step. [1]

    Notes
    -----
    More readings do not make it smaller: it is the same in all of them. c0 and c1 were
    put around the errors of equation 7 on 390 open spectra; our own choice.

    Examples
    --------
    >>> sd_of_meter(
    ...     Lab(50.0, 40.0, 30.0), light=Light.D50, observer=Observer.TEN_DEGREES
    ... )
    1.75
    """
    if not _is_step(light, observer):
        return 0.0
    always, by_chroma = SPREAD[light, observer]
    return always + by_chroma * lab.chroma


def _is_step(light: Light, observer: Observer) -> bool:
    return light is not _kept(light) or observer is not Observer.TEN_DEGREES


def _kept(light: Light) -> Light:
    return Light.D65 if light is Light.D50 else light


@cache
def _matrix(light: Light, observer: Observer) -> "Floats":
    """Return the step from XYZ to XYZ', shape (3, 3), for a row of numbers."""
    before = weight_table(light=light, observer=observer).rows
    step: Floats = _smoothest(before) @ weight_table(light=_kept(light)).rows
    return step


def _smoothest(rows: "Floats") -> "Floats":
    """Return the way from XYZ to the smoothest spectrum, shape (3, bands).

    The least sum of squared steps with three sums kept, by Lagrange's multipliers.
    """
    import numpy as np

    bands = len(rows)
    steps = np.diff(np.eye(bands), axis=0)
    system = np.block([[steps.T @ steps, rows], [rows.T, np.zeros((3, 3))]])
    wanted = np.vstack([np.zeros((bands, 3)), np.eye(3)])
    solved: Floats = np.linalg.solve(system, wanted)[:bands].T
    return solved
