"""Each dye in each swatch: its dose, and how its log unit-K/S is made up.

For dye i at depth c, with f(c) = [1, ln(c/c0), −ln((1 + c/c50) / (1 + c0/c50))] and
knots ψ(c) over the depths,

    u_i = μ_i + A_i z_i                       shape                           (9)
          + f(c)·(m + common + own_i)         strength: gain, slope, flagging
          + ψ(c)·s_i                          strength that no law says
          + f₂(c) B d_i + ψ(c) ⊗ B e_i        shape that bends with depth
          + [base] fac + B h + [session] t    another base; another day

which is linear in the parameters. No law of depth is believed: the laws are where
the guess begins, and the knots carry what the swatches say instead.
"""

from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.parameters import (
    KNOTS_PERCENT,
    MODES,
    Sizes,
    Structure,
    smooth_modes,
)
from shadewright.core.mixing.model.shapes import BANDS, nearness, wavelengths_nm

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.intp]

MIDDLE_PERCENT, HALF_PERCENT = 0.5, 4.0
COMMON_MEAN = (log(6.0), -0.03, 0.3)
_KNOT_LENGTH = 1.3


@dataclass(frozen=True, kw_only=True, eq=False)
class Dyed:
    """Swatches as dyed: ``depths`` (s, n) in % on weight of fibre, base, session.

    ``sessions`` holds −1 where the day is none that the model knows.
    """

    depths: "Floats"
    bases: "Whole"
    sessions: "Whole"


@dataclass(frozen=True, kw_only=True, eq=False)
class Entries:
    """One row for each dye in each swatch (E rows over S swatches).

    ``own`` (E, 31, P) are the columns of the dye's own parameters, ``common``
    (E, 31, 3) those of what dyes share, ``mean`` (E, 31) the log unit-K/S before.
    """

    swatch: "Whole"
    dye: "Whole"
    depth: "Floats"
    own: "Floats"
    common: "Floats"
    mean: "Floats"
    bases: "Whole"

    @property
    def swatches(self) -> int:
        """How many swatches."""
        return len(self.bases)


def entries(dyed: Dyed, *, structure: Structure, sizes: Sizes) -> Entries:
    """Return equation 9 for each dye in each swatch, ready to be multiplied.

    Parameters
    ----------
    dyed : Dyed
        Swatches. [%]
    structure : Structure
        Dyes, bases, sessions and the prior of shapes. [-]
    sizes : Sizes
        Prior standard deviations. [1]

    Returns
    -------
    Entries
        Rows in the order of swatches, then of dyes. [1]
    """
    import numpy as np

    swatch, dye = np.nonzero(dyed.depths)
    depth = dyed.depths[swatch, dye]
    law = _law(depth)
    common = [sizes.common_gain, sizes.common_slope, sizes.common_saturation]
    own = _own_columns(
        structure.prior.factor[dye],
        structure.prior.gain[dye],
        depth,
        _ones(dyed.bases[swatch] - 1, structure.bases - 1),
        _ones(dyed.sessions[swatch], structure.sessions),
        sizes,
    )
    return Entries(
        swatch=swatch,
        dye=dye,
        depth=depth,
        own=own,
        common=np.ones((len(depth), BANDS, 1)) * law[:, None] * np.array(common),
        mean=structure.prior.mean[dye] + (law @ np.array(COMMON_MEAN))[:, None],
        bases=dyed.bases,
    )


def _law(depth: "Floats") -> "Floats":
    """Return f(c): where the guess of strength against depth begins."""
    import numpy as np

    ratio = (1 + depth / HALF_PERCENT) / (1 + MIDDLE_PERCENT / HALF_PERCENT)
    logs = np.log(depth / MIDDLE_PERCENT)
    return np.stack([np.ones_like(depth), logs, -np.log(ratio)], -1)


def _knots(depth: "Floats") -> "Floats":
    """Return ψ(c): independent strengths at the knots, smooth between."""
    import numpy as np

    at = np.log(np.array(KNOTS_PERCENT))
    near = nearness(at, at, length=_KNOT_LENGTH) + 1e-6 * np.eye(len(at))
    unit = np.linalg.inv(np.linalg.cholesky(near)).T
    found: Floats = nearness(np.log(depth), at, length=_KNOT_LENGTH) @ unit
    return found


def _ones(which: "Whole", count: int) -> "Floats":
    """Return 1 in the column that is meant; nowhere for −1."""
    import numpy as np

    found: Floats = (which[:, None] == np.arange(count)).astype(float)
    return found


def _own_columns(
    shape: "Floats",
    gain: "Floats",
    depth: "Floats",
    base: "Floats",
    session: "Floats",
    sizes: Sizes,
) -> "Floats":
    """Return the columns of a dye's own parameters, in the order of its groups."""
    import numpy as np

    law, knots = _law(depth), _knots(depth)
    modes = smooth_modes(wavelengths_nm())
    flat = np.ones((len(depth), BANDS, 1))
    return np.concatenate(
        [
            shape * sizes.shape,
            flat * gain[:, None, None] * sizes.gain,
            flat * law[:, None, 1:2] * sizes.slope,
            flat * law[:, None, 2:] * sizes.saturation,
            flat * knots[:, None] * sizes.strength,
            law[:, 1:2, None] * modes * sizes.drift,
            _bent(knots, modes) * sizes.deviation,
            flat * base[:, None] * sizes.base_factor,
            _bent(base, modes) * sizes.base_shape,
            flat * session[:, None] * sizes.session,
        ],
        -1,
    )


def _bent(by: "Floats", modes: "Floats") -> "Floats":
    """Return every mode once for each column of ``by``."""
    rows, columns = by.shape
    both = by[:, None, :, None] * modes[None, :, None, :]
    found: Floats = both.reshape(rows, BANDS, columns * MODES)
    return found
