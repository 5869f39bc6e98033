"""What a single swatch of a dye says of its whole spectrum.

Of the library's shapes, at any strength, some come near the one colour that was read.
They are weighed by how near,

    w ∝ exp(−½ (ΔE / s)²) exp(−½ ((ln g − ln 7) / σ_g)²)              (1)

and their mean and spread make the prior of this dye alone. It is far narrower than
the usual one, and as wide as honesty asks: many shapes give one colour, and the less
sure the colour itself is, the further around it they are taken: s² = 4² + its own ΔE².
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import hypot, log
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.kubelka_munk import reflectance_of_ks, with_surface
from shadewright.core.mixing.model.seeing import Seen, as_seen
from shadewright.core.mixing.model.shapes import (
    ShapePrior,
    leading_factor,
    nearness,
    shape_library,
    usual_prior,
    wavelengths_nm,
)

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_STRENGTH = log(7.0)
_EXTRA, _EXTRA_NM = 0.3, 40.0
_MEASURED_NEAR, _MEASURED_STRENGTH = 4.0, 0.6
_CHART_NEAR, _CHART_STRENGTH = 8.0, 0.9
_RANK = 14
_GAIN_LEFT, _CHART_GAIN_LEFT = 0.6, 1.0


@dataclass(frozen=True, kw_only=True, eq=False)
class OneSwatch:
    """The only swatch of a dye: Lab (D65), depth, and whether a chart gave it.

    ``off`` is how far that Lab may be off: its standard error as a CIELAB distance.
    """

    lab: "Floats"
    depth: float
    is_chart: bool
    off: float


def prior_with(
    singles: Mapping[int, OneSwatch],
    *,
    dyes: int,
    ground_ks: "Floats",
    surface: float,
    daylight: Seen,
    rank: int = 20,
) -> ShapePrior:
    """Return the prior of every dye: narrow where one swatch is all there is.

    Parameters
    ----------
    singles : mapping of int to OneSwatch
        Dyes that have one swatch, and that swatch. [-]
    dyes : int
        How many dyes. [-]
    ground_ks : ndarray, shape (31,)
        K/S of the bare yarn. [1]
    surface : float
        Surface term. [1]
    daylight : Seen
        Lab under D65. [-]
    rank : int
        Directions of the usual prior. [-]

    Returns
    -------
    ShapePrior
        Mean, factor and share of the usual gain, by dye. [1]
    """
    import numpy as np

    usual = usual_prior(dyes=dyes, rank=rank)
    mean, factor = np.array(usual.mean), np.array(usual.factor)
    gain = np.ones(dyes)
    for dye, single in singles.items():
        mean[dye], near = _near(single, ground_ks, surface, daylight)
        factor[dye] = 0.0
        factor[dye, :, : near.shape[1]] = near
        gain[dye] = _CHART_GAIN_LEFT if single.is_chart else _GAIN_LEFT
    return ShapePrior(mean=mean, factor=factor, gain=gain)


def _near(
    single: OneSwatch, ground_ks: "Floats", surface: float, daylight: Seen
) -> "tuple[Floats, Floats]":
    """Return mean and factor of the shapes that come near one colour."""
    import numpy as np

    measured = hypot(_MEASURED_NEAR, single.off)
    near = _CHART_NEAR if single.is_chart else measured
    wide = _CHART_STRENGTH if single.is_chart else _MEASURED_STRENGTH
    steps = np.linspace(-2.5, 2.5, 21)
    strengths = _STRENGTH + wide * steps
    away = _distances(single, strengths, ground_ks, surface, daylight)
    logs = -0.5 * (away / near) ** 2 - 0.5 * steps**2
    weight = np.exp(logs - logs.max())
    weight /= weight.sum()
    share = weight.sum(1)
    stronger = (weight * strengths).sum(1) / np.maximum(share, 1e-30) - _STRENGTH
    shapes = np.log(shape_library()) + stronger[:, None]
    mean = share @ shapes
    off = (shapes - mean) * np.sqrt(share)[:, None]
    nm = wavelengths_nm()
    loose = _EXTRA**2 * nearness(nm, nm, length=_EXTRA_NM)
    return mean, leading_factor(off.T @ off + loose, rank=_RANK)


def _distances(
    single: OneSwatch,
    strengths: "Floats",
    ground_ks: "Floats",
    surface: float,
    daylight: Seen,
) -> "Floats":
    """Return how far each shape at each strength is from the colour, (3000, 21)."""
    import numpy as np

    from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays

    library = shape_library()
    found = np.empty((len(library), len(strengths)))
    for place, strength in enumerate(np.exp(strengths)):
        whole = ground_ks + single.depth * strength * library
        made = with_surface(reflectance_of_ks(whole), surface=surface)
        lab = as_seen(made, daylight)
        found[:, place] = ciede2000_arrays(lab, single.lab)
    return found
