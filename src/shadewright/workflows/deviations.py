"""Doses that went differently: what that does to the depth, and what can be done."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.baths import depth_percent
from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.workflows.bath_shapes import BathNow, DoseNow, StepNow

TOLERATED = 0.02  # common practice: seen by nobody, even in a neutral grey

OVER = (
    "Dye cannot be taken out again. The hue holds if the doses still to come grow "
    "by the same share; or add yarn in that share before the heat is on."
)
UNDER = (
    "What is missing can still go in: lower the heat, lift the yarn, give it well "
    "diluted and stir."
)


@dataclass(frozen=True, kw_only=True)
class Deviation:
    """A dose that is over or under: the sentence, the advice, what is missing."""

    step: str
    title: str
    words: str
    advice: str
    missing_ml: float | None


def deviations(bath: BathNow) -> tuple[Deviation, ...]:
    """Return the doses that differ from the plan by more than is tolerated."""
    return tuple(_deviations(bath))


def _deviations(bath: BathNow) -> Iterator[Deviation]:
    for each in bath.steps:
        dose = each.dose
        if dose is None or not each.is_done:
            continue
        share = dose.given_g / dose.dye_g - 1
        if abs(share) > TOLERATED:
            yield _deviation(bath, each, dose, share)


def _deviation(bath: BathNow, each: StepNow, dose: DoseNow, share: float) -> Deviation:
    given, planned = (_depth(bath, each) for each in (dose.given_g, dose.dye_g))
    how = "deeper" if share > 0 else "lighter"
    words = (
        f"{dose.dye_name}: {amount_text(given, '%')} instead of "
        f"{amount_text(planned, '%')}, "
        f"{number_text(100 * abs(share), digits=2)}{NO_BREAK}% {how}."
    )
    missing_ml = None
    if share < 0 and dose.strength_percent:
        missing_ml = 100 * (dose.dye_g - dose.given_g) / dose.strength_percent
    return Deviation(
        step=each.step.key,
        title=dose.dye_name,
        words=words,
        advice=OVER if share > 0 else UNDER,
        missing_ml=missing_ml,
    )


def _depth(bath: BathNow, dye_g: float) -> float:
    if not dye_g:
        return 0.0
    return depth_percent(dye_mass_g=dye_g, fibre_mass_g=bath.fibre_g)
