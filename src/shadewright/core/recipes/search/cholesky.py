"""Thousands of small systems of equations at once, each variable free or held.

A stack of 4 by 4 systems given to a library is solved one after the other. Written out
by hand, Cholesky's way takes a few dozen operations on whole vectors, one element for
each dye set, and is many times faster.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Bools = NDArray[np.bool_]

Normal = dict[tuple[int, int], "Floats"]
"""A symmetric matrix for each set: its lower entries (i, j), i ≥ j, a vector each."""


def normal_of(jacobian: "Floats", damping: "Floats") -> Normal:
    """Return J'J with Marquardt's damping on its diagonal.

    A = J'J + λ diag J'J                                             (2)

    Parameters
    ----------
    jacobian : ndarray, shape (rows, dyes, sets)
        Slopes, J. [1]
    damping : ndarray, shape (sets,)
        λ of each set. [1]

    Returns
    -------
    Normal
        Lower entries of A. [1]
    """
    import numpy as np

    found: Normal = {}
    for i in range(jacobian.shape[1]):
        for j in range(i + 1):
            found[i, j] = np.einsum("km,km->m", jacobian[:, i], jacobian[:, j])
        found[i, i] = found[i, i] * (1.0 + damping) + 1e-12
    return found


def some_of(normal: Normal, which: "NDArray[np.intp]") -> Normal:
    """Return the matrices of some sets.

    Parameters
    ----------
    normal : Normal
        Matrices. [1]
    which : ndarray, shape (some,)
        Places of sets. [-]

    Returns
    -------
    Normal
        Those. [1]
    """
    return {at: entry[which] for at, entry in normal.items()}


def solved(normal: Normal, right: "Floats") -> "Floats":
    """Return x of A x = r for each set.

    A = L L', L y = r, L' x = y                                      (3)

    Parameters
    ----------
    normal : Normal
        Lower entries of A, positive definite. [1]
    right : ndarray, shape (dyes, sets)
        Right sides, r. [1]

    Returns
    -------
    ndarray, shape (dyes, sets)
        Solutions, x. [1]

    References
    ----------
    .. [golub2013] 4.2
    """
    import numpy as np

    size = len(right)
    lower: Normal = {}
    over: list[Floats] = []
    y: list[Floats] = []
    for i in range(size):
        for j in range(i + 1):
            entry = normal[i, j] - sum(lower[i, k] * lower[j, k] for k in range(j))
            if i == j:
                over.append(1.0 / np.sqrt(np.maximum(entry, 1e-30)))
            else:
                lower[i, j] = entry * over[j]
        value = right[i] - sum(lower[i, k] * y[k] for k in range(i))
        y.append(value * over[i])
    return _substituted_back(lower, over, y)


def _substituted_back(
    lower: Normal, over: "list[Floats]", y: "list[Floats]"
) -> "Floats":
    import numpy as np

    found = np.empty((len(y), len(y[0])))
    for i in range(len(y) - 1, -1, -1):
        value = y[i] - sum(lower[k, i] * found[k] for k in range(i + 1, len(y)))
        found[i] = value * over[i]
    return found


def solved_holding(
    normal: Normal, right: "Floats", held: "Bools", step: "Floats"
) -> "Floats":
    """Return the same with some variables held to a step of their own.

    Parameters
    ----------
    normal : Normal
        Lower entries of A. [1]
    right : ndarray, shape (dyes, sets)
        Right sides. [1]
    held : ndarray, shape (dyes, sets)
        Which variables are held. [-]
    step : ndarray, shape (dyes, sets)
        What those take. [1]

    Returns
    -------
    ndarray, shape (dyes, sets)
        Held steps, and the solution for the rest. [1]
    """
    import numpy as np

    free = (~held).astype(float)
    fixed = np.where(held, step, 0.0)
    rest = right * free
    reduced: Normal = {}
    for i in range(len(right)):
        reduced[i, i] = normal[i, i] * free[i] + held[i]
        for j in range(i):
            entry = normal[i, j]
            rest[i] -= entry * fixed[j] * free[i]
            rest[j] -= entry * fixed[i] * free[j]
            reduced[i, j] = entry * (free[i] * free[j])
    found: Floats = solved(reduced, rest) * free + fixed
    return found
