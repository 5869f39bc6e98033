"""Swatches that do not belong: a wrong dose, a swapped tag, a wrong reading.

A swatch is odd where the others, leaving it out, foretell something else: by far more
than chance, and by more than its meter could be off. One wrong swatch drags others of
its dye with it, so that the oddest is not always the culprit. Of the odd ones that
share a dye each is left out in turn, and the fit of what remains says which of them
it was: the one without which the rest agrees best. What was set aside before the
culprit was found is asked again at the end.
"""

from collections.abc import Sequence
from math import sqrt
from typing import TYPE_CHECKING

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.asking import told_mixes
from shadewright.core.mixing.fitting_swatches import fit_once
from shadewright.core.mixing.model.seeing import as_seen
from shadewright.core.mixing.palette import Palette, Suspect
from shadewright.core.mixing.posterior.calibrating import LeftOut
from shadewright.core.mixing.swatches import (
    DOSE_ERROR,
    Evidence,
    Mix,
    Swatch,
    seen_of,
)

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

Groups = tuple[tuple[Swatch, ...], ...]

_SUSPECT, _DOSED, _PLAIN = 3.0, 2.5, 3.5
_APART, _PLAIN_APART = 3.0, 1.0
_MOST_USUAL = 2.0
_FEWEST = 3
_RIVALS = 4
_AT_ONCE = 0.3


def suspects_of(
    found: tuple[LeftOut, ...], groups: Groups, *, start_surface: float
) -> tuple[Suspect, ...]:
    """Return the swatches that the others do not believe, one a dye at most.

    Parameters
    ----------
    found : tuple of LeftOut
        The swatches, each left out. [1]
    groups : tuple of tuple of Swatch
        The swatches in the same order. [%]
    start_surface : float
        Where the surface term starts. [1]

    Returns
    -------
    tuple of Suspect
        The oddest first; only such as are nearly as odd as the first, for the others
        may only have been dragged along. [-]

    Notes
    -----
    A swatch is odd from three times the usual size of z on, or where a wrong dose
    explains it at 2.5 times, if it is three ΔE off; from 3.5 times the usual size on
    one ΔE will do, which is how a reading under another light shows (our choice).
    """
    swatches = [swatch for group in groups for swatch in group]
    odd = _odd(found, groups) if len(swatches) >= _FEWEST else []
    taken: list[Suspect] = []
    while odd:
        rivals = [odd[0], *(each for each in odd[1:] if _is_tied(each, odd[0]))]
        culprit = _culprit(rivals[:_RIVALS], swatches, start_surface)
        taken.append(culprit)
        odd = [
            each
            for each in odd
            if not _is_tied(each, culprit) and not _is_tied(each, rivals[0])
        ]
    return tuple(taken)


def believed(suspects: Sequence[Suspect], palette: Palette) -> list[Suspect]:
    """Return those that the swatches left over foretell well after all.

    Parameters
    ----------
    suspects : sequence of Suspect
        What was set aside; one alone was not dragged along by another. [-]
    palette : Palette
        What is learned without them. [-]

    Returns
    -------
    list of Suspect
        Those within the difference that nine in ten stay under. [-]
    """
    import numpy as np

    known = {*palette.names.dyes}
    asked = [
        each
        for each in suspects
        if each.swatch.base in palette.names.bases
        and all(dye in known for dye, _depth in each.swatch.doses)
    ]
    if len(suspects) < 2 or not asked:
        return []
    mixes = [
        Mix(base=one.base, doses=one.doses, session=one.session)
        for one in (each.swatch for each in asked)
    ]
    told = told_mixes(mixes, palette=palette, dose_error=DOSE_ERROR)
    off = ciede2000_arrays(np.concatenate(list(map(_daylight, asked))), told.lab)
    pairs = zip(asked, off, told.de_90, strict=True)
    return [each for each, far, most in pairs if far <= most]


def _daylight(suspect: Suspect) -> "Floats":
    """Return what was read, as Lab under D65, (1, 3)."""
    import numpy as np

    values = np.array([suspect.swatch.reading.values])
    is_spectrum = suspect.swatch.reading.evidence is Evidence.SPECTRUM
    return as_seen(values, seen_of(Evidence.LAB)) if is_spectrum else values[:, :3]


def _is_tied(one: Suspect, other: Suspect) -> bool:
    """Tell whether two swatches share a dye, or one of them is bare."""
    dyes = {dye for dye, _depth in one.swatch.doses}
    others = {dye for dye, _depth in other.swatch.doses}
    return not dyes or not others or bool(dyes & others)


def _odd(found: tuple[LeftOut, ...], groups: Groups) -> list[Suspect]:
    """Return what is odd, the oddest first, down to a third of it."""
    import numpy as np

    swatches = [swatch for group in groups for swatch in group]
    sizes = np.concatenate([one.size for one in found])
    doses = abs(np.concatenate([one.dose for one in found]))
    dosed = np.concatenate([one.dosed for one in found])
    usual = float(np.clip(np.median(sizes), 1.0, _MOST_USUAL))
    apart = distances(found, groups)
    meter = np.array([max(1.0, sqrt(3.0) * each.reading.noise) for each in swatches])
    is_likely = (sizes > _SUSPECT * usual) | (doses > _DOSED * usual)
    is_far = is_likely & (apart > _APART * meter)
    is_plain = (sizes > _PLAIN * usual) & (apart > _PLAIN_APART * meter)
    odd = np.maximum(sizes, doses) * (is_far | is_plain)
    return [
        Suspect(
            swatch=swatches[place],
            size=float(odd[place]),
            distance=float(apart[place]),
            dosed=float(dosed[place]),
        )
        for place in np.argsort(-odd, kind="stable")
        if odd[place] > _AT_ONCE * odd.max()
    ]


def _culprit(
    rivals: Sequence[Suspect], swatches: Sequence[Swatch], start_surface: float
) -> Suspect:
    """Return the rival without which what shares its dyes agrees best."""
    if len(rivals) == 1:
        return rivals[0]
    dyes = {dye for each in rivals for dye, _depth in each.swatch.doses}
    near = [
        each
        for each in swatches
        if not each.doses or dyes & {dye for dye, _depth in each.doses}
    ]

    def agreement(rival: Suspect) -> float:
        rest = [each for each in near if each is not rival.swatch]
        if not any(each.doses for each in rest):
            return float("-inf")
        return fit_once(rest, start_surface=start_surface, rounds=0)[0].log_evidence

    return max(rivals, key=agreement)


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
