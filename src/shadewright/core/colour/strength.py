"""Strength of one swatch against another: how much more dye it looks like.

Two jars of a dye, dyed at one depth on one yarn. Dye adds up in K/S, the light
absorbed for the light scattered, so the ratio of K/S, less that of the bare yarn, is
the ratio of strength. Three customs differ in which bands count.

It is the strength that the yarn shows. The strength of a dye in solution is another
thing, and neither may be written under the other's name.
"""

from enum import StrEnum
from typing import TYPE_CHECKING

from shadewright.errors import OutOfRangeError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from shadewright.core.colour.spectra import WeightTable

    Floats = NDArray[np.float64]


class StrengthBy(StrEnum):
    """Which bands count for strength.

    ``SWL`` the one band where the standard absorbs most, ``SUM`` all alike, ``WSUM``
    each as much as the eye sees of it under the light of the weights.
    """

    SWL = "SWL"
    SUM = "SUM"
    WSUM = "WSUM"


def relative_strength_percent(
    sample: "Floats",
    *,
    standard: "Floats",
    ground: "Floats",
    by: StrengthBy,
    weights: "WeightTable",
) -> float:
    """Return the strength of a swatch in per cent of the standard's.

    s = 100 Σ_i w_i (K/S − K/S_0)_sample / Σ_i w_i (K/S − K/S_0)_standard  (11)

    Parameters
    ----------
    sample : ndarray, shape (n,)
        Reflectance of the swatch; above 0 to 1. [1]
    standard : ndarray, shape (n,)
        Reflectance of the standard, dyed at the same depth. [1]
    ground : ndarray, shape (n,)
        Reflectance of the bare yarn, treated alike. [1]
    by : StrengthBy
        Which bands count, w. [-]
    weights : WeightTable
        Light and eye for these bands; only WSUM looks. [1]

    Returns
    -------
    float
        Strength, s; to dye like the standard take 100/s of its depth. [%]

    Raises
    ------
    OutOfRangeError
        If a reflectance is not above 0 and at most 1, or the standard shows no dye.

    Notes
    -----
    Where the three disagree by more than some per cent the shade differs, not the
    strength alone. Above K/S of about 17 it grows no longer with the dye, so SWL of a
    deep swatch says little. WSUM weighs each band by (x + y + z) S of the light.

    References
    ----------
    .. [derbyshire1980] weighted sums of K/S (from memory)

    Examples
    --------
    >>> import numpy as np
    >>> from shadewright.core.colour.spectra import weight_table
    >>> bare, pale, deep = np.full(31, 0.8), np.full(31, 0.5), np.full(31, 0.3)
    >>> s = relative_strength_percent(
    ...     deep, standard=pale, ground=bare, by=StrengthBy.SUM, weights=weight_table()
    ... )
    >>> round(s, 1)
    351.9
    """
    added = [_ks(each) - _ks(ground) for each in (sample, standard)]
    counted = _counted(by, added[1], weights)
    of_sample, of_standard = (float((counted * each).sum()) for each in added)
    if of_standard <= 0.0:
        raise OutOfRangeError(
            name="The standard’s K/S",
            given="no more than that of the bare yarn",
            allowed="above that of the bare yarn",
            argument="standard",
        )
    return 100.0 * of_sample / of_standard


def _counted(by: StrengthBy, dye: "Floats", weights: "WeightTable") -> "Floats":
    """Return how much each band counts, w."""
    import numpy as np

    if by is StrengthBy.WSUM:
        seen: Floats = weights.rows.sum(axis=1)
        return seen
    is_peak = np.arange(len(dye)) == dye.argmax()
    return np.where(is_peak, 1.0, 0.0 if by is StrengthBy.SWL else 1.0)


def _ks(reflectance: "Floats") -> "Floats":
    """Return K/S = (1 − R)² / 2R, by Kubelka and Munk."""
    if reflectance.min() <= 0.0 or reflectance.max() > 1.0:
        raise OutOfRangeError(
            name="Reflectance",
            given=f"{reflectance.min():g} to {reflectance.max():g}",
            allowed="above 0 and at most 1",
            argument="reflectance",
        )
    ks: Floats = (1.0 - reflectance) ** 2 / (2.0 * reflectance)
    return ks
