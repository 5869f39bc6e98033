"""Where the search begins: a scan for one dye and for two, one equation for three."""

from itertools import product
from typing import TYPE_CHECKING

from shadewright.core.recipes.search.descending import Sought, chunks
from shadewright.core.recipes.search.evaluating import value_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]
    Bools = NDArray[np.bool_]

_SHARES_OF_ONE = tuple(10.0 ** (-0.15 * step) for step in range(20))
_SHARES_OF_TWO = tuple(0.67 * 10.0 ** (-0.6 * step) for step in range(4))


def scanned(sought: Sought, sets: "Whole") -> "Floats":
    """Return the best start of each set of one or two dyes on a grid of amounts.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    sets : ndarray, shape (1 or 2, sets)
        Places of dyes. [-]

    Returns
    -------
    ndarray, shape (1 or 2, sets)
        Amounts, in steps of 10^0.15 for one dye and of 10^0.6 for two. [%]
    """
    import numpy as np

    shares = _SHARES_OF_ONE if len(sets) == 1 else _SHARES_OF_TWO
    grid = [each for each in product(shares, repeat=len(sets)) if sum(each) <= 1.0]
    best = np.full(sets.shape[1], np.inf)
    amounts = np.zeros(sets.shape)
    for chunk in chunks(sets.shape[1]):
        some, most = sought.dyes.of(sets[:, chunk]), sought.each[sets[:, chunk]]
        for share in grid:
            tried = np.minimum(np.array(share)[:, None] * sought.total, most)
            value = value_of(sought.aim, some.added(tried)[0])
            is_better = value < best[chunk]
            best[chunk] = np.where(is_better, value, best[chunk])
            amounts[:, chunk] = np.where(is_better, tried, amounts[:, chunk])
    return amounts


def linear_triples(sought: Sought, sets: "Whole") -> "tuple[Floats, Bools]":
    """Return amounts of three dyes that would give the target if colour were linear.

    Around a spectrum that has the target's colour, with D = dR/dq there,

    W D (q₀ + Σ x_i K_i) = W D q_target                              (8)

    is three equations for three amounts.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    sets : ndarray, shape (3, sets)
        Places of dyes. [-]

    Returns
    -------
    tuple of (ndarray, shape (3, sets); ndarray of bool, shape (sets,))
        Amounts in %, and which of them lie within the limits. [-]

    Notes
    -----
    By Cramer's rule. A start only: out of reach the best recipe is among those that it
    would dismiss in nine of ten cases.

    References
    ----------
    .. [allen1966] the same equations, for one triple
    """
    import numpy as np

    aim = sought.aim
    near = aim.start
    slope = 1.0 - (1.0 + near) / np.sqrt(near * near + 2.0 * near)
    seen = aim.weights[:3] * slope
    of_dyes = seen @ sought.dyes.unit.T
    right = seen @ (near - aim.ground)
    one, two, three = (of_dyes[:, row] for row in sets)
    across = [_cross(two, three), _cross(three, one), _cross(one, two)]
    whole = (one * across[0]).sum(0)
    whole = np.where(np.abs(whole) < 1e-14, 1e-14, whole)
    amounts = np.stack([(right @ each) / whole for each in across])
    is_inside = (amounts > 0.0) & (amounts < sought.each[sets])
    return amounts, is_inside.all(0) & (amounts.sum(0) < sought.total)


def _cross(one: "Floats", other: "Floats") -> "Floats":
    import numpy as np

    return np.stack([
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    ])
