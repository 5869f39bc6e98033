"""Fitting a palette: every swatch at once, by Gauss and Newton.

The parameters that make

    cost = ½ |θ|² + ½ Σ_s |W_s (y_s(θ) − read_s)|²                   (4)

least are both probable before and close to what was read. Each step solves the linear
problem at hand, θ ← θ − H⁻¹ g, halved until the cost falls. Near the end H⁻¹ is the
covariance of what is known.

Then the sizes are learned: dyes that turned out wilder than the prior widen it for
all, tamer ones narrow it (expectation and maximisation, with six counts of the usual
size for caution), and the fit is repeated. No size grows past three times the usual:
what is wilder than that is a wrong swatch, not a wild dye.
"""

from dataclasses import dataclass, replace
from math import sqrt
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.forward import USUAL_SURFACE, reflectances
from shadewright.core.mixing.model.parameters import (
    Sizes,
    Structure,
    sizes_by_name,
)
from shadewright.core.mixing.model.seeing import as_seen
from shadewright.core.mixing.posterior.known import Known
from shadewright.core.mixing.posterior.solving import step
from shadewright.core.mixing.posterior.weighing import (
    ReadSwatches,
    Ready,
    Weighed,
    gathered,
    ready,
    weighed,
)

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

ROUNDS = 2
_STEPS = 25
_FARTHEST = 4.0
_LEAST_STEP = 1e-3
_CALM = 1e-3
_CAUTION = 6.0
_WILDEST = Sizes(**{name: 3.0 * size for name, size in sizes_by_name(Sizes()).items()})
_LEARNED = (
    "shape",
    "slope",
    "saturation",
    "strength",
    "drift",
    "deviation",
    "base_factor",
    "base_shape",
    "session",
)


@dataclass(frozen=True, kw_only=True, eq=False)
class Fitted:
    """What is known of a palette, and the swatches that it rests on."""

    known: Known
    weighings: tuple[Weighed, ...]
    evidence: tuple[ReadSwatches, ...]
    log_evidence: float


@dataclass(frozen=True, kw_only=True, eq=False)
class _Problem:
    """The evidence, prepared, with the surface term that the fit starts from."""

    structure: Structure
    parts: tuple[Ready, ...]
    start_surface: float

    def weighings(self, parameters: "Floats") -> tuple[Weighed, ...]:
        return tuple(
            weighed(parameters, part, self.structure, start_surface=self.start_surface)
            for part in self.parts
        )

    def cost(self, parameters: "Floats", at: "tuple[Weighed, ...]") -> float:
        """Return equation 4 with the noise as it was at the last whole step."""
        import numpy as np

        whole = 0.5 * float(parameters @ parameters)
        for part, weights in zip(self.parts, at, strict=True):
            made = reflectances(
                parameters,
                part.rows,
                self.structure,
                start_surface=self.start_surface,
            )
            off = as_seen(made, part.evidence.seen) - part.evidence.read
            whole += 0.5 * float(
                (np.einsum("sij,sj->si", weights.whitener, off) ** 2).sum()
            )
        return whole


def fit(
    evidence: tuple[ReadSwatches, ...],
    *,
    structure: Structure,
    sizes: Sizes,
    start_surface: float = USUAL_SURFACE,
    rounds: int = ROUNDS,
) -> Fitted:
    """Return what the swatches teach of every dye.

    Parameters
    ----------
    evidence : tuple of ReadSwatches
        Swatches, by kind of reading. [%]
    structure : Structure
        Dyes, bases, sessions and the prior of shapes. [-]
    sizes : Sizes
        Prior standard deviations to begin with. [1]
    start_surface : float
        Where the surface term starts; above zero. [1]
    rounds : int
        How often the sizes are learned anew. [-]

    Returns
    -------
    Fitted
        Parameters, covariance and learned sizes. [1]

    References
    ----------
    .. [bjorck1996] 9.2 (Gauss-Newton with step control)
    .. [dempster1977] expectation and maximisation
    """
    import numpy as np

    parameters = np.zeros(structure.total)
    for _ in range(rounds):
        problem = _problem(evidence, structure, sizes, start_surface)
        known, _weighings = _known(problem, sizes, parameters)
        parameters, sizes = _learned(known, problem)
    problem = _problem(evidence, structure, sizes, start_surface)
    known, weighings = _known(problem, sizes, parameters)
    cost = problem.cost(known.parameters, weighings)
    return Fitted(
        known=known,
        weighings=weighings,
        evidence=evidence,
        log_evidence=-cost - known.inverse.log_determinant / 2,
    )


def _problem(
    evidence: tuple[ReadSwatches, ...],
    structure: Structure,
    sizes: Sizes,
    start_surface: float,
) -> _Problem:
    return _Problem(
        structure=structure,
        parts=ready(evidence, structure, sizes),
        start_surface=start_surface,
    )


def _known(
    problem: _Problem, sizes: Sizes, parameters: "Floats"
) -> tuple[Known, tuple[Weighed, ...]]:
    """Return the parameters of the least cost with their matrix, and the swatches."""
    found = _settled(problem, parameters)
    weighings = problem.weighings(found)
    known = Known(
        structure=problem.structure,
        sizes=sizes,
        start_surface=problem.start_surface,
        parameters=found,
        arrow=gathered(found, weighings, problem.structure)[0],
    )
    return known, weighings


def _settled(problem: _Problem, parameters: "Floats") -> "Floats":
    """Return the parameters of the least cost, step by step."""
    calm = _CALM * max(1.0, 0.02 * problem.structure.dyes)
    for _ in range(_STEPS):
        weighings = problem.weighings(parameters)
        arrow, gradient = gathered(parameters, weighings, problem.structure)
        by = -step(arrow, problem.structure, gradient)
        before = problem.cost(parameters, weighings)
        share = _share(problem, parameters, by, weighings, before)
        if not share:
            break
        parameters = share * by + parameters
        if before - problem.cost(parameters, weighings) < calm:
            break
    return parameters


def _share(
    problem: _Problem,
    parameters: "Floats",
    by: "Floats",
    weighings: tuple[Weighed, ...],
    before: float,
) -> float:
    """Return how much of a step lowers the cost; 0 where none does."""
    share = min(1.0, _FARTHEST / max(float(abs(by).max()), 1e-12))
    while share > _LEAST_STEP:
        if problem.cost(parameters + share * by, weighings) < before:
            return share
        share /= 3.0
    return 0.0


def _learned(known: Known, problem: _Problem) -> "tuple[Floats, Sizes]":
    """Return sizes as the dyes have them, and the parameters counted in these.

    size² ← size² (Σ (θ² + var θ) + 6) / (count + 6)                  (5)
    """
    import numpy as np

    structure, parameters, sizes = known.structure, known.parameters, known.sizes
    own = parameters[structure.shared :].reshape(structure.dyes, -1).copy()
    variance = np.diag(known.covariance)[structure.shared :].reshape(own.shape)
    used = np.unique(np.concatenate([part.rows.dye for part in problem.parts]))
    larger = {}
    for group in structure.groups:
        if group.name not in _LEARNED:
            continue
        run = slice(group.start, group.stop)
        found = float((own[used, run] ** 2 + variance[used, run]).sum()) + _CAUTION
        factor = sqrt(found / (len(used) * (group.stop - group.start) + _CAUTION))
        now, most = (getattr(each, group.name) for each in (sizes, _WILDEST))
        larger[group.name] = min(now * factor, most)
        own[:, run] *= now / larger[group.name]
    whole = np.concatenate([parameters[: structure.shared], own.ravel()])
    return whole, replace(sizes, **larger)
