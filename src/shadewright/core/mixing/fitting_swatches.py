"""From swatches to a fit: the prior that they allow, and the groups they fall into."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from math import sqrt
from typing import TYPE_CHECKING

from shadewright.core.mixing.arranging import Names, kinds_of, names_of
from shadewright.core.mixing.first_guess import OneSwatch, prior_with
from shadewright.core.mixing.model.forward import USUAL_SURFACE, grounds_of, surface_of
from shadewright.core.mixing.model.parameters import Sizes, Structure
from shadewright.core.mixing.model.shapes import BANDS, usual_prior
from shadewright.core.mixing.posterior.fitting import ROUNDS, Fitted, fit
from shadewright.core.mixing.swatches import Evidence, Swatch, seen_of
from shadewright.errors import MissingError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_CHART = 0.1


def fit_once(
    swatches: Sequence[Swatch],
    *,
    start_surface: float = USUAL_SURFACE,
    rounds: int = ROUNDS,
) -> tuple[Fitted, Names, tuple[tuple[Swatch, ...], ...]]:
    """Return the fit of swatches as they are, none set aside.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed and read. [%]
    start_surface : float
        Where the surface term starts. [1]
    rounds : int
        How often the sizes are learned anew. [-]

    Returns
    -------
    tuple of (Fitted, Names, tuple)
        The fit, the names, and the swatches in the order of its groups. [-]

    Raises
    ------
    MissingError
        If no swatch holds a dye.
    """
    names = names_of(swatches)
    if not names.dyes:
        raise MissingError(
            name="A dyed swatch",
            advice="Dye at least one swatch with a dye on it.",
            argument="swatches",
        )
    groups = kinds_of(swatches, names)
    evidence = tuple(kind for kind, _group in groups)
    structure = _structure(swatches, names, start_surface)
    fitted = fit(
        evidence,
        structure=structure,
        sizes=Sizes(),
        start_surface=start_surface,
        rounds=rounds,
    )
    return fitted, names, tuple(group for _kind, group in groups)


def _structure(
    swatches: Sequence[Swatch],
    names: Names,
    start_surface: float,
) -> Structure:
    """Return the structure, with the prior of shapes that the swatches allow."""
    is_spectral = any(each.reading.evidence is Evidence.SPECTRUM for each in swatches)
    rank, ground_rank = (BANDS, 24) if is_spectral else (20, 10)
    count = len(names.dyes)
    plain = Structure(
        dyes=count,
        bases=len(names.bases),
        sessions=len(names.sessions),
        prior=usual_prior(dyes=count, rank=rank),
        ground_rank=ground_rank,
    )
    singles = lone_swatches(swatches, names)
    if not singles:
        return plain
    ground, surface = _ground(swatches, names, plain, start_surface)
    prior = prior_with(
        singles,
        dyes=count,
        ground_ks=ground,
        surface=surface,
        daylight=seen_of(Evidence.LAB),
        rank=rank,
    )
    return replace(plain, prior=prior)


def lone_swatches(swatches: Sequence[Swatch], names: Names) -> dict[int, OneSwatch]:
    """Return the dyes of which one swatch by itself is all that there is.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed and read. [%]
    names : Names
        Dyes. [-]

    Returns
    -------
    dict of int to OneSwatch
        Dye and swatch; none for a dye that also stands in a mix or was read as a
        spectrum. [-]
    """
    import numpy as np

    seen: Counter[str] = Counter(dye for each in swatches for dye, _ in each.doses)
    found = {}
    for each in swatches:
        is_lone = len(each.doses) == 1 and seen[each.doses[0][0]] == 1
        if is_lone and each.reading.evidence is not Evidence.SPECTRUM:
            dye, depth = each.doses[0]
            found[names.dyes.index(dye)] = OneSwatch(
                lab=np.array(each.reading.values[:3]),
                depth=depth,
                is_chart=each.dose_spread > _CHART,
                off=sqrt(3.0) * each.reading.noise,
            )
    return found


def _ground(
    swatches: Sequence[Swatch],
    names: Names,
    structure: Structure,
    start_surface: float,
) -> "tuple[Floats, float]":
    """Return K/S of the first base from its undyed swatches alone, and the surface."""
    import numpy as np

    bare = [each for each in swatches if not each.doses]
    parameters = np.zeros(structure.total)
    if bare:
        groups = tuple(kind for kind, _ in kinds_of(bare, names))
        fitted = fit(
            groups,
            structure=structure,
            sizes=Sizes(),
            start_surface=start_surface,
            rounds=0,
        )
        parameters = fitted.known.parameters
    return (
        grounds_of(parameters, structure)[0],
        surface_of(parameters, start=start_surface),
    )
