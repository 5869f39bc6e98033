"""What takes a moment to reckon: what would help most, and what is out of reach."""

from collections.abc import Sequence

from shadewright.core.mixing import Advised
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.palettes.pages import Closer, HelpRow, MissedRow
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.palette_pages import (
    Missed,
    PaletteOnBase,
    advised_on,
    missed_on,
)
from shadewright.workflows.shades.plan_pages import swatches_waiting
from shadewright.workflows.shades.wanted import Wanted

_LITTLE = 0.9
"""Where the error falls by less than a tenth there is little to learn (our choice)."""


def closer(found: PaletteOnBase, wanted: Sequence[Wanted]) -> Closer:
    """Return what would help most on a base, and what is wanted beyond its reach."""
    advised = advised_on(found)
    return Closer(
        helps=tuple(map(_help, advised)),
        waiting=swatches_waiting(found.base.id),
        is_little=all(each.then_90 > _LITTLE * each.now_90 for each in advised),
        missed=tuple(map(_missed, missed_on(found, wanted))),
        is_asked=bool(wanted),
    )


def _help(advised: Advised) -> HelpRow:
    return HelpRow(
        doses=mix_words(advised.doses),
        now=f"{advised.now_90:.1f}",
        then=f"{advised.then_90:.1f}",
    )


def _missed(found: Missed) -> MissedRow:
    return MissedRow(
        name=found.wanted.name,
        far=f"ΔE{NO_BREAK}{found.distance:.1f} outside: the nearest is {found.words}",
        nearest=mix_words(found.doses),
    )
