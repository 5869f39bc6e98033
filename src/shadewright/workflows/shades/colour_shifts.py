"""What a dose that went differently does to the colour, as the palette foretells it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences import ciede2000, difference_words
from shadewright.core.mixing import Mix, told_mixes
from shadewright.workflows.bath_shapes import BathNow, DoseNow, StepNow
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.predictions import is_known


@dataclass(frozen=True, kw_only=True)
class ColourShift:
    """How far a bath comes from its plan, in words and in CIEDE2000.

    ``rest`` is the same with all doses still to come rescaled; None without any.
    """

    words: str
    difference: float
    rest: "ColourShift | None" = None


def colour_shift(bath: BathNow, *, factor: float) -> ColourShift | None:
    """Return what the doses so far do to the colour, None where it is not known.

    ``factor`` is what the doses still to come would be rescaled by.
    """
    planned = _depths(bath, lambda _each, dose: dose.dye_g / dose.factor)
    now = _depths(bath, _going_in)
    more = _depths(
        bath,
        lambda each, dose: _going_in(each, dose) * (1.0 if _is_in(each) else factor),
    )
    holds = palette_now()
    every = (planned, now, more)
    if holds is None or not all(is_known(bath.base_name, x, holds) for x in every):
        return None
    mixes = [Mix(base=bath.base_name, doses=tuple(each.items())) for each in every]
    told = told_mixes(mixes, palette=holds.palette)
    standard, sample, other = (Lab(*map(float, lab)) for lab in told.lab)
    rest = None if more == now else _shift(standard, other)
    return _shift(standard, sample, rest=rest)


def _shift(
    standard: Lab, sample: Lab, *, rest: ColourShift | None = None
) -> ColourShift:
    return ColourShift(
        words=difference_words(standard, sample),
        difference=ciede2000(standard, sample),
        rest=rest,
    )


def _going_in(each: StepNow, dose: DoseNow) -> float:
    """Return the dye of a dose that is in or will be, in grams."""
    return dose.given_g if _is_in(each) else dose.dye_g


def _is_in(each: StepNow) -> bool:
    return each.is_done or bool(each.parts)


def _depths(
    bath: BathNow, grams: Callable[[StepNow, DoseNow], float]
) -> Mapping[str, float]:
    """Return the depth of each dye, its doses from all bottles together, in %."""
    found: dict[str, float] = {}
    for each in bath.steps:
        dose = each.dose
        if dose is not None and (depth := 100 * grams(each, dose) / bath.fibre_g) > 0:
            found[dose.dye_name] = found.get(dose.dye_name, 0.0) + depth
    return found
