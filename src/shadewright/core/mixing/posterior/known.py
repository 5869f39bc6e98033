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
