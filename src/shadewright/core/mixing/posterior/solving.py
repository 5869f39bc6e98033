"""The linear algebra of many dyes: each dye by itself, all through what they share.

A swatch of one dye speaks of that dye and of what is shared (surface, ground, common
strength). So the matrix of a palette of ladders is an arrow: a block for what is
shared, a block a dye, and nothing between two dyes. Its inverse is found dye by dye
(block elimination). A mix ties dyes together; mixes are kept apart as rows and enter
the inverse afterwards (Woodbury).
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.parameters import Structure

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, eq=False)
class Arrow:
    """A symmetric matrix I + J'J: shared, between shared and dyes, dyes, mixes.

    ``shared`` (G, G), ``between`` (n, P, G), ``own`` (n, P, P); ``mixed`` (rows, all)
    are the rows of J that stem from mixes and are not in the blocks.
    """

    shared: "Floats"
    between: "Floats"
    own: "Floats"
    mixed: "Floats"


@dataclass(frozen=True, kw_only=True, eq=False)
class Inverse:
    """The covariance (all, all), and the logarithm of the matrix's determinant."""

    covariance: "Floats"
    log_determinant: float


def inverse(arrow: Arrow, structure: Structure) -> Inverse:
    """Return the inverse of an arrow with mixes.

    With D_i the blocks of the dyes and B_i what ties them to the shared block A,

    S = A − Σ_i B_i' D_i⁻¹ B_i                                      (2)

    and with C the inverse without mixes and J their rows,

    C' = C − C J' (I + J C J')⁻¹ J C                                (3)

    Parameters
    ----------
    arrow : Arrow
        The matrix. [1]
    structure : Structure
        Where things stand. [-]

    Returns
    -------
    Inverse
        Covariance and log-determinant. [1]

    Notes
    -----
    Where mixes outnumber the parameters the whole matrix is inverted instead.

    References
    ----------
    .. [golub2013] 2.1.4 (Woodbury) and 3.2 (block elimination)
    """
    if len(arrow.mixed) > structure.total:
        return _whole(arrow, structure)
    plain = _without_mixes(arrow, structure)
    return plain if not len(arrow.mixed) else _with_mixes(plain, arrow.mixed)


def _without_mixes(arrow: Arrow, structure: Structure) -> Inverse:
    import numpy as np

    shared, dyes, own = structure.shared, structure.dyes, structure.per_dye
    blocks = np.linalg.inv(arrow.own)
    lean = blocks @ arrow.between
    rest = arrow.shared - np.einsum("npg,nph->gh", arrow.between, lean)
    corner = np.linalg.inv(rest)
    lean = lean.reshape(dyes * own, shared)
    side = lean @ corner
    found = np.empty((structure.total, structure.total))
    found[:shared, :shared] = corner
    found[shared:, :shared] = -side
    found[:shared, shared:] = -side.T
    found[shared:, shared:] = side @ lean.T
    each = np.arange(dyes)
    found[shared:, shared:].reshape(dyes, own, dyes, own)[each, :, each, :] += blocks
    whole = float(np.linalg.slogdet(rest)[1] + np.linalg.slogdet(arrow.own)[1].sum())
    return Inverse(covariance=found, log_determinant=whole)


def _with_mixes(plain: Inverse, mixed: "Floats") -> Inverse:
    import numpy as np

    through = mixed @ plain.covariance
    gram = np.eye(len(mixed)) + through @ mixed.T
    return Inverse(
        covariance=plain.covariance - through.T @ np.linalg.solve(gram, through),
        log_determinant=plain.log_determinant + float(np.linalg.slogdet(gram)[1]),
    )


def _whole(arrow: Arrow, structure: Structure) -> Inverse:
    import numpy as np

    shared = structure.shared
    matrix = arrow.mixed.T @ arrow.mixed
    matrix[:shared, :shared] += arrow.shared
    for dye in range(structure.dyes):
        at = structure.of_dye(dye)
        matrix[at, :shared] += arrow.between[dye]
        matrix[:shared, at] += arrow.between[dye].T
        matrix[at, at] += arrow.own[dye]
    covariance = np.asarray(np.linalg.inv(matrix), dtype=float)
    return Inverse(
        covariance=covariance,
        log_determinant=float(np.linalg.slogdet(matrix)[1]),
    )
