"""Every proportion of a few dyes, and what fills in the finer ones between.

With two dyes they are points of a line, with three of a triangle that is cut into small
ones; what is known at the corners of a small one is known all over it, in straight
lines.
"""

from functools import cache
from itertools import product
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_STEPS, _FINE_STEPS = 6, 48


@cache
def proportions(together: int) -> "tuple[Floats, Floats]":
    """Return proportions of some dyes, and what fills in the finer ones between.

    Parameters
    ----------
    together : int
        Dyes in a mix; 1 to 3. [-]

    Returns
    -------
    tuple of (ndarray, shape (m, together); ndarray, shape (fine, m))
        Shares in steps of a sixth, each row adding up to one; and weights of these for
        steps of a forty-eighth. [1]

    Examples
    --------
    >>> grid, fill = proportions(3)
    >>> grid.shape, fill.shape
    ((28, 3), (1225, 28))
    """
    import numpy as np

    grid = _even(together, _STEPS)
    fine = _even(together, _FINE_STEPS) * (_STEPS / _FINE_STEPS)
    index = {tuple(row): place for place, row in enumerate(grid.tolist())}
    fill = np.zeros((len(fine), len(grid)))
    for place, point in enumerate(fine):
        for corner, share in _corners(point):
            fill[place, index[corner]] += share
    return grid / _STEPS, fill


def _even(together: int, steps: int) -> "Floats":
    """Return every way to share out some steps among dyes."""
    import numpy as np

    rows = product(range(steps + 1), repeat=together - 1)
    return np.array(
        [(*row, steps - sum(row)) for row in rows if sum(row) <= steps], dtype=float
    )


def _corners(point: "Floats") -> "list[tuple[tuple[float, ...], float]]":
    """Return the corners of the small triangle round a point, with their shares.

    In running sums the triangles are those of a square cut along its diagonal, so the
    order of the fractions says which it is.
    """
    import numpy as np

    sums = np.cumsum(point)[:-1]
    low = np.floor(sums)
    rest = sums - low
    order = np.argsort(-rest, kind="stable")
    cuts = [1.0, *rest[order].tolist(), 0.0]
    found = []
    for place in range(len(cuts) - 1):
        raised = low.copy()
        raised[order[:place]] += 1.0
        corner = np.diff([0.0, *raised, point.sum()])
        share = cuts[place] - cuts[place + 1]
        if share > 0.0:
            found.append((tuple(corner.tolist()), share))
    return found
