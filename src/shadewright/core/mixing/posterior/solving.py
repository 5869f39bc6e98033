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
    plain = _eliminated(arrow)
    return _with_mixes(plain, arrow.mixed) if len(arrow.mixed) else plain.inverse()


def step(arrow: Arrow, structure: Structure, gradient: "Floats") -> "Floats":
    """Return H⁻¹ g without the whole inverse, which a step has no need of.

    Parameters
    ----------
    arrow : Arrow
        The matrix, H. [1]
    structure : Structure
        Where things stand. [-]
    gradient : ndarray, shape (all,)
        The gradient, g. [1]

    Returns
    -------
    ndarray, shape (all,)
        The step. [1]

    Notes
    -----
    Equations 2 and 3, applied to one column.
    """
    import numpy as np

    if len(arrow.mixed) > structure.total:
        return _whole(arrow, structure).covariance @ gradient
    plain = _eliminated(arrow)
    found = plain.times(gradient[:, None])[:, 0]
    if not len(arrow.mixed):
        return found
    through = plain.times(arrow.mixed.T)
    gram = np.eye(len(arrow.mixed)) + arrow.mixed @ through
    taken: Floats = through @ np.linalg.solve(gram, arrow.mixed @ found)
    return found - taken


@dataclass(frozen=True, kw_only=True, eq=False)
class _Eliminated:
    """An arrow without mixes, its dyes eliminated: D⁻¹, D⁻¹ B and S⁻¹ of equation 2."""

    blocks: "Floats"
    lean: "Floats"
    corner: "Floats"
    log_determinant: float

    def times(self, columns: "Floats") -> "Floats":
        """Return the inverse times columns, (all, k)."""
        import numpy as np

        dyes, own, shared = self.lean.shape
        below = columns[shared:].reshape(dyes, own, -1)
        seen = columns[:shared] - np.einsum("npg,npk->gk", self.lean, below)
        above = self.corner @ seen
        rest = self.blocks @ below - self.lean @ above
        return np.concatenate([above, rest.reshape(dyes * own, -1)])

    def inverse(self) -> Inverse:
        """Return the whole inverse."""
        import numpy as np

        dyes, own, shared = self.lean.shape
        lean = self.lean.reshape(dyes * own, shared)
        side = lean @ self.corner
        found = np.empty((shared + dyes * own, shared + dyes * own))
        found[:shared, :shared] = self.corner
        found[shared:, :shared] = -side
        found[:shared, shared:] = -side.T
        found[shared:, shared:] = side @ lean.T
        each = np.arange(dyes)
        square = found[shared:, shared:].reshape(dyes, own, dyes, own)
        square[each, :, each, :] += self.blocks
        return Inverse(covariance=found, log_determinant=self.log_determinant)


def _eliminated(arrow: Arrow) -> _Eliminated:
    import numpy as np

    blocks = np.asarray(np.linalg.inv(arrow.own), dtype=float)
    lean = blocks @ arrow.between
    rest = arrow.shared - (arrow.between.transpose(0, 2, 1) @ lean).sum(0)
    whole = float(np.linalg.slogdet(rest)[1] + np.linalg.slogdet(arrow.own)[1].sum())
    return _Eliminated(
        blocks=blocks,
        lean=lean,
        corner=np.asarray(np.linalg.inv(rest), dtype=float),
        log_determinant=whole,
    )


def _with_mixes(plain: _Eliminated, mixed: "Floats") -> Inverse:
    """Return equation 3, by the Cholesky root of what stands in brackets."""
    import numpy as np

    through = plain.times(mixed.T)
    root = np.linalg.cholesky(np.eye(len(mixed)) + mixed @ through)
    taken = np.linalg.solve(root, through.T)
    alone = plain.inverse()
    return Inverse(
        covariance=alone.covariance - taken.T @ taken,
        log_determinant=alone.log_determinant
        + 2.0 * float(np.log(np.diag(root)).sum()),
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
