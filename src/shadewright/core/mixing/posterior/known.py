"""What is known of a palette once it is fitted: the numbers, and how sure they are."""

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.parameters import Sizes, Structure
from shadewright.core.mixing.posterior.solving import Arrow, Inverse, inverse

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_OWED = ("base_factor", "base_shape", "session")


@dataclass(frozen=True, kw_only=True, eq=False)
class Known:
    """Parameters, and the matrix whose inverse is their covariance."""

    structure: Structure
    sizes: Sizes
    start_surface: float
    parameters: "Floats"
    arrow: Arrow

    @cached_property
    def inverse(self) -> Inverse:
        """The covariance with the determinant, reckoned when first asked for."""
        return inverse(self.arrow, self.structure)

    @property
    def covariance(self) -> "Floats":
        """Covariance of all parameters, (all, all)."""
        return self.inverse.covariance

    @cached_property
    def owed(self) -> "Floats":
        """Root of the covariance that is owed to days and further bases, (all, f).

        With C the covariance and f their parameters, P = C_f C_ff⁻¹ C_f' is what
        would be gone if days and bases were known (the Schur complement).
        """
        import numpy as np

        structure = self.structure
        own = np.concatenate([
            np.arange(group.start, group.stop)
            for group in structure.groups
            if group.name in _OWED
        ])
        dyes = structure.shared + structure.per_dye * np.arange(structure.dyes)
        places = (dyes[:, None] + own).ravel()
        aside = self.covariance[:, places]
        root = np.linalg.cholesky(aside[places] + 1e-9 * np.eye(len(places)))
        return np.asarray(np.linalg.solve(root, aside.T).T, dtype=float)
