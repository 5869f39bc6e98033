"""What a fourth dye would gain, foretold for all dyes at once.

From the best recipe of three dyes, let one more in and go one step of Gauss and
Newton: what the three can do already is projected off the residual and off the new
dye's column, and

    f₄ ≈ f₃ − (j · r)² / (j · j)                                     (9)

is what is left. Sets of four are then tried in the order of this forecast, and the
last nine in ten never.
"""

from typing import TYPE_CHECKING

from shadewright.core.recipes.search.descending import Sought, chunks
from shadewright.core.recipes.search.evaluating import Sloped, sloped

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

_CHUNK = 512


def forecast(sought: Sought, sets: "Whole", amounts: "Floats") -> "NDArray[np.float32]":
    """Return f with each dye of the palette added to each recipe (equation 9).

    Parameters
    ----------
    sought : Sought
        The search. [-]
    sets : ndarray, shape (dyes, sets)
        Places of dyes. [-]
    amounts : ndarray, shape (dyes, sets)
        The best recipe of each set. [%]

    Returns
    -------
    ndarray, shape (n, sets)
        f as foretold. [1]
    """
    import numpy as np

    found = np.empty((sought.dyes.count, sets.shape[1]), dtype=np.float32)
    for chunk in chunks(sets.shape[1], size=_CHUNK):
        mixed = sought.dyes.of(sets[:, chunk])
        added, unit = mixed.added(amounts[:, chunk])
        here = sloped(sought.aim, added)
        by_band = _by_band(sought, here)
        basis = _basis(by_band, unit, amounts[:, chunk])
        found[:, chunk] = here.value - _gain(sought, here.rows, by_band, basis)
    return found


def _by_band(sought: Sought, here: Sloped) -> "Floats":
    """Return how each residual follows K/S in each band (rows, 31, sets)."""
    import numpy as np

    lights = sought.aim.lights
    weights = sought.aim.weights.reshape(lights, 1, 3, -1).transpose(0, 1, 3, 2)
    found = np.matmul(weights, here.by_xyz)
    found *= here.fall
    whole: Floats = found.reshape(3 * lights, *found.shape[2:])
    return whole


def _basis(by_band: "Floats", unit: "Floats", amounts: "Floats") -> "list[Floats]":
    """Return what the dyes of each set can do, as orthonormal columns."""
    import numpy as np

    basis: list[Floats] = []
    for slot, dye in enumerate(unit):
        column = np.einsum("klm,lm->km", by_band, dye) * (amounts[slot] > 0.0)
        for done in basis:
            column -= done * np.einsum("km,km->m", done, column)
        length = np.sqrt(np.einsum("km,km->m", column, column) + 1e-20)
        basis.append(column / length)
    return basis


def _gain(
    sought: Sought, rows: "Floats", by_band: "Floats", basis: "list[Floats]"
) -> "Floats":
    """Return the fall of f by each dye (n, sets)."""
    import numpy as np

    rows = rows.copy()
    for done in basis:
        rows -= done * np.einsum("km,km->m", done, rows)
    columns = np.matmul(sought.dyes.unit, by_band)
    size = np.einsum("knm,knm->nm", columns, columns)
    along = np.einsum("knm,km->nm", columns, rows)
    for done in basis:
        size -= np.einsum("knm,km->nm", columns, done) ** 2
    gain: Floats = along * along / np.maximum(size, 1e-9)
    return gain
