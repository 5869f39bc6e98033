"""The colours that a set of swatches is foretold to have."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.colour import Lab
from shadewright.core.mixing import Evidence, Mix, Palette, told_mixes
from shadewright.core.mixing.swatches import DOSE_ERROR, Doses
from shadewright.workflows.shades.palettes import palette_now


@dataclass(frozen=True, kw_only=True)
class ToldSwatch:
    """A colour that is foretold, CIEDE2000 to expect, and that nine in ten keep to."""

    lab: Lab
    expected: float
    within_90: float
    evidence: Evidence


def told_swatches(
    doses: Sequence[Doses], *, base: str
) -> tuple[ToldSwatch | None, ...]:
    """Return what the palette foretells of each; None where it does not know a dye."""
    now = palette_now()
    if now is None or base not in now.palette.names.bases:
        return (None,) * len(doses)
    known = [each for each in doses if _is_known(each, now.palette)]
    told = dict(zip(known, _told(known, now.palette, base), strict=True))
    return tuple(told.get(each) for each in doses)


def _is_known(doses: Doses, palette: Palette) -> bool:
    return all(dye in palette.names.dyes for dye, _depth in doses)


def _told(
    doses: Sequence[Doses], palette: Palette, base: str
) -> tuple[ToldSwatch, ...]:
    if not doses:
        return ()
    mixes = [Mix(base=base, doses=each) for each in doses]
    told = told_mixes(mixes, palette=palette, dose_error=DOSE_ERROR)
    return tuple(
        ToldSwatch(
            lab=Lab(*lab), expected=expected, within_90=within_90, evidence=evidence
        )
        for lab, expected, within_90, evidence in zip(
            told.lab.tolist(),
            told.expected.tolist(),
            told.de_90.tolist(),
            told.evidence,
            strict=True,
        )
    )
