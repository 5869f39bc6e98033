"""Which swatch to dye next: the one that the colours aimed at would learn most from.

Every candidate shares some of its unknowns with the colours that are aimed at. In the
space of what is seen, K is the covariance of candidates and targets together; dyeing
candidate c would take

    gain = tr(K_tc (K_cc + Σ_c)⁻¹ K_ct)                               (3)

off the summed variance of the targets, counted in squared colour difference. The best
is taken, K is lowered by what it would teach, and the next is sought. Mixes are among
the candidates: one swatch of three dyes teaches three.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.entries import Dyed, entries
from shadewright.core.mixing.model.forward import slopes
from shadewright.core.mixing.model.seeing import Seen
from shadewright.core.mixing.posterior.known import Known
from shadewright.core.mixing.posterior.weighing import spread_out
from shadewright.core.mixing.swatches import Evidence, seen_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


_SHORTLIST = 120
"""Candidates that are weighed against each other; the others teach less alone. [-]"""


@dataclass(frozen=True, kw_only=True)
class Pick:
    """A candidate by place; the targets’ summed variance before and after, in dE²."""

    candidate: int
    before: float
    after: float


@dataclass(frozen=True, kw_only=True, eq=False)
class Reading:
    """How a swatch will be read: as what, with which noise, from which dose error."""

    seen: Seen
    noise: float
    dose_error: float


def next_swatches(
    candidates: Dyed,
    targets: Dyed,
    metric: "Floats",
    known: Known,
    reading: Reading,
    *,
    count: int,
) -> tuple[Pick, ...]:
    """Return the swatches to dye next, the most telling first (equation 3).

    Parameters
    ----------
    candidates : Dyed
        What could be dyed. [%]
    targets : Dyed
        What is aimed at, as doses. [%]
    metric : ndarray, shape (t, 3, 3)
        Square root of the local colour-difference metric at each target. [1]
    known : Known
        The palette. [1]
    reading : Reading
        How the new swatches will be read. [-]
    count : int
        How many; at most as many as candidates. [-]

    Returns
    -------
    tuple of Pick
        Places among the candidates, and what is left after each. [-]

    References
    ----------
    .. [krause2008] greedy choice of what to observe
    """
    by, noise = _seen(candidates, known, reading)
    aimed = (metric @ _slopes(targets, known, seen_of(Evidence.LAB))[0]).reshape(
        -1, known.structure.total
    )
    kept = _shortlist(by, noise, aimed, known, least=2 * count)
    scene = _scene(by[kept], noise[kept], aimed, known)
    picks = []
    for _ in range(min(count, len(kept))):
        gains = scene.gains()
        best = int(gains.argmax())
        then = scene.after(best, gain=float(gains[best]))
        pick = Pick(candidate=int(kept[best]), before=scene.left, after=then.left)
        picks.append(pick)
        scene = then
    return tuple(picks)


def _shortlist(
    by: "Floats", noise: "Floats", aimed: "Floats", known: Known, *, least: int
) -> "NDArray[np.intp]":
    """Return the candidates that would teach most if each were the only one."""
    import numpy as np

    towards = (aimed @ known.covariance).T
    gains = np.empty(len(by))
    for place, one in enumerate(by):
        used = np.flatnonzero(one.any(0))
        near = one[:, used]
        own = near @ known.covariance[np.ix_(used, used)] @ near.T + noise[place]
        across = near @ towards[used]
        gains[place] = (across * np.linalg.solve(own, across)).sum()
    most = max(least, _SHORTLIST)
    return np.sort(np.argsort(-gains, kind="stable")[:most])


@dataclass(frozen=True, kw_only=True, eq=False)
class _Scene:
    """Covariances in the space of what is seen: candidates, and with the targets.

    ``among`` (n m, n m), ``across`` (n m, t), ``noise`` (n, m, m); ``left`` is the
    summed variance of the targets.
    """

    among: "Floats"
    across: "Floats"
    noise: "Floats"
    left: float

    def own(self) -> "Floats":
        """Return K_cc + Σ_c of each candidate."""
        import numpy as np

        places, width = self.noise.shape[:2]
        each = np.arange(places)
        whole = self.among.reshape(places, width, places, width)
        found: Floats = whole[each, :, each, :] + self.noise
        return found

    def gains(self) -> "Floats":
        """Return equation 3 for each candidate."""
        import numpy as np

        across = self.across.reshape(*self.noise.shape[:2], -1)
        found: Floats = np.einsum(
            "nmt,nmt->n", across, np.linalg.solve(self.own(), across)
        )
        return found

    def after(self, best: int, *, gain: float) -> "_Scene":
        """Return what is left to learn once a candidate has been dyed."""
        import numpy as np

        width = self.noise.shape[1]
        run = slice(best * width, best * width + width)
        taught = self.among[:, run] @ np.linalg.inv(self.own()[best])
        return _Scene(
            among=self.among - taught @ self.among[run],
            across=self.across - taught @ self.across[run],
            noise=self.noise,
            left=self.left - gain,
        )


def _scene(by: "Floats", noise: "Floats", aimed: "Floats", known: Known) -> _Scene:
    flat = by.reshape(-1, known.structure.total)
    towards = aimed @ known.covariance
    return _Scene(
        among=flat @ known.covariance @ flat.T,
        across=flat @ towards.T,
        noise=noise,
        left=float((towards * aimed).sum()),
    )


def _seen(candidates: Dyed, known: Known, reading: Reading) -> "tuple[Floats, Floats]":
    """Return slopes of the candidates and the noise that each would be read with."""
    import numpy as np

    by, doses = _slopes(candidates, known, reading.seen)
    noise = reading.dose_error**2 * doses + reading.noise**2 * np.eye(by.shape[1])
    return by, noise


def _slopes(dyed: Dyed, known: Known, seen: Seen) -> "tuple[Floats, Floats]":
    """Return slopes over all parameters, and Σ g g' of the doses, a swatch."""
    import numpy as np

    structure = known.structure
    rows = entries(dyed, structure=structure, sizes=known.sizes)
    found = slopes(
        known.parameters, rows, structure, seen, start_surface=known.start_surface
    )
    doses = np.zeros((rows.swatches, seen.width, seen.width))
    np.add.at(doses, rows.swatch, found.dose[:, :, None] * found.dose[:, None, :])
    return spread_out(rows, found.shared, found.own, structure), doses
