"""The fast kernel: the objective of thousands of recipes at once, and its slopes.

Arrays run (bands, sets) or (residuals, sets), the sets last and contiguous, so that
every step is one pass over memory; both lights stand in one array. The plain twin of
this file is ``plain``, and tests hold the two together.
"""

from typing import TYPE_CHECKING, NamedTuple

from shadewright.core.recipes.search.problem import Aim, Mixed
from shadewright.core.recipes.search.residuals import residuals, residuals_and_slopes

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_BREAK = (6.0 / 29.0) ** 3
_SLOPE = 841.0 / 108.0


class _Looked(NamedTuple):
    """Mixes as they are seen.

    ``lab`` three times (lights, sets); ``steep`` (lights, 3, sets) are the slopes of
    the cube roots; ``fall`` (31, sets) is dR/dq of the layer, and its negative
    is what it is made of: R / √(q² + 2q).
    """

    lab: "tuple[Floats, Floats, Floats]"
    steep: "Floats"
    fall: "Floats"


class Sloped(NamedTuple):
    """Weighted residuals and what they follow.

    ``value`` (sets,) is f; ``rows`` (3 lights, sets) the residuals; ``by_xyz``
    (lights, 3, 3, sets) how each follows X, Y and Z; ``fall`` dR/dq.
    """

    value: "Floats"
    rows: "Floats"
    by_xyz: "Floats"
    fall: "Floats"


def value_of(aim: Aim, added: "Floats") -> "Floats":
    """Return the objective (equation 5).

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]
    added : ndarray, shape (31, sets)
        K/S that dyes add to the ground; overwritten. [1]

    Returns
    -------
    ndarray, shape (sets,)
        f. [1]
    """
    import numpy as np

    seen = _looked(aim, added)
    rows = residuals(aim.wanted, *seen.lab) * aim.shares[:, :, None]
    found: Floats = np.einsum("ikm,ikm->m", rows, rows)
    return found


def sloped(aim: Aim, added: "Floats") -> Sloped:
    """Return the objective, its residuals and how they follow X, Y and Z.

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]
    added : ndarray, shape (31, sets)
        K/S that dyes add to the ground; overwritten. [1]

    Returns
    -------
    Sloped
        All that the slopes by any dye are made of. [1]
    """
    import numpy as np

    seen = _looked(aim, added)
    rows, by = residuals_and_slopes(aim.wanted, *seen.lab)
    rows *= aim.shares[:, :, None]
    x, y, z = (seen.steep[:, place] * aim.shares for place in range(3))
    by_xyz = np.zeros((aim.lights, 3, 3, rows.shape[-1]))
    by_xyz[:, 0, 1] = 116.0 * by.lightness * y
    for row, by_a, by_b in (
        (1, by.second_a, by.second_b),
        (2, by.third_a, by.third_b),
    ):
        by_xyz[:, row, 0] = 500.0 * by_a * x
        by_xyz[:, row, 1] = (200.0 * by_b - 500.0 * by_a) * y
        by_xyz[:, row, 2] = -200.0 * by_b * z
    value = np.einsum("ikm,ikm->m", rows, rows)
    return Sloped(value, rows.reshape(-1, rows.shape[-1]), by_xyz, seen.fall)


def jacobian_of(aim: Aim, mixed: Mixed, amounts: "Floats") -> tuple[Sloped, "Floats"]:
    """Return the residuals of sets and their slopes by the amount of each dye.

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]
    mixed : Mixed
        The dyes of each set. [-]
    amounts : ndarray, shape (dyes, sets)
        Their amounts. [%]

    Returns
    -------
    tuple of (Sloped; ndarray, shape (3 lights, dyes, sets))
        Residuals, and J. [1]
    """
    import numpy as np

    added, slopes = mixed.added(amounts)
    found = sloped(aim, added)
    sets = amounts.shape[1]
    jacobian = np.empty((aim.lights, 3, len(amounts), sets))
    by = found.by_xyz
    for slot, slope in enumerate(slopes):
        xyz = (aim.weights @ (found.fall * slope)).reshape(aim.lights, 3, sets)
        jacobian[:, 0, slot] = by[:, 0, 1] * xyz[:, 1]
        for row in (1, 2):
            jacobian[:, row, slot] = (
                by[:, row, 0] * xyz[:, 0]
                + by[:, row, 1] * xyz[:, 1]
                + by[:, row, 2] * xyz[:, 2]
            )
    return found, jacobian.reshape(-1, len(amounts), sets)


def slope_by_ks(aim: Aim, added: "Floats") -> "Floats":
    """Return how f/2 follows K/S in each band: what any dye would do, by one product.

    v = Σ_rows r dr/dq,  d(f/2)/dx_i = K_i · v                       (6)

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]
    added : ndarray, shape (31, sets)
        K/S that dyes add to the ground; overwritten. [1]

    Returns
    -------
    ndarray, shape (31, sets)
        v. [1]
    """
    import numpy as np

    found = sloped(aim, added)
    rows = found.rows.reshape(aim.lights, 3, -1)
    by_xyz = np.einsum("lrm,lrcm->lcm", rows, found.by_xyz)
    by_ks: Floats = aim.weights.T @ by_xyz.reshape(3 * aim.lights, -1)
    by_ks *= found.fall
    return by_ks


def _looked(aim: Aim, added: "Floats") -> _Looked:
    """Return what is seen of mixes (equation 4), in place of what was added."""
    import numpy as np

    added += aim.ground[:, None]
    root = added + 2.0
    root *= added
    np.sqrt(root, out=root)
    added += 1.0
    added -= root  # now R of the layer
    xyz = (aim.weights @ added).reshape(aim.lights, 3, -1)
    np.divide(added, root, out=added)
    np.negative(added, out=added)
    xyz += aim.surface
    cube, steep = _cube_roots(xyz)
    lightness = 116.0 * cube[:, 1] - 16.0
    a, b = 500.0 * (cube[:, 0] - cube[:, 1]), 200.0 * (cube[:, 1] - cube[:, 2])
    return _Looked((lightness, a, b), steep, added)


def _cube_roots(relative: "Floats") -> tuple["Floats", "Floats"]:
    """Return the function of CIELAB and its slope; by logarithms, which is faster."""
    import numpy as np

    cube = np.exp(np.log(np.maximum(relative, 1e-12)) * (1.0 / 3.0))
    steep = 1.0 / (3.0 * cube * cube)
    is_dark = relative <= _BREAK
    if is_dark.any():
        cube = np.where(is_dark, _SLOPE * relative + 16.0 / 116.0, cube)
        steep = np.where(is_dark, _SLOPE, steep)
    return cube, steep
