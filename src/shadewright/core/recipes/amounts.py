"""Amounts: depths counted so that a dye adds up in proportion.

A search wants amounts that add up. A dye's *amount* x is the depth that would give the
same strength if its shape and strength stayed as they are at one depth, the anchor:

    x = c exp(ū(c) − ū(anchor))                                      (2)

with ū the mean of u, each band weighed by its K/S. What is left is how the shape bends
from the anchor to c, which is little, and is mended afterwards.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.recipes.curves import LEAST_PERCENT, MOST_PERCENT, Curves

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

_STEPS = 64


@dataclass(frozen=True, kw_only=True, eq=False)
class Amounts:
    """The way from depths to amounts in proportion and back (equation 2).

    ``unit`` (n, 31) is K/S of 1 % at the anchor; ``depths`` (64,) and ``amounts``
    (n, 64) are a table of both.
    """

    unit: "Floats"
    depths: "Floats"
    amounts: "Floats"

    def of_depths(self, depths: "Floats") -> "Floats":
        """Return the amount of each dye at one depth each.

        Parameters
        ----------
        depths : ndarray, shape (n,)
            Depths. [%]

        Returns
        -------
        ndarray, shape (n,)
            Amounts. [%]
        """
        import numpy as np

        pairs = zip(depths, self.amounts, strict=True)
        return np.array([np.interp(c, self.depths, row) for c, row in pairs])

    def to_depths(self, sets: "Whole", amounts: "Floats") -> "Floats":
        """Return the depths that amounts stand for.

        Parameters
        ----------
        sets : ndarray, shape (dyes, sets)
            Places of dyes; n for none. [-]
        amounts : ndarray, shape (dyes, sets)
            Amounts. [%]

        Returns
        -------
        ndarray, shape (dyes, sets)
            Depths. [%]
        """
        import numpy as np

        found = np.zeros(amounts.shape)
        for dye, row in enumerate(self.amounts):
            here = sets == dye
            found[here] = np.interp(amounts[here], row, self.depths)
        return found


def amounts_of(
    curves: Curves, *, anchor_percent: float, even_at_percent: float
) -> Amounts:
    """Return the way from depths to amounts around an anchor.

    Parameters
    ----------
    curves : Curves
        Dyes on a base. [1]
    anchor_percent : float
        Depth at which a dye's shape is taken. [%]
    even_at_percent : float
        Depth at which an amount shall equal the depth, so that a limit of all dyes
        together means the same in both where it binds. [%]

    Returns
    -------
    Amounts
        Equation 2, as a table. [%]
    """
    import numpy as np

    unit = np.exp(curves.logs(np.array([anchor_percent]))[:, 0])
    share = unit / unit.sum(1, keepdims=True)
    depths = np.geomspace(LEAST_PERCENT, MOST_PERCENT, _STEPS)
    bent = curves.logs(depths) - np.log(unit)[:, None]
    mean = np.einsum("nsb,nb->ns", bent, share)
    amounts = np.maximum.accumulate(depths * np.exp(mean), axis=1)
    worth = np.array([np.interp(even_at_percent, depths, row) for row in amounts])
    worth /= even_at_percent
    unit, amounts = unit * worth[:, None], amounts / worth[:, None]
    return Amounts(
        unit=unit,
        depths=np.concatenate([[0.0], depths]),
        amounts=np.hstack([np.zeros((curves.count, 1)), amounts]),
    )
