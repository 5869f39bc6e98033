"""Learning a palette: fit, look for a swatch that does not belong, fit again."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.arranging import Names
from shadewright.core.mixing.fitting_swatches import fit_once
from shadewright.core.mixing.model.forward import USUAL_SURFACE
from shadewright.core.mixing.model.seeing import as_seen
from shadewright.core.mixing.palette import (
    Learned,
    Palette,
    Suspect,
)
from shadewright.core.mixing.posterior.calibrating import (
    LeftOut,
    left_out,
    width_factor,
)
from shadewright.core.mixing.posterior.fitting import Fitted
from shadewright.core.mixing.swatches import Evidence, Swatch, seen_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

Groups = tuple[tuple[Swatch, ...], ...]

MOST_SET_ASIDE = 0.3
"""Share of the swatches that may be set aside before the rest is no palette. [1]"""
_SUSPECT, _APART = 3.0, 3.0


def learn(
    swatches: Sequence[Swatch],
    *,
    start_surface: float = USUAL_SURFACE,
) -> Learned:
    """Return the palette that swatches teach; what cannot be true is set aside.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed and read. [%]
    start_surface : float
        Where the surface term starts; above zero. [1]

    Returns
    -------
    Learned
        The palette, what it rests on, and the suspects, the worst first. [-]

    Raises
    ------
    MissingError
        If no swatch holds a dye.

    Notes
    -----
    One swatch is set aside a turn, the one that the others believe least, for one
    wrong swatch drags others with it. A swatch is a suspect from three times the
    usual size of z on (our choice).
    """
    kept = list(swatches)
    suspects: list[Suspect] = []
    while True:
        fitted, names, groups = fit_once(kept, start_surface=start_surface)
        found = left_out(fitted)
        worst = _worst(found, groups)
        is_enough = len(suspects) >= MOST_SET_ASIDE * len(swatches)
        if worst is None or is_enough:
            break
        suspects.append(worst)
        kept.remove(worst.swatch)
    return Learned(
        palette=_palette(fitted, names, groups, found),
        used=tuple(kept),
        suspects=tuple(suspects),
    )


def _worst(found: tuple[LeftOut, ...], groups: Groups) -> Suspect | None:
    """Return the swatch that the others believe least, if one stands out."""
    import numpy as np

    sizes = np.concatenate([one.size for one in found])
    swatches = [swatch for group in groups for swatch in group]
    usual = max(float(np.median(sizes)), 1.0)
    place = int(sizes.argmax())
    if len(swatches) < 3 or sizes[place] < _SUSPECT * usual:
        return None
    distance = float(distances(found, groups)[place])
    if distance < _APART:
        return None
    return Suspect(swatch=swatches[place], size=float(sizes[place]), distance=distance)


def distances(found: tuple[LeftOut, ...], groups: Groups) -> "Floats":
    """Return CIEDE2000 between each swatch and what the others foretell.

    Parameters
    ----------
    found : tuple of LeftOut
        The swatches, each left out. [1]
    groups : tuple of tuple of Swatch
        The swatches in the same order. [-]

    Returns
    -------
    ndarray, shape (S,)
        Distances under D65. [1]
    """
    import numpy as np

    daylight = seen_of(Evidence.LAB)
    whole = []
    for one, group in zip(found, groups, strict=True):
        values = np.array([each.reading.values for each in group])
        if group[0].reading.evidence is Evidence.SPECTRUM:
            told = ((116.0 * np.cbrt(values) + one.off) / 116.0) ** 3
            pair = as_seen(values, daylight), as_seen(np.maximum(told, 0), daylight)
        else:
            pair = values[:, :3], values[:, :3] + one.off[:, :3]
        whole.append(ciede2000_arrays(*pair))
    return np.concatenate(whole)


def _palette(
    fitted: Fitted,
    names: Names,
    groups: Groups,
    found: tuple[LeftOut, ...],
) -> Palette:
    best = dict.fromkeys(names.dyes, Evidence.SCREEN)
    least = dict.fromkeys(names.dyes, float("inf"))
    most = dict.fromkeys(names.dyes, 0.0)
    for swatch in (each for group in groups for each in group):
        for dye, depth in swatch.doses:
            best[dye] = max(
                best[dye], swatch.reading.evidence, key=lambda kind: kind.rank
            )
            least[dye], most[dye] = min(least[dye], depth), max(most[dye], depth)
    return Palette(
        names=names,
        known=fitted.known,
        width=width_factor(fitted, found),
        evidence=tuple(best.values()),
        depths=tuple((least[dye], most[dye]) for dye in names.dyes),
        left_out=tuple(float(d) for d in distances(found, groups)),
    )
