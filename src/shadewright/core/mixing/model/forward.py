"""From parameters to what is seen of each swatch, and how each parameter moves it.

    q = k0_b + Σ_i c_i exp u_i          K/S of the mix on base b           (10)
    R = s + (1 − s) R∞(q)               equations 2 and 4
    y = what is seen of R               equation 8

Since u is linear in the parameters, the derivative of y is the chain of the three and
exact.
"""

from dataclasses import dataclass
from math import exp, log
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.entries import Entries
from shadewright.core.mixing.model.kubelka_munk import (
    reflectance_of_ks,
    slope_of_reflectance,
    with_surface,
)
from shadewright.core.mixing.model.parameters import (
    COMMON,
    SURFACE_LOG_SD,
    Structure,
    ground_prior,
)
from shadewright.core.mixing.model.seeing import Seen, as_seen, as_seen_slope
from shadewright.core.mixing.model.shapes import wavelengths_nm

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

USUAL_SURFACE = 0.005
_LEAST_LOG, _MOST_LOG = -14.0, 9.0


@dataclass(frozen=True, kw_only=True, eq=False)
class Slopes:
    """What is seen, and how it moves.

    ``reflectance`` (S, 31) and ``seen`` (S, m) of it; ``shared`` (S, m, G) by the
    parameters that dyes share; ``own`` (E, m, P) by a dye's own; ``dose`` (E, m) by the
    logarithm of the dose.
    """

    reflectance: "Floats"
    seen: "Floats"
    shared: "Floats"
    own: "Floats"
    dose: "Floats"


def surface_of(parameters: "Floats", *, start: float = USUAL_SURFACE) -> float:
    """Return the surface term that the parameters stand for.

    s = s₀ exp(0.8 θ₀)                                              (11)

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector. [1]
    start : float
        Where the surface term starts, s₀; above zero. [1]

    Returns
    -------
    float
        Surface term, s. [1]
    """
    return exp(log(start) + SURFACE_LOG_SD * float(parameters[0]))


def grounds_of(parameters: "Floats", structure: Structure) -> "Floats":
    """Return K/S of each bare base.

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector. [1]
    structure : Structure
        Where things stand in it. [-]

    Returns
    -------
    ndarray, shape (bases, 31)
        K/S of the undyed yarn. [1]
    """
    import numpy as np

    mean, factor = ground_prior(wavelengths_nm(), rank=structure.ground_rank)
    first = 1 + len(COMMON)
    own = parameters[first : structure.shared].reshape(structure.bases, -1)
    return np.exp(np.clip(mean + own @ factor.T, -12.0, 5.0))


def unit_ks(parameters: "Floats", rows: Entries, structure: Structure) -> "Floats":
    """Return K/S that each dye adds in each swatch.

    c_i exp u_i, with u_i of equation 9                             (12)

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector. [1]
    rows : Entries
        Dyes in swatches. [1]
    structure : Structure
        Where things stand. [-]

    Returns
    -------
    ndarray, shape (E, 31)
        K/S. [1]
    """
    import numpy as np

    own = parameters[structure.shared :].reshape(structure.dyes, -1)[rows.dye]
    common = parameters[1 : 1 + len(COMMON)]
    logs = rows.mean + np.einsum("enp,ep->en", rows.own, own) + rows.common @ common
    found: Floats = rows.depth[:, None] * np.exp(np.clip(logs, _LEAST_LOG, _MOST_LOG))
    return found


@dataclass(frozen=True, kw_only=True, eq=False)
class _Made:
    """Swatches as the parameters make them, from K/S to what a meter sees.

    ``added`` (E, 31) is K/S by dye, ``ks`` (S, 31) that of whole swatches, ``bare``
    their reflectance without the surface.
    """

    added: "Floats"
    ks: "Floats"
    bare: "Floats"
    surface: float

    @property
    def reflectance(self) -> "Floats":
        """Reflectance as measured, (S, 31)."""
        return with_surface(self.bare, surface=self.surface)


def _made(
    parameters: "Floats", rows: Entries, structure: Structure, start_surface: float
) -> _Made:
    """Return bare yarn with every dye on it (equation 10), and its light."""
    import numpy as np

    added = unit_ks(parameters, rows, structure)
    whole = grounds_of(parameters, structure)[rows.bases]
    np.add.at(whole, rows.swatch, added)
    return _Made(
        added=added,
        ks=whole,
        bare=reflectance_of_ks(whole),
        surface=surface_of(parameters, start=start_surface),
    )


def reflectances(
    parameters: "Floats",
    rows: Entries,
    structure: Structure,
    *,
    start_surface: float = USUAL_SURFACE,
) -> "Floats":
    """Return the reflectance of each swatch.

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector. [1]
    rows : Entries
        Dyes in swatches. [1]
    structure : Structure
        Where things stand. [-]
    start_surface : float
        Where the surface term starts. [1]

    Returns
    -------
    ndarray, shape (S, 31)
        Reflectance as measured. [1]
    """
    return _made(parameters, rows, structure, start_surface).reflectance


def slopes(
    parameters: "Floats",
    rows: Entries,
    structure: Structure,
    seen: Seen,
    *,
    start_surface: float = USUAL_SURFACE,
) -> Slopes:
    """Return what is seen of each swatch and how every parameter moves it.

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector. [1]
    rows : Entries
        Dyes in swatches. [1]
    structure : Structure
        Where things stand. [-]
    seen : Seen
        Spectrum, or Lab under lights. [-]
    start_surface : float
        Where the surface term starts. [1]

    Returns
    -------
    Slopes
        Seen, and its exact derivatives. [1]
    """
    import numpy as np

    made = _made(parameters, rows, structure, start_surface)
    reflectance, surface = made.reflectance, made.surface
    by_reflectance = as_seen_slope(reflectance, seen)
    by_ks = by_reflectance * ((1.0 - surface) * slope_of_reflectance(made.ks))[:, None]
    by_log = by_ks[rows.swatch] * made.added[:, None]
    by_surface = (1.0 - made.bare) * surface * SURFACE_LOG_SD
    common = np.zeros((rows.swatches, seen.width, len(COMMON)))
    np.add.at(common, rows.swatch, by_log @ rows.common)
    shared = [
        np.einsum("smn,sn->sm", by_reflectance, by_surface)[..., None],
        common,
        _by_ground(parameters, rows, structure, by_ks),
    ]
    return Slopes(
        reflectance=reflectance,
        seen=as_seen(reflectance, seen),
        shared=np.concatenate(shared, -1),
        own=by_log @ rows.own,
        dose=by_log.sum(-1),
    )


def _by_ground(
    parameters: "Floats", rows: Entries, structure: Structure, by_ks: "Floats"
) -> "Floats":
    """Return how each base's ground moves what is seen; nought for other bases."""
    import numpy as np

    _mean, factor = ground_prior(wavelengths_nm(), rank=structure.ground_rank)
    grounds = grounds_of(parameters, structure)[rows.bases]
    moved = (by_ks * grounds[:, None]) @ factor
    mine = rows.bases[:, None] == np.arange(structure.bases)
    spread = moved[:, :, None, :] * mine[:, None, :, None]
    found: Floats = spread.reshape(*moved.shape[:2], -1)
    return found
