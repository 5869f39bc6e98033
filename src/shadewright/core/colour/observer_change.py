"""A screen's colour as a meter for yarn would read it: from the 2° eye to the 10° one.

Hex and CSS colours are defined for a small field (2°), yarn is measured for a large
one (10°). Many spectra have the same colour to the one eye and differ to the other, so
there is no exact way across. Of all those spectra the smoothest, the one whose
neighbouring bands differ least, is a fair guess at a dyed yarn; what the other eye
sees of it follows by one matrix, and so does the way back.

Measured spectra of paints and charts came to CIEDE2000 0.7 of the truth on average,
where the same numbers taken as they are were off by 2.1; the tests reckon it again.
"""

from collections.abc import Sequence
from typing import Final

from shadewright.core.colour.adaptation import Matrix
from shadewright.core.colour.cielab import XYZ, Lab, lab_of_xyz, xyz_of_lab

WHITE_2: Final = XYZ(95.0468573, 100.0, 108.8829735)
"""D65 to the 2° observer: the sums of its weights. [1]"""

WHITE_10: Final = XYZ(94.8109138, 100.0, 107.3047571)
"""D65 to the 10° observer: the sums of its weights. [1]"""

TO_10: Final[Matrix] = (
    (0.90018958, 0.07687794, 0.01435421),
    (-0.03599287, 0.97691608, 0.05261981),
    (0.06217113, -0.08468008, 1.00900619),
)
"""From XYZ for 2° to XYZ for 10°, equation 6, with the weights of 400 to 700 nm in
steps of 10 nm. [1]"""

TO_2: Final[Matrix] = (
    (1.10812289, -0.08817109, -0.01116612),
    (0.04430439, 1.01549775, -0.05358862),
    (-0.06456011, 0.09065764, 0.98726483),
)
"""The same backwards. [1]"""


def lab_10_of_2(lab: Lab) -> Lab:
    """Return a colour of the 2° observer as the 10° observer sees it, both under D65.

    R = argmin Σ (R_i+1 − R_i)²  with  W2ᵀ R = XYZ;  XYZ' = W10ᵀ R    (6)

    Parameters
    ----------
    lab : Lab
        The colour under D65 to the 2° observer, as of a screen. [1]

    Returns
    -------
    Lab
        The colour under D65 to the 10° observer. [1]

    Notes
    -----
    Greys stay grey. The spectrum is not kept within 0 and 1, so that the step stays
    linear and can be gone back. Colours that no smooth spectrum has, such as a
    screen's purest blue, move furthest.

    References
    ----------
    .. [burns2020] least slope squared, the linear method

    Examples
    --------
    >>> [round(part, 2) for part in lab_10_of_2(Lab(50.0, 40.0, 20.0))]
    [49.07, 40.0, 17.5]
    """
    return _seen(lab, TO_10, WHITE_2, WHITE_10)


def lab_2_of_10(lab: Lab) -> Lab:
    """Return a colour of the 10° observer as the 2° observer sees it, both under D65.

    Parameters
    ----------
    lab : Lab
        The colour under D65 to the 10° observer, as of a meter. [1]

    Returns
    -------
    Lab
        The colour under D65 to the 2° observer, by equation 6 backwards. [1]

    References
    ----------
    .. [burns2020] least slope squared, the linear method

    Examples
    --------
    >>> there = lab_10_of_2(Lab(50.0, 40.0, 20.0))
    >>> [round(part, 4) for part in lab_2_of_10(there)]
    [50.0, 40.0, 20.0]
    """
    return _seen(lab, TO_2, WHITE_10, WHITE_2)


def _seen(lab: Lab, matrix: Matrix, before: XYZ, after: XYZ) -> Lab:
    xyz = xyz_of_lab(lab, white=before)
    return lab_of_xyz([_along(row, xyz) for row in matrix], white=after)


def _along(row: Sequence[float], xyz: XYZ) -> float:
    return sum(part * each for part, each in zip(row, xyz, strict=True))
