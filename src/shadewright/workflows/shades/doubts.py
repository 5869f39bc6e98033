"""Swatches that the others do not believe, and those that somebody set aside."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.workflows.shades.palettes import PaletteNow
from shadewright.workflows.shades.swatches import Standing, SwatchNow


@dataclass(frozen=True, kw_only=True)
class Doubt:
    """A swatch that the last fit set aside by itself.

    ``distance`` is CIEDE2000 to what the others foretell; ``dosed`` the factor on its
    dose that would explain it best.
    """

    swatch: SwatchNow
    distance: float
    dosed: float


@dataclass(frozen=True, kw_only=True)
class Doubts:
    """What does not teach: doubted by the fit, and set aside by somebody.

    ``is_other_light`` tells that all of them may be doubted for one reason.
    """

    doubted: tuple[Doubt, ...]
    aside: tuple[SwatchNow, ...]
    is_other_light: bool


def doubts_among(swatches: Sequence[SwatchNow], holds: PaletteNow | None) -> Doubts:
    """Return what of some swatches does not teach, until somebody has judged it."""
    by_id = {each.id: each for each in swatches}
    found = () if holds is None else holds.suspects
    return Doubts(
        doubted=tuple(
            Doubt(swatch=by_id[x.swatch_id], distance=x.distance, dosed=x.dosed)
            for x in found
            if x.swatch_id in by_id and by_id[x.swatch_id].standing is Standing.COUNTS
        ),
        aside=tuple(x for x in swatches if x.standing is Standing.SET_ASIDE),
        is_other_light=holds is not None and holds.is_other_light,
    )
