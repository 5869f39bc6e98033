"""Which deeper colourways a lot could become: overdyed as a normal, friendly path."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.colour import Lab
from shadewright.core.mixing import Mix, Palette
from shadewright.core.recipes import Correction, Wishes, correction
from shadewright.workflows.correcting.correcting import (
    Addition,
    Foretold,
    additions_of,
    after_of,
    foretold_mixes,
    whole_at_once,
)
from shadewright.workflows.correcting.off_shade import OffShade
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.recipes import recipes
from shadewright.workflows.shades.find_wishes import palette_base
from shadewright.workflows.shades.palettes import gone_dyes, palette_or_refuse
from shadewright.workflows.shades.swatches import Doses, DyeDoses

NEAR_ENOUGH = 3.0
"""CIEDE2000 within which a lot may be called a colourway: a lot of its own. [1]"""
_DEEPER, MOST_SISTERS = 1.0, 6
MOST_MORE = 3.0
"""Dye that is added at most, in % on weight of fibre (common practice). [%]"""


@dataclass(frozen=True, kw_only=True)
class Sister:
    """A colourway that a lot can become by adding dye, and how near it comes."""

    recipe_id: int
    name: str
    foretold: Foretold
    after: Foretold
    found: Correction
    additions: tuple[Addition, ...]

    @property
    def doses(self) -> DyeDoses:
        """What goes in, by the number of the dye, in % on weight of fibre."""
        return tuple((each.dye_id, each.first_percent) for each in self.additions)


def sisters(off: OffShade) -> tuple[Sister, ...]:
    """Return the deeper colourways that a lot can become, the nearest first."""
    palette = palette_or_refuse().palette
    base = palette_base(palette, off.base_id)
    candidates = list(_candidates(off, palette))
    if not candidates:
        return ()
    mixes = [Mix(base=base, doses=doses) for _version, doses in candidates]
    found = [
        (version, told, _towards(off, palette, base, told.lab))
        for (version, _doses), told in zip(
            candidates, foretold_mixes(mixes, palette), strict=True
        )
        if told.lab.L < off.measured.lab.L - _DEEPER
    ]
    near = [each for each in found if _is_near(each[2])]
    near.sort(key=lambda each: each[2].de_after)
    return tuple(
        Sister(
            recipe_id=version.recipe_id,
            name=version.recipe_name,
            foretold=told,
            after=after_of(off, answer, palette),
            found=answer,
            additions=additions_of(off, answer, palette),
        )
        for version, told, answer in near[:MOST_SISTERS]
    )


def _is_near(found: Correction) -> bool:
    """Whether it comes near, and with no more dye than a bath takes."""
    more = sum(depth for _dye, depth in found.additions)
    return found.de_after <= NEAR_ENOUGH and more <= MOST_MORE


def _candidates(off: OffShade, palette: Palette) -> Iterator[tuple[Version, Doses]]:
    # Every other colourway whose dyes the palette knows, in its newest version.
    known = set(palette.names.dyes)
    for each in recipes():
        version = each.newest
        doses = tuple(
            (dose.dye_name, dose.depth_percent)
            for dose in version.text.doses
            if dose.depth_percent
        )
        if each.id == off.recipe_id or not version.is_complete or not doses:
            continue
        if all(dye in known for dye, _depth in doses):
            yield version, doses


def _towards(off: OffShade, palette: Palette, base: str, target: Lab) -> Correction:
    found = correction(
        palette,
        base=base,
        doses=off.doses,
        measured=off.measured.lab,
        target=target,
        wishes=Wishes(unwanted=gone_dyes(palette)),
        tolerance=NEAR_ENOUGH,
    )
    return whole_at_once(found)
