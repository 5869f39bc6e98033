"""Swatches that the others do not believe, and those that somebody set aside."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.mixing import Mix, Palette, told_mixes
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

    ``is_other_light`` tells that all of them may be doubted for one reason; ``away`` is
    CIEDE2000 from what was set aside to what the others foretell, where they can.
    """

    doubted: tuple[Doubt, ...]
    aside: tuple[SwatchNow, ...]
    away: Mapping[int, float]
    is_other_light: bool


def doubts_among(swatches: Sequence[SwatchNow], holds: PaletteNow | None) -> Doubts:
    """Return what of some swatches does not teach, until somebody has judged it."""
    by_id = {each.id: each for each in swatches}
    found = () if holds is None else holds.suspects
    aside = tuple(x for x in swatches if x.standing is Standing.SET_ASIDE)
    return Doubts(
        doubted=tuple(
            Doubt(swatch=by_id[x.swatch_id], distance=x.distance, dosed=x.dosed)
            for x in found
            if x.swatch_id in by_id and by_id[x.swatch_id].standing is Standing.COUNTS
        ),
        aside=aside,
        away={} if holds is None else _away(aside, holds.palette),
        is_other_light=holds is not None and holds.is_other_light,
    )


def _away(aside: Sequence[SwatchNow], palette: Palette) -> dict[int, float]:
    known = [
        (swatch, swatch.reading.lab)
        for swatch in aside
        if swatch.reading is not None and _is_known(swatch, palette)
    ]
    mixes = [Mix(base=x.base_name, doses=tuple(x.doses)) for x, _lab in known]
    told = told_mixes(mixes, palette=palette).lab.tolist() if mixes else []
    return {
        swatch.id: ciede2000(Lab(*foretold), lab)
        for (swatch, lab), foretold in zip(known, told, strict=True)
    }


def _is_known(swatch: SwatchNow, palette: Palette) -> bool:
    dyes = {dye for dye, _depth in swatch.doses}
    return swatch.base_name in palette.names.bases and dyes <= set(palette.names.dyes)
