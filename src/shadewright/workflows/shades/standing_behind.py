"""Which swatches and lots stand behind a prediction, the nearest first."""

from collections.abc import Mapping
from datetime import datetime
from functools import lru_cache

from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Doses, SwatchNow, swatches_now

_OTHER_BASE = 0.5
"""What a swatch on another yarn counts for beside one on this (our choice)."""


def behind(doses: Doses, base: str) -> tuple[SwatchNow, ...]:
    """Return the swatches that a prediction rests on, the nearest first.

    They are those of the palette that share a dye with it, and bare yarn of its base.
    """
    holds = palette_now()
    if holds is None:
        return ()
    return behind_among(_used(holds.fit_id, holds.at, holds.used), doses, base)


def behind_among(
    used: tuple[SwatchNow, ...], doses: Doses, base: str
) -> tuple[SwatchNow, ...]:
    """Return those of some swatches that a mix rests on, the nearest first."""
    wanted = dict(doses)
    near = {each.id: _nearness(each, wanted, base) for each in used}
    found = [
        each
        for each in used
        if near[each.id] > 0.0 or (not each.doses and each.base_name == base)
    ]
    return tuple(sorted(found, key=lambda each: (-near[each.id], each.id)))


def _nearness(swatch: SwatchNow, wanted: Mapping[str, float], base: str) -> float:
    """Return how much of two mixes is common: 1 for the same, 0 for no dye shared.

    Of each dye the lesser depth over the greater, summed: Σ min / Σ max.
    """
    own = dict(swatch.doses)
    pairs = [(own.get(x, 0.0), wanted.get(x, 0.0)) for x in own.keys() | wanted.keys()]
    whole = sum(max(pair) for pair in pairs)
    shared = sum(min(pair) for pair in pairs) / whole if whole else 0.0
    return shared if swatch.base_name == base else _OTHER_BASE * shared


@lru_cache(maxsize=2)
def _used(_fit_id: int, _at: datetime, used: tuple[int, ...]) -> tuple[SwatchNow, ...]:
    """Return the swatches of a fit, fetched once: a slider asks many times a second."""
    return tuple(each for each in swatches_now() if each.id in used)
