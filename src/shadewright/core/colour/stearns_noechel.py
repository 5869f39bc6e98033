"""Stearns and Noechel: two dyed yarns carded together (1944).

Fibres of two colours lie side by side, and light goes from one into the other before
it comes back. So a heather is darker than the mean of its parts and lighter than one
bath with both dyes. A function with one number M, fitted once to a kind of fibre,
adds up by weight.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from shadewright.errors import OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

WOOL_M: Final = 0.15
"""M of the authors for wool; 0.11 to 0.25 was found since (from memory). [1]"""


def blended_reflectance(
    reflectances: "Floats", *, shares: Sequence[float], m: float = WOOL_M
) -> "Floats":
    """Return the reflectance of dyed fibres carded together.

    f(R) = (1 − R) / (M (R − 0.01) + 0.01)                         (15)
    f_blend = Σ x_i f(R_i)                                         (16)
    R = (1 − 0.01 f (1 − M)) / (1 + M f)                           (17)

    Parameters
    ----------
    reflectances : ndarray, shape (fibres, n)
        Reflectance of each dyed fibre on its own; 0 to 1. [1]
    shares : sequence of float
        Weight of each fibre, on any scale; zero or more. [1]
    m : float
        The number M of the fibre; above 0 and below 1. [1]

    Returns
    -------
    ndarray, shape (n,)
        Reflectance of the blend. [1]

    Raises
    ------
    OutOfRangeError
        If M or a share is out of range, or there is not one share for each fibre.

    References
    ----------
    .. [stearns1944] the function and its constant

    Examples
    --------
    >>> import numpy as np
    >>> pair = np.array([[0.6], [0.1]])
    >>> blended_reflectance(pair, shares=[1, 1]).round(6).tolist()
    [0.196311]
    """
    import numpy as np

    _require_blend(len(reflectances), shares, m)
    parts = np.array(shares, dtype=float) / sum(shares)
    added = parts @ ((1.0 - reflectances) / (m * (reflectances - 0.01) + 0.01))
    blend: Floats = (1.0 - 0.01 * added * (1.0 - m)) / (1.0 + m * added)
    return blend


def _require_blend(fibres: int, shares: Sequence[float], m: float) -> None:
    if not 0.0 < m < 1.0:
        raise OutOfRangeError(
            name="M", given=f"{m:g}", allowed="above 0 and below 1", argument="m"
        )
    if len(shares) != fibres or min(shares) < 0.0 or sum(shares) <= 0.0:
        raise OutOfRangeError(
            name="The shares of a blend",
            given=", ".join(f"{share:g}" for share in shares),
            allowed="one for each fibre, none below 0 and not all 0",
            argument="shares",
        )
