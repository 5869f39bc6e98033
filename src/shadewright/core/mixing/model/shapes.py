"""What the spectra of dyes look like before a single one has been measured.

Nobody knows a dye from one swatch, but nobody starts from nothing either. A dye
absorbs in one to four bands, each some tens of nanometres wide, on a low floor.
Three thousand such shapes, drawn once and always the same, say how the logarithm
of K/S goes from wavelength to wavelength; half of that knowledge and half of plain
smoothness make the prior that every dye begins with.
"""

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

FIRST_NM, LAST_NM, STEP_NM, BANDS = 400, 700, 10, 31
_DRAWN = 3000
_SEED = 77
_SMOOTH_NM = 70.0


@dataclass(frozen=True, kw_only=True)
class ShapePrior:
    """Mean (n, 31) and factor (n, 31, r) of each dye's log unit-K/S, peak near 0.

    ``gain`` (n,) is the share of the usual spread of strength that is left.
    """

    mean: "Floats"
    factor: "Floats"
    gain: "Floats"


def wavelengths_nm() -> "Floats":
    """Return the bands of the model: 400 to 700 nm by 10.

    Returns
    -------
    ndarray, shape (31,)
        Wavelengths. [nm]
    """
    import numpy as np

    return np.arange(FIRST_NM, LAST_NM + 1, STEP_NM, dtype=float)


def nearness(first: "Floats", second: "Floats", *, length: float) -> "Floats":
    """Return how much two points have in common, by their distance.

    k = exp(−(x − y)² / 2 l²)                                       (5)

    Parameters
    ----------
    first, second : ndarray, shape (n,) and (m,)
        Points on a line. [any]
    length : float
        Distance over which they drift apart, l; above zero. [as first]

    Returns
    -------
    ndarray, shape (n, m)
        1 where they coincide, towards 0 far apart. [1]

    References
    ----------
    .. [rasmussen2006] equation 4.9
    """
    import numpy as np

    found: Floats = np.exp(-0.5 * ((first[:, None] - second[None]) / length) ** 2)
    return found


def leading_factor(covariance: "Floats", *, rank: int) -> "Floats":
    """Return a factor of the strongest directions of a covariance.

    C ≈ F F', with F of ``rank`` columns                            (6)

    Parameters
    ----------
    covariance : ndarray, shape (n, n)
        Symmetric, C. [any]
    rank : int
        Directions kept; at most n. [-]

    Returns
    -------
    ndarray, shape (n, rank)
        The factor, F. [root of the unit]
    """
    import numpy as np

    sizes, directions = np.linalg.eigh(covariance)
    strongest = np.argsort(sizes)[::-1][:rank]
    found: Floats = directions[:, strongest] * np.sqrt(
        np.maximum(sizes[strongest], 0.0)
    )
    return found


@cache
def shape_library() -> "Floats":
    """Return three thousand invented absorption spectra, each with its peak at 1.

    Returns
    -------
    ndarray, shape (3000, 31)
        Unit K/S, peak near 1 on a floor of 0.001 to 0.02. [1]

    Notes
    -----
    Bands are skewed bells in wavenumber, wider on the blue side. The numbers are
    our choice, after the general look of absorption spectra: no dye is meant.
    """
    import numpy as np

    draws = np.random.default_rng(_SEED)
    shapes = np.array([_shape(draws) for _ in range(_DRAWN)])
    shapes.setflags(write=False)
    return shapes


def _shape(draws: "np.random.Generator") -> "Floats":
    """Return one invented spectrum of one to four bands."""
    import numpy as np

    main_nm = draws.uniform(395, 690)
    bands = int(draws.choice([1, 2, 3, 4], p=[0.25, 0.35, 0.25, 0.15]))
    shape = np.zeros(BANDS)
    for place in range(bands):
        shape += _band(draws, main_nm, is_main=place == 0)
    floor = np.exp(draws.uniform(np.log(0.0008), np.log(0.02)))
    found: Floats = shape / shape.max() + floor
    return found


def _band(draws: "np.random.Generator", main_nm: float, *, is_main: bool) -> "Floats":
    """Return one band; side bands are weaker and lie near the main one, or not."""
    import numpy as np

    at_nm = main_nm
    if not is_main:
        is_free = draws.random() < 0.6
        at_nm = draws.uniform(370, 720) if is_free else main_nm + draws.normal(0, 35)
    at_nm = float(np.clip(at_nm, 370, 730))
    width = np.exp(draws.normal(np.log(0.11), 0.35)) * (at_nm / 550) ** -0.5
    skew = np.exp(draws.normal(0.2, 0.25))
    height = 1.0 if is_main else np.exp(draws.normal(-1.2, 0.8))
    away = 1e3 / wavelengths_nm() - 1e3 / at_nm
    wide = np.where(away > 0, width * skew, width)
    found: Floats = height * np.exp(
        -0.5 * np.abs(away / wide) ** draws.uniform(1.7, 2.1)
    )
    return found


def usual_prior(*, dyes: int, rank: int = 20) -> ShapePrior:
    """Return what is known of every dye's shape before it is dyed.

    C = ½ C_library + ½ v (0.9 k(λ, λ'; 70 nm) + 0.1)                (7)

    Parameters
    ----------
    dyes : int
        How many dyes, n. [-]
    rank : int
        Directions kept; all 31 where spectra are to be met closely. [-]

    Returns
    -------
    ShapePrior
        Mean and factor of log unit-K/S, the same for each dye. [1]

    Notes
    -----
    v is the library's mean variance, so that both halves weigh the same. Neither
    alone does: the library is too sure of bands, smoothness of none.
    """
    import numpy as np

    mean, factor = _blend(rank)
    return ShapePrior(
        mean=np.broadcast_to(mean, (dyes, BANDS)),
        factor=np.broadcast_to(factor, (dyes, *factor.shape)),
        gain=np.ones(dyes),
    )


@cache
def _blend(rank: int) -> "tuple[Floats, Floats]":
    import numpy as np

    nm = wavelengths_nm()
    logs = np.log(shape_library())
    mean = logs.mean(0)
    spread = np.cov(logs.T) + 1e-5 * np.eye(BANDS)
    smooth = 0.9 * nearness(nm, nm, length=_SMOOTH_NM) + 0.1
    both = 0.5 * spread + 0.5 * np.trace(spread) / BANDS * smooth
    if rank >= BANDS:
        both += 0.02**2 * np.eye(BANDS)
    return 0.5 * mean + 0.5 * mean.mean(), leading_factor(both, rank=rank)
