"""The colour of a mix, and how sure it is.

What is not known of the palette, the lot of the day and the doses each put something
into the colour's covariance:

    V = κ² J H⁻¹ J' + (1 − κ²)⁺ J P J'                               (9)
        + σ_day² Σ_i g_i g_i' + δ² Σ_i g_i g_i'

κ narrows what swatches have tested by leaving each out. It never narrows P, the part
that is owed to days and further bases: no swatch left out sees what went wrong with
its whole day. A day that the palette does not know adds its own σ_day besides. A mix
that will be weighed adds its dosing error δ.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.entries import Dyed, entries
from shadewright.core.mixing.model.forward import slopes
from shadewright.core.mixing.model.seeing import Seen
from shadewright.core.mixing.posterior.known import Known
from shadewright.core.mixing.posterior.weighing import spread_out

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, eq=False)
class Foretold:
    """Mixes as foretold: ``seen`` (S, m) with ``covariance`` (S, m, m).

    ``lot`` is what of the covariance differs from lot to lot: the day and the doses.
    """

    seen: "Floats"
    covariance: "Floats"
    lot: "Floats"
    reflectance: "Floats"


def foretold(
    dyed: Dyed, known: Known, seen: Seen, *, width: float, dose_error: float = 0.0
) -> Foretold:
    """Return the colour of mixes with their spread (equation 9).

    Parameters
    ----------
    dyed : Dyed
        Mixes; a session of −1 is a new day. [%]
    known : Known
        The palette. [1]
    seen : Seen
        Under which lights, or as a spectrum. [-]
    width : float
        κ of the palette. [1]
    dose_error : float
        Relative standard error of each dose that is still to be measured. [1]

    Returns
    -------
    Foretold
        Colour, covariance and reflectance. [1]
    """
    import numpy as np

    structure = known.structure
    rows = entries(dyed, structure=structure, sizes=known.sizes)
    found = slopes(
        known.parameters, rows, structure, seen, start_surface=known.start_surface
    )
    whole = spread_out(rows, found.shared, found.own, structure)
    owed = max(0.0, 1.0 - width**2) ** 0.5 * known.owed
    spread = np.zeros((*found.seen.shape, found.seen.shape[1]))
    for mix, by in enumerate(whole):
        used = np.flatnonzero(by.any(0))
        near, told = by[:, used], known.covariance[np.ix_(used, used)]
        alone = near @ owed[used]
        spread[mix] = width**2 * near @ told @ near.T + alone @ alone.T
    day = np.where(dyed.sessions < 0, known.sizes.session**2, 0.0)
    doses = found.dose[:, :, None] * found.dose[:, None, :]
    lot = np.zeros_like(spread)
    np.add.at(
        lot, rows.swatch, (day[rows.swatch] + dose_error**2)[:, None, None] * doses
    )
    return Foretold(
        seen=found.seen,
        covariance=spread + lot,
        lot=lot,
        reflectance=found.reflectance,
    )
