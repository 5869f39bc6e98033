"""What stands behind a prediction, as pages show it.

Include it as ``{% include "evidence/_behind.html" with behind=row.behind only %}``.
"""

from dataclasses import dataclass

from django.urls import reverse

from shadewright.web.colours import ColourShown, colour_of_reading
from shadewright.web.evidence.words import rests_on
from shadewright.workflows.shades.standing_behind import behind
from shadewright.workflows.shades.swatches import Doses, SwatchNow

_MOST = 12
"""How many are named; what lies farther off has little to say (our choice)."""


@dataclass(frozen=True, kw_only=True)
class OneBehind:
    """A swatch or a lot that a prediction rests on."""

    label: str
    address: str
    base_name: str
    is_lot: bool
    colour: ColourShown | None


@dataclass(frozen=True, kw_only=True)
class BehindShown:
    """How many swatches and lots a prediction rests on, and the nearest of them."""

    words: str
    rows: tuple[OneBehind, ...]


def behind_shown(doses: Doses, base: str) -> BehindShown:
    """Return what the palette’s word on a mix rests on."""
    return shaped_behind(behind(doses, base))


def shaped_behind(found: tuple[SwatchNow, ...]) -> BehindShown:
    """Return some swatches, the nearest first, as a page shows them."""
    lots = sum(each.is_lot for each in found)
    words = f"Rests on {rests_on(len(found) - lots, lots)}, the nearest first"
    return BehindShown(words=words, rows=tuple(map(_one, found[:_MOST])))


def _one(swatch: SwatchNow) -> OneBehind:
    reading = swatch.reading
    return OneBehind(
        label=swatch.label,
        address=reverse("swatch", args=[swatch.id]),
        base_name=swatch.base_name,
        is_lot=swatch.is_lot,
        colour=None
        if reading is None
        else colour_of_reading(reading, name=swatch.label),
    )
