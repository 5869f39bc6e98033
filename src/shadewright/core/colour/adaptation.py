"""Bradford: a colour under another white, as the eye that has grown used to it sees it.

Print shops and some meters give Lab for D50, dyers use D65. The eye's three kinds of
cone are each turned up or down until the one white becomes the other. It is a rule for
appearance: what a yarn really reads under the other light needs its spectrum.
"""

from collections.abc import Sequence
from typing import Final

from shadewright.core.colour.cielab import XYZ, Lab, lab_of_xyz, xyz_of_lab

Matrix = tuple[tuple[float, float, float], ...]

CONES: Final[Matrix] = (
    (0.8951, 0.2664, -0.1614),
    (-0.7502, 1.7135, 0.0367),
    (0.0389, -0.0685, 1.0296),
)
"""From XYZ to the sharpened cones of Bradford. [1]"""


def adapted_xyz(
    xyz: Sequence[float], *, from_white: Sequence[float], to_white: Sequence[float]
) -> XYZ:
    """Return a colour as it appears under another white.

    XYZ' = M⁻¹ diag(ρ'/ρ, γ'/γ, β'/β) M XYZ                        (5)

    Parameters
    ----------
    xyz : sequence of float
        X, Y, Z of the colour. [1]
    from_white : sequence of float
        X, Y, Z of the white that it was measured beside. [1]
    to_white : sequence of float
        X, Y, Z of the other white. [1]

    Returns
    -------
    XYZ
        The colour that looks the same beside the other white. [1]

    Notes
    -----
    The linear form, as in profiles for colour; the first form had a small power in
    its blue channel.

    References
    ----------
    .. [iccprofile] annex E, chromatic adaptation

    Examples
    --------
    >>> white = (96.422, 100.0, 82.521)
    >>> seen = adapted_xyz(white, from_white=white, to_white=(95.047, 100.0, 108.883))
    >>> [round(part, 3) for part in seen]
    [95.047, 100.0, 108.883]
    """
    cones, before, after = (_times(CONES, each) for each in (xyz, from_white, to_white))
    turned = [
        cone * new / old for cone, new, old in zip(cones, after, before, strict=True)
    ]
    return XYZ(*_times(_inverse(CONES), turned))


def adapted_lab(
    lab: Lab, *, from_white: Sequence[float], to_white: Sequence[float]
) -> Lab:
    """Return a colour in CIELAB as it appears under another white.

    Parameters
    ----------
    lab : Lab
        The colour beside the first white. [1]
    from_white : sequence of float
        X, Y, Z of the first white. [1]
    to_white : sequence of float
        X, Y, Z of the other white. [1]

    Returns
    -------
    Lab
        The colour beside the other white, by equation 5. [1]

    References
    ----------
    .. [iccprofile] annex E, chromatic adaptation

    Examples
    --------
    >>> d50, d65 = (96.422, 100.0, 82.521), (95.047, 100.0, 108.883)
    >>> seen = adapted_lab(Lab(50.0, 40.0, 20.0), from_white=d50, to_white=d65)
    >>> [round(part, 1) for part in seen]
    [49.5, 39.1, 19.1]
    """
    xyz = xyz_of_lab(lab, white=from_white)
    seen = adapted_xyz(xyz, from_white=from_white, to_white=to_white)
    return lab_of_xyz(seen, white=to_white)


def _times(matrix: Matrix, vector: Sequence[float]) -> list[float]:
    return [sum(m * v for m, v in zip(row, vector, strict=True)) for row in matrix]


def _inverse(matrix: Matrix) -> Matrix:
    """Return the inverse of a 3 by 3 matrix, by its cross products."""
    first, second, third = matrix
    columns = (_cross(second, third), _cross(third, first), _cross(first, second))
    volume = sum(m * v for m, v in zip(first, columns[0], strict=True))
    return tuple(
        (columns[0][row] / volume, columns[1][row] / volume, columns[2][row] / volume)
        for row in range(3)
    )


def _cross(one: Sequence[float], other: Sequence[float]) -> tuple[float, float, float]:
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )
