"""Learning a palette: fit, look for a swatch that does not belong, fit again."""

from collections import Counter
from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from enum import StrEnum

from shadewright.core.mixing.arranging import Names
from shadewright.core.mixing.fitting_swatches import fit_once
from shadewright.core.mixing.model.forward import USUAL_SURFACE
from shadewright.core.mixing.other_light import is_other_light
from shadewright.core.mixing.palette import Learned, Palette, Suspect
from shadewright.core.mixing.posterior.calibrating import (
    LeftOut,
    left_out,
    width_factor,
)
from shadewright.core.mixing.posterior.fitting import Fitted
from shadewright.core.mixing.suspects import (
    Groups,
    believed,
    distances,
    suspects_of,
)
from shadewright.core.mixing.swatches import Evidence, Swatch

MOST_SET_ASIDE = 0.4
"""Share of the swatches that may be set aside before the rest is no palette. [1]"""


class Part(StrEnum):
    """What a fit is about to do."""

    FIT = "fit"
    DOUBT = "doubt"
    LIGHT = "light"


@dataclass(frozen=True, kw_only=True)
class Stage:
    """How far a fit is: the part that begins, and the how manieth fit it is."""

    part: Part
    turn: int


def learn(
    swatches: Sequence[Swatch],
    *,
    start_surface: float = USUAL_SURFACE,
    trusted: AbstractSet[int] = frozenset(),
) -> Learned:
    """Return the palette that swatches teach; what cannot be true is set aside.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed and read. [%]
    start_surface : float
        Where the surface term starts; above zero. [1]
    trusted : set of int
        Numbers of swatches that were looked at again and stay, odd or not. [-]

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
    Of each dye one swatch is set aside a turn, for one wrong swatch drags others with
    it: see ``suspects``. No more than four in ten are. At the end those that what is
    left foretells well after all, for they had only been dragged along, are put back.
    """
    told = learning(swatches, start_surface=start_surface, trusted=trusted)
    return next(each for each in told if isinstance(each, Learned))


def learning(
    swatches: Sequence[Swatch],
    *,
    start_surface: float = USUAL_SURFACE,
    trusted: AbstractSet[int] = frozenset(),
) -> Iterator[Stage | Learned]:
    """Learn as ``learn`` does, and tell each stage before it begins.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed and read. [%]
    start_surface : float
        Where the surface term starts; above zero. [1]
    trusted : set of int
        Numbers of swatches that were looked at again and stay, odd or not. [-]

    Yields
    ------
    Stage or Learned
        Fit and doubt by turns, how often nobody knows before; then the light; at last
        what was learned. [-]

    Raises
    ------
    MissingError
        If no swatch holds a dye.
    """
    kept = list(swatches)
    suspects: list[Suspect] = []
    left = int(MOST_SET_ASIDE * len(kept))
    turn, is_second_look = 0, False
    while True:
        turn += 1
        yield Stage(part=Part.FIT, turn=turn)
        fitted, names, groups = fit_once(kept, start_surface=start_surface)
        yield Stage(part=Part.DOUBT, turn=turn)
        found = left_out(fitted)
        doubted = suspects_of(found, groups, start_surface=start_surface)
        odd = [each for each in doubted if each.swatch.number not in trusted][:left]
        back: list[Suspect] = []
        if not odd and not is_second_look:
            is_second_look = True
            back = believed(suspects, _palette(fitted, names, groups, found))
        if not odd and not back:
            break
        suspects = [*(each for each in suspects if each not in back), *odd]
        kept += [each.swatch for each in back]
        left += len(back)
        left -= len(odd)
        aside = {id(each.swatch) for each in odd}
        kept = [each for each in kept if id(each) not in aside]
    yield Stage(part=Part.LIGHT, turn=turn)
    yield Learned(
        palette=_palette(fitted, names, groups, found),
        left_out=_foretold_by_others(found, groups),
        used=tuple(each for group in groups for each in group),
        suspects=tuple(suspects),
        is_other_light=is_other_light(fitted, kept, names),
    )


def _foretold_by_others(
    found: tuple[LeftOut, ...], groups: Groups
) -> tuple[tuple[int, float], ...]:
    """Return how far each swatch is from what the others foretell, by its number.

    A dye that stands in one swatch alone is foretold by nothing: its prior comes from
    that swatch, so that leaving it out proves nothing.
    """
    swatches = [each for group in groups for each in group]
    seen = Counter(dye for each in swatches for dye, _depth in each.doses)
    return tuple(
        (each.number, float(de))
        for each, de in zip(swatches, distances(found, groups), strict=True)
        if all(seen[dye] > 1 for dye, _depth in each.doses)
    )


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
        left_out=tuple(de for _number, de in _foretold_by_others(found, groups)),
    )
