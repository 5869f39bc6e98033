"""From a reflectance to what was written down of it: a spectrum, or Lab.

A meter writes Lab under one light or several; a better one writes the spectrum. Both
are put on a scale in which equal steps look about equal, so that one error in units
of that scale serves dark and pale alike: Lab is such a scale, and of a spectrum it is
116 R^(1/3), which is L* for each band on its own.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_BREAK = 216.0 / 24389.0
_SLOPE = 24389.0 / 27.0
_DARKEST = 1e-5


@dataclass(frozen=True, kw_only=True, eq=False)
class Seen:
    """How a reflectance is seen: ``weights`` (lights, 31, 3) to XYZ over the white.

    Without weights it is the spectrum itself.
    """

    weights: "Floats | None" = None

    @property
    def width(self) -> int:
        """Numbers that are read of one swatch: 31, or three a light."""
        return 31 if self.weights is None else 3 * len(self.weights)


def seen_under(lights: "Sequence[tuple[Floats, Floats]]") -> Seen:
    """Return Lab under lights, each given as weights and white.

    Parameters
    ----------
    lights : sequence of (ndarray, shape (31, 3); ndarray, shape (3,))
        Tristimulus weights of each light and the white that they add up to. [1]

    Returns
    -------
    Seen
        Lab under the first light, then the next. [-]
    """
    import numpy as np

    return Seen(weights=np.stack([weights / white for weights, white in lights]))


SPECTRUM = Seen()
"""The spectrum itself, band by band."""


def as_seen(reflectance: "Floats", seen: Seen) -> "Floats":
    """Return what is read of a reflectance.

    y = 116 R^(1/3), or L*, a*, b* under each light                  (8)

    Parameters
    ----------
    reflectance : ndarray, shape (n, 31)
        Reflectance as measured. [1]
    seen : Seen
        How it is seen. [-]

    Returns
    -------
    ndarray, shape (n, m)
        31 numbers like L*, or three for each light. [1]

    References
    ----------
    .. [cie15] 8.2.1 (CIELAB)
    """
    import numpy as np

    if seen.weights is None:
        return 116.0 * np.cbrt(np.maximum(reflectance, _DARKEST))
    found = [_lab(reflectance @ weights) for weights in seen.weights]
    return np.concatenate(found, -1)


def as_seen_slope(reflectance: "Floats", seen: Seen) -> "Floats":
    """Return how what is read changes with each band of the reflectance.

    Parameters
    ----------
    reflectance : ndarray, shape (n, 31)
        Reflectance as measured. [1]
    seen : Seen
        How it is seen. [-]

    Returns
    -------
    ndarray, shape (n, m, 31)
        Derivatives of equation 8. [1]
    """
    import numpy as np

    if seen.weights is None:
        bands = 116.0 / 3.0 * np.maximum(reflectance, _DARKEST) ** (-2.0 / 3.0)
        return bands[:, None, :] * np.eye(bands.shape[1])
    found = [_lab_slope(reflectance @ weights) @ weights.T for weights in seen.weights]
    return np.concatenate(found, -2)


def _lab(relative: "Floats") -> "Floats":
    """Return Lab of XYZ over the white's."""
    import numpy as np

    small = (_SLOPE * relative + 16.0) / 116.0
    f = np.where(relative > _BREAK, np.cbrt(np.maximum(relative, _BREAK)), small)
    found: Floats = f @ _to_lab().T - np.array([16.0, 0.0, 0.0])
    return found


def _lab_slope(relative: "Floats") -> "Floats":
    import numpy as np

    root = np.cbrt(np.maximum(relative, _BREAK))
    slope = np.where(relative > _BREAK, 1.0 / (3.0 * root**2), _SLOPE / 116.0)
    found: Floats = _to_lab() * slope[..., None, :]
    return found


def _to_lab() -> "Floats":
    import numpy as np

    return np.array([[0.0, 116.0, 0.0], [500.0, -500.0, 0.0], [0.0, 200.0, -200.0]])
