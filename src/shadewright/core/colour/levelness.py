"""Levelness: one skein of one colour, or not.

With spectra of five spots or more the relative unlevelness index; with Lab alone the
mean distance from the mean colour.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences import ciede2000
from shadewright.core.tables.lights import FIRST_NM
from shadewright.errors import MissingError, OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

BANDS_NM = range(390, 701, 10)
"""Bands of the index. [nm]"""

FEWEST_SPOTS = 2
SPOTS_WANTED = 5
"""Spots that the index was made for. [-]"""


class Unevenness(StrEnum):
    """How level a skein is, in the words of the index."""

    EXCELLENT = "excellent"
    GOOD = "good"
    POOR = "poor"
    BAD = "bad"


@dataclass(frozen=True, kw_only=True)
class Levelness:
    """How far the spots of one skein lie apart.

    ``mean`` and ``most`` are CIEDE2000 from the mean colour, ``spots`` how many.
    """

    mean: float
    most: float
    spots: int


def relative_unlevelness(
    reflectance: "Floats", *, first_nm: int = 400
) -> tuple[float, Unevenness]:
    """Return the relative unlevelness index of a skein, and its word.

    RUI = Σ_λ s(λ) / R(λ) · V(λ),  390 to 700 nm in steps of 10 nm  (12)

    Parameters
    ----------
    reflectance : ndarray, shape (spots, n)
        Reflectance of each spot, in bands of 10 nm; above 0. [1]
    first_nm : int
        The first band, a multiple of 10. [nm]

    Returns
    -------
    tuple of (float, Unevenness)
        RUI, and the word: below 0.2 excellent, below 0.5 good, to 1 poor. [1]

    Raises
    ------
    MissingError
        If there are fewer than two spots.
    OutOfRangeError
        If a reflectance is not above zero.

    Notes
    -----
    s is the standard deviation over the spots, R their mean, V the eye's sensitivity
    to brightness. Made for five spots and more. A meter that begins at 400 nm lacks
    one band of 32, which weighs 0.0001 of 10.7. Formula and limits from memory.

    References
    ----------
    .. [chong1992] the index and its four words

    Examples
    --------
    >>> import numpy as np
    >>> index, word = relative_unlevelness(np.full((5, 31), 0.3))
    >>> index, str(word)
    (0.0, 'excellent')
    """
    _require_spots(len(reflectance))
    mean = reflectance.mean(axis=0)
    if mean.min() <= 0.0:
        raise OutOfRangeError(
            name="Reflectance",
            given=f"{mean.min():g}",
            allowed="above 0",
            argument="reflectance",
        )
    scatter = reflectance.std(axis=0, ddof=1) / mean
    bright = [_brightness(first_nm + 10 * band) for band in range(len(mean))]
    index = float(sum(scatter * bright))
    return index, _word(index)


def colour_scatter(spots: Sequence[Lab]) -> Levelness:
    """Return how far the spots of a skein lie from their mean colour.

    MCDM = Σ ΔE(spot, mean) / n                                    (13)

    Parameters
    ----------
    spots : sequence of Lab
        The colour of each spot. [1]

    Returns
    -------
    Levelness
        Mean and greatest distance, as CIEDE2000. [1]

    Raises
    ------
    MissingError
        If there are fewer than two spots.

    References
    ----------
    .. [astme2214] mean colour difference from the mean

    Examples
    --------
    >>> found = colour_scatter([Lab(50, 0, 0), Lab(52, 0, 0)])
    >>> round(found.mean, 2), round(found.most, 2)
    (1.0, 1.0)
    """
    _require_spots(len(spots))
    mean = Lab(*(sum(parts) / len(spots) for parts in zip(*spots, strict=True)))
    away = [ciede2000(mean, spot) for spot in spots]
    return Levelness(mean=sum(away) / len(away), most=max(away), spots=len(away))


def _brightness(wavelength_nm: int) -> float:
    """Return V at a band of the index, 0 at any other."""
    from shadewright.core.tables.observers import CIE_1931_2_DEGREES

    if wavelength_nm not in BANDS_NM:
        return 0.0
    return CIE_1931_2_DEGREES[wavelength_nm - FIRST_NM][1]


def _word(index: float) -> Unevenness:
    if index < 0.2:
        return Unevenness.EXCELLENT
    if index < 0.5:
        return Unevenness.GOOD
    return Unevenness.POOR if index <= 1.0 else Unevenness.BAD


def _require_spots(count: int) -> None:
    if count < FEWEST_SPOTS:
        raise MissingError(
            name="A second spot",
            advice=f"Read {SPOTS_WANTED} spots of the skein.",
            argument="spots",
        )
