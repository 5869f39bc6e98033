"""What to add to a lot so that it comes to its colour, out of which bottles."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from shadewright.core.baths import ChosenBottles
from shadewright.core.colour import Lab, ciede2000
from shadewright.core.costing import Cost
from shadewright.core.mixing import Evidence, Mix, Palette, told_mixes
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.core.recipes import Correction, Wishes, correction
from shadewright.errors import ConflictError
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.correcting.off_shade import OffShade
from shadewright.workflows.correcting.too_small import Instead, TooSmall, too_small
from shadewright.workflows.shades.dye_prices import SKEIN_G, gram_prices, skein_cost
from shadewright.workflows.shades.find_wishes import AtShelf, at_shelf, palette_base
from shadewright.workflows.shades.palettes import gone_dyes, palette_or_refuse
from shadewright.workflows.shades.swatches import DyeDoses

PASSES = 1.0
"""CIEDE2000 that counts as come to shade. [1]"""
UNSEEN = 0.3
"""CIEDE2000 that leaving out a dye may cost before it is worth its trouble. [1]"""
_AS_RECKONED: Mapping[int, Instead] = MappingProxyType({})


@dataclass(frozen=True, kw_only=True)
class Addition:
    """One dye to add: the whole of it, and what goes in first, out of bottles.

    ``small`` says that this is too small to measure; ``moved`` is how far from its
    place the lot would end without this dye, in CIEDE2000.
    """

    dye_id: int
    dye_name: str
    whole_percent: float
    first_percent: float
    first: PlannedDose
    small: TooSmall | None = None
    moved: float = 0.0

    @property
    def may_be_least(self) -> bool:
        """Whether the least that can be measured is no more than it needs in all."""
        return self.small is not None and self.small.least_percent <= self.whole_percent


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

    ``first`` are the additions that go in before looking again, as a bath keeps them;
    ``left_out`` are dyes that were too little to be worth measuring.
    """

    off: OffShade
    found: Correction
    additions: tuple[Addition, ...]
    after: Foretold
    left_out: tuple[str, ...] = ()

    @property
    def first(self) -> DyeDoses:
        """What goes in first, by the number of the dye, in % on weight of fibre."""
        return tuple((each.dye_id, each.first_percent) for each in self.additions)


def corrected(
    off: OffShade, *, instead: Mapping[int, Instead] = _AS_RECKONED
) -> Corrected:
    """Return what to add to a lot; refused without an aim, or without a palette.

    ``instead`` says of dyes that are too small to measure what is done.
    """
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
    every = additions_of(off, found, palette)
    done = {
        each.dye_id: instead[each.dye_id] for each in every if each.dye_id in instead
    }
    left = [each for each in every if done.get(each.dye_id) is Instead.LEAVE]
    found = _without(off, found, palette, [each.dye_name for each in left])
    at = at_shelf(palette, base_id=off.base_id, batch_g=off.fibre_g)
    return Corrected(
        off=off,
        found=found,
        additions=tuple(
            _at_least(each, at) if each.dye_id in done else each
            for each in every
            if each not in left
        ),
        after=after_of(off, found, palette),
        left_out=tuple(each.dye_name for each in left),
    )


def _at_least(each: Addition, at: AtShelf) -> Addition:
    """Return an addition of which the least goes in that can be measured."""
    if each.small is None or not each.may_be_least:
        return each
    least = each.small.least_percent
    first = at.dose(each.dye_name, least)
    return replace(each, first_percent=least, first=first, small=None)


def _without(
    off: OffShade, found: Correction, palette: Palette, dyes: Sequence[str]
) -> Correction:
    """Return a correction without some dyes, and the colour that it comes to."""
    if not dyes:
        return found
    rest = replace(
        found, additions=tuple(each for each in found.additions if each[0] not in dyes)
    )
    whole, less = foretold_mixes([_mix(off, found), _mix(off, rest)], palette)
    rows = zip(found.lab_after, less.lab, whole.lab, strict=True)
    lab = Lab(*(at + to - of for at, to, of in rows))
    de_after = found.de_before if off.aim is None else ciede2000(off.aim.lab, lab)
    return replace(rest, lab_after=lab, de_after=de_after)


def after_of(off: OffShade, found: Correction, palette: Palette) -> Foretold:
    """Return the colour after all additions; how far off is that of a fresh bath."""
    (told,) = foretold_mixes([_mix(off, found)], palette)
    return replace(told, lab=found.lab_after)


def _mix(off: OffShade, found: Correction, *, but: str = "") -> Mix:
    """Return all dye of a lot after a correction, of one dye only what is in."""
    doses = dict(off.doses)
    for dye, depth in found.additions:
        if dye != but:
            doses[dye] = doses.get(dye, 0.0) + depth
    return Mix(base=off.base_name, doses=tuple(doses.items()))


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
    every = (
        _addition(dye, whole, first, at, place)
        for place, ((dye, whole), (_dye, first)) in enumerate(
            zip(found.additions, found.first, strict=True), start=1
        )
    )
    return tuple(
        replace(each, moved=_moved(each.dye_name, off, found, palette))
        if each.small
        else each
        for each in every
    )


def _moved(dye: str, off: OffShade, found: Correction, palette: Palette) -> float:
    mixes = [_mix(off, found), _mix(off, found, but=dye)]
    whole, less = foretold_mixes(mixes, palette)
    return ciede2000(whole.lab, less.lab)


def whole_at_once(found: Correction) -> Correction:
    """Return a correction whose additions all go in at once, as an overdye does."""
    return replace(found, share=1.0)


def _addition(
    dye: str, whole: float, first: float, at: AtShelf, place: int
) -> Addition:
    dose = at.dose(dye, first, place=place)
    return Addition(
        dye_id=at.dyes[dye].pk,
        dye_name=dye,
        whole_percent=whole,
        first_percent=first,
        first=dose,
        small=too_small(dose, at),
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
