"""CIELAB: XYZ on a scale in which equal steps look about equal (CIE 1976)."""

from collections.abc import Sequence
from math import atan2, cbrt, degrees, hypot
from typing import NamedTuple

DELTA = 6.0 / 29.0


class XYZ(NamedTuple):
    """What the eye gets of a colour; Y of a perfect white is 100."""

    X: float
    Y: float
    Z: float


class Lab(NamedTuple):
    """A colour in CIELAB: lightness, red (+) to green, yellow (+) to blue."""

    L: float
    a: float
    b: float

    @property
    def chroma(self) -> float:
        """How far the colour is from grey, C = √(a² + b²)."""
        return hypot(self.a, self.b)

    @property
    def hue_degrees(self) -> float:
        """Which way it lies: 0 red, 90 yellow, 180 green, 270 blue."""
        return degrees(atan2(self.b, self.a)) % 360.0 if self.chroma else 0.0


def lab_of_xyz(xyz: Sequence[float], *, white: Sequence[float]) -> Lab:
    """Return a colour in CIELAB.

    L = 116 f(Y/Yn) − 16                                           (1)
    a = 500 (f(X/Xn) − f(Y/Yn))                                    (2)
    b = 200 (f(Y/Yn) − f(Z/Zn))                                    (3)
    f(t) = ∛t above (6/29)³, else (841/108) t + 4/29               (4)

    Parameters
    ----------
    xyz : sequence of float
        X, Y, Z of the colour. [1]
    white : sequence of float
        X, Y, Z of the white that it is seen beside, on the same scale. [1]

    Returns
    -------
    Lab
        The colour. [1]

    References
    ----------
    .. [cie15] 8.2.1, CIE 1976 L*a*b* space

    Examples
    --------
    >>> lab_of_xyz((95.05, 100.0, 108.9), white=(95.05, 100.0, 108.9))
    Lab(L=100.0, a=0.0, b=0.0)
    """
    f_x, f_y, f_z = (_f(part / full) for part, full in zip(xyz, white, strict=True))
    return Lab(116.0 * f_y - 16.0, 500.0 * (f_x - f_y), 200.0 * (f_y - f_z))


def xyz_of_lab(lab: Lab, *, white: Sequence[float]) -> XYZ:
    """Return the XYZ of a colour in CIELAB: equations 1 to 4 backwards.

    Parameters
    ----------
    lab : Lab
        The colour. [1]
    white : sequence of float
        X, Y, Z of the white that it is seen beside. [1]

    Returns
    -------
    XYZ
        The colour, on the scale of the white. [1]

    References
    ----------
    .. [cie15] annex D, the reverse transformation

    Examples
    --------
    >>> xyz_of_lab(Lab(100.0, 0.0, 0.0), white=(94.811, 100.0, 107.304))
    XYZ(X=94.811, Y=100.0, Z=107.304)
    """
    f_y = (lab.L + 16.0) / 116.0
    roots = (f_y + lab.a / 500.0, f_y, f_y - lab.b / 200.0)
    return XYZ(*(_f_back(f) * full for f, full in zip(roots, white, strict=True)))


def _f(share: float) -> float:
    """Return the cube root, straight in the darkest darks."""
    if share > DELTA**3:
        return cbrt(share)
    return share / (3.0 * DELTA**2) + 4.0 / 29.0


def _f_back(root: float) -> float:
    return root**3 if root > DELTA else 3.0 * DELTA**2 * (root - 4.0 / 29.0)
