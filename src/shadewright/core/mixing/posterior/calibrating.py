"""Is the spread honest? Each swatch, foretold by all the others.

What the others say of a swatch need not be fitted anew: with its whitened slopes J
and residual r, and the covariance C of the whole fit,

    z = (I − J C J')^(−½) r                                         (6)

is its residual against a fit without it, counted in the spread foretold for it. If
the model is honest, z is about 1. Its root mean square κ over all swatches widens or
narrows every spread; its largest names the swatch that does not belong.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.mixing.posterior.fitting import Fitted
from shadewright.core.mixing.posterior.weighing import Weighed, whole_rows

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

LEAST, MOST = 0.6, 2.0
SINGLE = 0.9
"""κ where every dye has a single swatch: leaving it out leaves nothing. [1]"""

SUSPECT_FROM = 4.0
"""Root mean square of z from which a swatch is named. [1]"""


@dataclass(frozen=True, kw_only=True, eq=False)
class LeftOut:
    """A kind of evidence, each swatch foretold without itself.

    ``z`` (S, m) are standardised residuals, ``off`` (S, m) the residuals themselves
    as read, not whitened.
    """

    z: "Floats"
    off: "Floats"

    @property
    def size(self) -> "Floats":
        """Root mean square of z of each swatch, (S,)."""
        import numpy as np

        found: Floats = np.sqrt((self.z**2).mean(1))
        return found


def left_out(fitted: Fitted) -> tuple[LeftOut, ...]:
    """Return every swatch as the others foretell it (equation 6).

    Parameters
    ----------
    fitted : Fitted
        A palette. [1]

    Returns
    -------
    tuple of LeftOut
        One for each kind of evidence. [1]

    References
    ----------
    .. [rasmussen2006] 5.4.2 (leave-one-out in closed form)
    """
    return tuple(_one(each, fitted) for each in fitted.weighings)


def _one(each: Weighed, fitted: Fitted) -> LeftOut:
    import numpy as np

    rows = whole_rows(each, fitted.known.structure)
    width = rows.shape[1]
    z, off = np.empty_like(each.residual), np.empty_like(each.residual)
    for swatch, slopes in enumerate(rows):
        used = np.flatnonzero(slopes.any(0))
        near = slopes[:, used]
        told = near @ fitted.known.covariance[np.ix_(used, used)] @ near.T
        sizes, turned = np.linalg.eigh(np.eye(width) - told)
        sizes = np.maximum(sizes, 1e-6)
        seen = turned.T @ each.residual[swatch]
        z[swatch] = seen / np.sqrt(sizes)
        unwhitened = np.linalg.inv(each.whitener[swatch])
        off[swatch] = unwhitened @ (turned @ (seen / sizes))
    return LeftOut(z=z, off=off)


def width_factor(fitted: Fitted, found: tuple[LeftOut, ...]) -> float:
    """Return how much wider or narrower the true errors are than foretold.

    κ = √(mean z²), from 0.6 to 2                                    (7)

    Parameters
    ----------
    fitted : Fitted
        A palette. [1]
    found : tuple of LeftOut
        Its swatches, each left out. [1]

    Returns
    -------
    float
        κ; 0.9 where every dye has but one swatch. [1]

    Notes
    -----
    Our choice of bounds. Leaving one swatch out does not see what all swatches of a
    day share: see ``predicting``.
    """
    import numpy as np

    dyes = np.concatenate([each.rows.dye for each in fitted.weighings])
    if not len(dyes) or np.median(np.bincount(dyes)[np.unique(dyes)]) < 2:
        return SINGLE
    squares = [
        one.size[np.unique(each.rows.swatch)] ** 2
        for one, each in zip(found, fitted.weighings, strict=True)
    ]
    mean = float(np.concatenate(squares).mean())
    return float(np.clip(np.sqrt(mean), LEAST, MOST))
