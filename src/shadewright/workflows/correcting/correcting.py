"""What to add to a lot so that it comes to its colour, out of which bottles."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from shadewright.core.baths import ChosenBottles
from shadewright.core.colour import Lab
from shadewright.core.costing import Cost
from shadewright.core.mixing import Evidence, Mix, Palette, told_mixes
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.core.recipes import Correction, Wishes, correction
from shadewright.errors import ConflictError
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.correcting.off_shade import OffShade
from shadewright.workflows.shades.dye_prices import SKEIN_G, gram_prices, skein_cost
from shadewright.workflows.shades.find_wishes import AtShelf, at_shelf, palette_base
from shadewright.workflows.shades.palettes import gone_dyes, palette_or_refuse
from shadewright.workflows.shades.swatches import DyeDoses

PASSES = 1.0
"""CIEDE2000 that counts as come to shade. [1]"""


@dataclass(frozen=True, kw_only=True)
class Addition:
    """One dye to add: the whole of it, and what goes in first, out of bottles."""

    dye_id: int
    dye_name: str
    whole_percent: float
    first_percent: float
    first: PlannedDose


@dataclass(frozen=True, kw_only=True)
class Foretold:
    """A colour that the palette foretells, with how far it may be off, in CIEDE2000."""

    lab: Lab
    expected: float
    within_90: float
    evidence: Evidence


@dataclass(frozen=True, kw_only=True)
class Corrected:
    """What to add to a lot, and where that leads.

    ``first`` are the additions that go in before looking again, as a bath keeps them.
    """

    off: OffShade
    found: Correction
    additions: tuple[Addition, ...]
    after: Foretold

    @property
    def first(self) -> DyeDoses:
        """What goes in first, by the number of the dye, in % on weight of fibre."""
        return tuple((each.dye_id, each.first_percent) for each in self.additions)


def corrected(off: OffShade) -> Corrected:
    """Return what to add to a lot; refused without an aim, or without a palette."""
    if off.aim is None:
        raise ConflictError(
            why=f"Nobody said which colour lot {off.number} should have.",
            advice="Make a standard of this colourway, or type the colour.",
            argument="colour",
        )
    palette = palette_or_refuse().palette
    found = correction(
        palette,
        base=palette_base(palette, off.base_id),
        doses=off.doses,
        measured=off.measured.lab,
        target=off.aim.lab,
        wishes=Wishes(unwanted=_unwanted(palette)),
        tolerance=PASSES,
    )
    return Corrected(
        off=off,
        found=found,
        additions=additions_of(off, found, palette),
        after=after_of(off, found, palette),
    )


def after_of(off: OffShade, found: Correction, palette: Palette) -> Foretold:
    """Return the colour after all additions; how far off is that of a fresh bath."""
    doses = dict(off.doses)
    for dye, depth in found.additions:
        doses[dye] = doses.get(dye, 0.0) + depth
    mix = Mix(base=off.base_name, doses=tuple(doses.items()))
    (told,) = foretold_mixes([mix], palette)
    return replace(told, lab=found.lab_after)


def foretold_mixes(mixes: Sequence[Mix], palette: Palette) -> tuple[Foretold, ...]:
    """Return the colours of mixes that are still to be dyed, each with its spread."""
    told = told_mixes(mixes, palette=palette, dose_error=DOSE_ERROR)
    rows = zip(
        told.lab.tolist(),
        told.expected.tolist(),
        told.de_90.tolist(),
        told.evidence,
        strict=True,
    )
    return tuple(
        Foretold(lab=Lab(*lab), expected=mean, within_90=most, evidence=evidence)
        for lab, mean, most, evidence in rows
    )


def additions_of(
    off: OffShade, found: Correction, palette: Palette
) -> tuple[Addition, ...]:
    """Return additions with the bottles that give what goes in first."""
    at = at_shelf(palette, base_id=off.base_id, batch_g=off.fibre_g)
    return tuple(
        _addition(dye, whole, first, at, place)
        for place, ((dye, whole), (_dye, first)) in enumerate(
            zip(found.additions, found.first, strict=True), start=1
        )
    )


def whole_at_once(found: Correction) -> Correction:
    """Return a correction whose additions all go in at once, as an overdye does."""
    return replace(found, share=1.0)


def _addition(
    dye: str, whole: float, first: float, at: AtShelf, place: int
) -> Addition:
    return Addition(
        dye_id=at.dyes[dye].pk,
        dye_name=dye,
        whole_percent=whole,
        first_percent=first,
        first=at.dose(dye, first, place=place),
    )


def _unwanted(palette: Palette) -> tuple[str, ...]:
    """Return the dyes that the studio has no more."""
    return gone_dyes(palette)


def dye_cost_of(additions: Sequence[Addition]) -> Cost:
    """Return what the dye costs that goes in first."""
    codes = [share.code for each in additions for share in each.first.shares]
    doses = [
        (
            each.dye_name,
            ChosenBottles(shares=each.first.shares, missing_g=each.first.missing_g),
        )
        for each in additions
    ]
    return skein_cost(doses, gram_prices(codes), batch_g=SKEIN_G)
