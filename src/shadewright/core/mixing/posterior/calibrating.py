"""Is the spread honest? Each swatch, foretold by all the others.

What the others say of a swatch need not be fitted anew: with its whitened slopes J
and residual r, and the covariance C of the whole fit,

    z = (I − J C J')^(−½) r                                         (6)

is its residual against a fit without it, counted in the spread foretold for it. If
the model is honest, z is about 1. Its root mean square κ over all swatches widens or
narrows every spread.

The fault that people make is a wrong dose, which moves a swatch along one direction:
the whitened g_i = dy/d ln c_i of one of its dyes. There it is found best,

    t = g'r / √(g' (I − J C J') g)                                  (7)

and the swatch reads as if dosed by the factor exp(−t / √(…)).
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.mixing.posterior.fitting import Fitted
from shadewright.core.mixing.posterior.weighing import ReadSwatches, Weighed, whole_rows

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Ints = NDArray[np.intp]
    Flags = NDArray[np.bool_]

_CHART = 0.1
_ROUGH = 1.5
BELIEVED = 0.9
"""κ before a swatch has been left out; weighs as much as one swatch a dye. [1]"""


@dataclass(frozen=True, kw_only=True, eq=False)
class LeftOut:
    """A kind of evidence, each swatch foretold without itself.

    ``z`` (S, m) are standardised residuals, ``off`` (S, m) the residuals themselves
    as read, not whitened; ``dose`` (S,) is the largest t of equation 7 over a swatch’s
    dyes, nought for bare yarn, ``dosed`` (S,) the factor that would explain it.
    """

    z: "Floats"
    off: "Floats"
    dose: "Floats"
    dosed: "Floats"

    @property
    def size(self) -> "Floats":
        """Root mean square of z of each swatch, (S,)."""
        import numpy as np

        found: Floats = np.sqrt((self.z**2).mean(1))
        return found


def left_out(fitted: Fitted) -> tuple[LeftOut, ...]:
    """Return every swatch as the others foretell it (equations 6 and 7).

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
    dose, dosed = np.zeros(len(rows)), np.ones(len(rows))
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
        by_dose = each.dose[each.rows.swatch == swatch] @ turned
        if len(by_dose):
            dose[swatch], dosed[swatch] = _as_dosed(by_dose, sizes, seen)
    return LeftOut(z=z, off=off, dose=dose, dosed=dosed)


def _as_dosed(
    by_dose: "Floats", sizes: "Floats", seen: "Floats"
) -> "tuple[float, float]":
    """Return t of the dye whose dose would explain most, and the dose’s factor."""
    import numpy as np

    clear = np.sqrt(np.maximum((by_dose**2 * sizes).sum(1), 1e-12))
    sure = by_dose @ seen / clear
    most = int(abs(sure).argmax())
    by = float(np.clip(-sure[most] / clear[most], -7.0, 7.0))
    return float(sure[most]), float(np.exp(by))


def width_factor(fitted: Fitted, found: tuple[LeftOut, ...]) -> float:
    """Return how much wider or narrower the true errors are than foretold.

    κ² = (Σ z² + 0.9² n) / (S + n), with S measured swatches of n dyes          (8)

    Parameters
    ----------
    fitted : Fitted
        A palette. [1]
    found : tuple of LeftOut
        Its swatches, each left out. [1]

    Returns
    -------
    float
        κ; near 0.9 where there are few swatches. [1]

    Notes
    -----
    Our choice: where every dye has one swatch, leaving it out leaves nothing to
    compare, and κ would come out far too small; and a chart, which guesses its depth,
    has no say, nor has a colour off a screen that is the only one of its dye: the
    dye's prior was made from it. Colours carried from another light or eye are off
    alike, so that their neighbours foretell them too well: none counts as nearer than
    its spread. Leaving one swatch out does not see what all swatches of a day share:
    see ``predicting``.
    """
    import numpy as np

    dyes = np.concatenate([each.rows.dye for each in fitted.weighings])
    seen = np.bincount(dyes)
    kinds = zip(found, fitted.weighings, fitted.evidence, strict=True)
    measured = []
    for one, each, kind in kinds:
        here = _measured(each.rows.swatch, kind, seen[each.rows.dye] == 1)
        least = kind.is_carried[here].astype(float)
        measured.append(np.maximum(one.size[here] ** 2, least))
    squares = np.concatenate([np.zeros(0), *measured])
    count = int(np.count_nonzero(seen))
    whole = float(squares.sum()) + BELIEVED**2 * count
    return float(np.sqrt(whole / (len(squares) + count)))


def _measured(swatches: "Ints", kind: ReadSwatches, is_alone: "Flags") -> "Ints":
    """Return the dyed swatches that have a say; one is alone with some of its dyes."""
    import numpy as np

    dyed: Ints = np.unique(swatches)
    alone = np.isin(dyed, swatches[is_alone]) & (kind.noise[dyed] > _ROUGH)
    return dyed[(kind.dose_error[dyed] < _CHART) & ~alone]
