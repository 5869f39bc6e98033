"""The plain twin of the fast kernel: one recipe, one band after the other.

Slow, and as the equations are printed. Tests hold the fast kernel to it.
"""

from math import sqrt
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab, lab_of_xyz
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.recipes.search.problem import Aim

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


def plain_value(aim: Aim, unit: "Floats", amounts: "Floats") -> float:
    """Return the objective of one recipe (equations 4 and 5).

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]
    unit : ndarray, shape (dyes, 31)
        K/S of 1 % of each dye. [1]
    amounts : ndarray, shape (dyes,)
        Amount of each. [%]

    Returns
    -------
    float
        f. [1]
    """
    found = 0.0
    for place, lab in enumerate(plain_labs(aim, unit, amounts)):
        away = ciede2000(Lab(*aim.lab[place].tolist()), lab)
        found += (float(aim.shares[place, 0]) * away) ** 2
    return found


def plain_labs(aim: Aim, unit: "Floats", amounts: "Floats") -> list[Lab]:
    """Return the colour of one recipe under each light.

    Parameters
    ----------
    aim : Aim
        Lights and bare yarn. [-]
    unit : ndarray, shape (dyes, 31)
        K/S of 1 % of each dye. [1]
    amounts : ndarray, shape (dyes,)
        Amount of each. [%]

    Returns
    -------
    list of Lab
        L*, a*, b* under each light. [1]
    """
    inside = []
    for band, ground in enumerate(aim.ground):
        dyes = (x * k for x, k in zip(amounts, unit[:, band], strict=True))
        ks = float(ground) + sum(map(float, dyes))
        inside.append(1.0 + ks - sqrt(ks * ks + 2.0 * ks))
    seen = []
    for row in aim.weights:
        bands = zip(row, inside, strict=True)
        seen.append(aim.surface + sum(float(w) * r for w, r in bands))
    return [
        lab_of_xyz(seen[first : first + 3], white=(1.0, 1.0, 1.0))
        for first in range(0, len(seen), 3)
    ]
