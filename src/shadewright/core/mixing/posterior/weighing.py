"""How much each swatch says: its residuals and slopes in units of its own noise.

A reading has its noise, and the dose of each dye was off by a little: an error along
g_i = dy/d ln c_i. Both make the covariance of one swatch,

    Σ = sd² I + δ² Σ_i g_i g_i'                                     (1)

and with W = L⁻¹, L L' = Σ, everything is counted in that noise: a whitened residual
of 1 is as much as chance brings.
"""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.entries import Dyed, Entries, entries
from shadewright.core.mixing.model.forward import Slopes, slopes
from shadewright.core.mixing.model.parameters import Sizes, Structure
from shadewright.core.mixing.model.seeing import Seen
from shadewright.core.mixing.posterior.solving import Arrow

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Flags = NDArray[np.bool_]


@dataclass(frozen=True, kw_only=True, eq=False)
class ReadSwatches:
    """Swatches of one kind of reading.

    ``read`` (S, m) is what was read, ``noise`` (S,) its standard deviation a number,
    ``dose_error`` (S,) the relative standard error of its doses, ``trust`` (S,) a
    weight from 0 to 1, ``is_carried`` (S,) whether it errs as its neighbours do.
    """

    dyed: Dyed
    seen: Seen
    read: "Floats"
    noise: "Floats"
    dose_error: "Floats"
    trust: "Floats"
    is_carried: "Flags"


@dataclass(frozen=True, kw_only=True, eq=False)
class Ready:
    """Evidence with its rows prepared for a structure and sizes."""

    evidence: ReadSwatches
    rows: Entries


@dataclass(frozen=True, kw_only=True, eq=False)
class Weighed:
    """A kind of evidence at some parameters, in units of noise.

    ``whitener`` (S, m, m), ``residual`` (S, m), ``shared`` (S, m, G), ``own``
    (E, m, P), ``dose`` (E, m) by the logarithm of each dose.
    """

    rows: Entries
    whitener: "Floats"
    residual: "Floats"
    shared: "Floats"
    own: "Floats"
    dose: "Floats"


def ready(
    evidence: "tuple[ReadSwatches, ...]", structure: Structure, sizes: Sizes
) -> tuple[Ready, ...]:
    """Return evidence with its rows; a swatch's dyes stand in order.

    Parameters
    ----------
    evidence : tuple of ReadSwatches
        Swatches, by kind of reading. [%]
    structure : Structure
        Dyes, bases, sessions and the prior of shapes. [-]
    sizes : Sizes
        Prior standard deviations. [1]

    Returns
    -------
    tuple of Ready
        The same, ready for any parameters. [1]
    """
    return tuple(
        Ready(evidence=each, rows=entries(each.dyed, structure=structure, sizes=sizes))
        for each in evidence
    )


def weighed(
    parameters: "Floats", one: Ready, structure: Structure, *, start_surface: float
) -> Weighed:
    """Return one kind of evidence in units of its noise (equation 1).

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector. [1]
    one : Ready
        One kind of evidence. [%]
    structure : Structure
        Where things stand. [-]
    start_surface : float
        Where the surface term starts. [1]

    Returns
    -------
    Weighed
        Residuals and slopes, whitened. [1]
    """
    import numpy as np

    kind, rows = one.evidence, one.rows
    found = slopes(parameters, rows, structure, kind.seen, start_surface=start_surface)
    whitener = _whitener(found, rows, kind)
    residual = np.einsum("sij,sj->si", whitener, found.seen - kind.read)
    return Weighed(
        rows=rows,
        whitener=whitener,
        residual=residual,
        shared=whitener @ found.shared,
        own=whitener[rows.swatch] @ found.own,
        dose=np.einsum("eij,ej->ei", whitener[rows.swatch], found.dose),
    )


def _whitener(found: Slopes, rows: Entries, kind: ReadSwatches) -> "Floats":
    import numpy as np

    width = kind.seen.width
    noise = np.zeros((rows.swatches, width, width))
    doses = found.dose[:, :, None] * found.dose[:, None, :]
    errors = kind.dose_error[rows.swatch, None, None]
    np.add.at(noise, rows.swatch, errors**2 * doses)
    noise += (kind.noise**2)[:, None, None] * np.eye(width)
    unit = np.linalg.inv(np.linalg.cholesky(noise))
    whole: Floats = unit * np.sqrt(kind.trust)[:, None, None]
    return whole


def gathered(
    parameters: "Floats", weighings: "tuple[Weighed, ...]", structure: Structure
) -> "tuple[Arrow, Floats]":
    """Return the matrix I + J'J and the gradient of the cost.

    Parameters
    ----------
    parameters : ndarray, shape (all,)
        The whole vector, whose own prior is N(0, 1). [1]
    weighings : tuple of Weighed
        Every kind of evidence. [1]
    structure : Structure
        Where things stand. [-]

    Returns
    -------
    tuple of (Arrow; ndarray, shape (all,))
        Matrix and gradient. [1]
    """
    import numpy as np

    arrow = _nothing(structure)
    gradient = parameters.copy()
    mixed = [arrow.mixed]
    for each in weighings:
        _add_gradient(gradient, each, structure)
        is_mix = np.bincount(each.rows.swatch, minlength=each.rows.swatches) > 1
        _add_singles(arrow, each, is_mix)
        mixed.append(_mix_rows(each, is_mix, structure))
    return replace(arrow, mixed=np.concatenate(mixed)), gradient


def _nothing(structure: Structure) -> Arrow:
    import numpy as np

    dyes, own, shared = structure.dyes, structure.per_dye, structure.shared
    return Arrow(
        shared=np.eye(shared),
        between=np.zeros((dyes, own, shared)),
        own=np.broadcast_to(np.eye(own), (dyes, own, own)).copy(),
        mixed=np.zeros((0, structure.total)),
    )


def _add_gradient(gradient: "Floats", each: Weighed, structure: Structure) -> None:
    import numpy as np

    shared = structure.shared
    gradient[:shared] += np.einsum("smg,sm->g", each.shared, each.residual)
    own = np.einsum("emp,em->ep", each.own, each.residual[each.rows.swatch])
    np.add.at(gradient[shared:].reshape(structure.dyes, -1), each.rows.dye, own)


def _add_singles(arrow: Arrow, each: Weighed, is_mix: "NDArray[np.bool_]") -> None:
    """Add what swatches of one dye, or of none, say to the blocks."""
    import numpy as np

    plain = each.shared[~is_mix].reshape(-1, each.shared.shape[-1])
    arrow.shared[...] += plain.T @ plain
    single = np.flatnonzero(~is_mix[each.rows.swatch])
    turned = each.own[single].transpose(0, 2, 1)
    dye = each.rows.dye[single]
    np.add.at(arrow.between, dye, turned @ each.shared[each.rows.swatch[single]])
    np.add.at(arrow.own, dye, turned @ each.own[single])


def _mix_rows(
    each: Weighed, is_mix: "NDArray[np.bool_]", structure: Structure
) -> "Floats":
    """Return the rows of J of the mixes, whole."""
    import numpy as np

    which = np.flatnonzero(is_mix)
    if not len(which):
        return np.zeros((0, structure.total))
    return whole_rows(each, structure)[which].reshape(-1, structure.total)


def whole_rows(each: Weighed, structure: Structure) -> "Floats":
    """Return every swatch's rows of J over all parameters.

    Parameters
    ----------
    each : Weighed
        One kind of evidence. [1]
    structure : Structure
        Where things stand. [-]

    Returns
    -------
    ndarray, shape (S, m, all)
        Whitened slopes. [1]
    """
    return spread_out(each.rows, each.shared, each.own, structure)


def spread_out(
    rows: Entries, shared: "Floats", own: "Floats", structure: Structure
) -> "Floats":
    """Return slopes over all parameters from shared and own ones.

    Parameters
    ----------
    rows : Entries
        Dyes in swatches. [1]
    shared : ndarray, shape (S, m, G)
        Slopes by what dyes share. [1]
    own : ndarray, shape (E, m, P)
        Slopes by each dye's own parameters. [1]
    structure : Structure
        Where things stand. [-]

    Returns
    -------
    ndarray, shape (S, m, all)
        Slopes. [1]
    """
    import numpy as np

    width = shared.shape[1]
    found = np.zeros((rows.swatches, width, structure.total))
    found[:, :, : structure.shared] = shared
    dyes = found[:, :, structure.shared :].reshape(
        rows.swatches, width, structure.dyes, -1
    )
    for row, (swatch, dye) in enumerate(zip(rows.swatch, rows.dye, strict=True)):
        dyes[swatch, :, dye] += own[row]
    return found
