"""What is searched for: a target under lights, on a base, within limits.

With q the K/S of a mix on its base, s the surface term and W the weights of a light
over its white,

    q = q₀ + Σ x_i K_i        R = s + (1 − s) R∞(q)        XYZ = W R    (4)
    f = Σ_lights (w ΔE)²                                                (5)

Since each column of W adds up to 1, the surface term is one addition to XYZ and
costs nothing. CIEDE2000 in one light has a whole line of best recipes in any set of
four dyes; a second light makes each set's best recipe one.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Protocol

from shadewright.core.recipes.search.terms import Wanted, wanted_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]


@dataclass(frozen=True, kw_only=True, eq=False)
class Aim:
    """A colour under some lights, and how much each light counts.

    ``weights`` (3 lights, 31) sum a reflectance of the layer to XYZ over the white,
    the surface left out; ``lab`` (lights, 3) is the target, ``shares`` (lights, 1) the
    w of equation 5; ``start`` (31,) is K/S of a spectrum near the target.
    """

    weights: "Floats"
    surface: float
    ground: "Floats"
    lab: "Floats"
    shares: "Floats"
    start: "Floats"

    @property
    def wanted(self) -> Wanted:
        """The target made ready for its residuals."""
        return wanted_of(self.lab)

    @property
    def lights(self) -> int:
        """How many lights."""
        return len(self.lab)


class Mixed(Protocol):
    """Sets of dyes whose amounts are sought, sets last."""

    def added(self, amounts: "Floats") -> "tuple[Floats, Floats]":
        """Return K/S that the dyes add (31, sets) and its slopes (dyes, 31, sets)."""
        ...

    def some(self, which: "Whole") -> "Mixed":
        """Return some of the sets."""
        ...


@dataclass(frozen=True, kw_only=True, eq=False)
class Proportional:
    """Sets of dyes that add K/S in proportion: ``unit`` (dyes, 31, sets)."""

    unit: "Floats"

    def added(self, amounts: "Floats") -> "tuple[Floats, Floats]":
        """Return K/S that the dyes add, and their unit K/S as slopes.

        Parameters
        ----------
        amounts : ndarray, shape (dyes, sets)
            Amount of each dye, x. [%]

        Returns
        -------
        tuple of (ndarray, shape (31, sets); ndarray, shape (dyes, 31, sets))
            Σ x K, and K. [1]
        """
        found = self.unit[0] * amounts[0]
        for slot in range(1, len(amounts)):
            found += self.unit[slot] * amounts[slot]
        return found, self.unit

    def some(self, which: "Whole") -> "Proportional":
        """Return some of the sets.

        Parameters
        ----------
        which : ndarray, shape (some,)
            Places of sets. [-]

        Returns
        -------
        Proportional
            Those. [-]
        """
        import numpy as np

        return Proportional(unit=np.ascontiguousarray(self.unit[:, :, which]))


@dataclass(frozen=True, kw_only=True, eq=False)
class Dyes:
    """All dyes of a search in proportion: ``unit`` (n, 31), the K of equation 4.

    Place n is no dye: it fills up sets that are smaller than others beside them.
    """

    unit: "Floats"

    @property
    def count(self) -> int:
        """How many, n."""
        return len(self.unit)

    @cached_property
    def columns(self) -> "Floats":
        """Unit K/S, a dye a column, and a last column of noughts (31, n + 1)."""
        import numpy as np

        return np.hstack([self.unit.T, np.zeros((self.unit.shape[1], 1))])

    def of(self, sets: "Whole") -> Proportional:
        """Return the dyes of sets.

        Parameters
        ----------
        sets : ndarray, shape (dyes, sets)
            Places of dyes. [-]

        Returns
        -------
        Proportional
            Their unit K/S, contiguous, sets last. [1]
        """
        import numpy as np

        unit = np.take(self.columns, sets, 1).transpose(1, 0, 2)
        return Proportional(unit=np.ascontiguousarray(unit))
