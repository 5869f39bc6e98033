"""Doses that went differently: what that does to the depth, and what can be done."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import BathNow, DoseNow, StepNow

TOLERATED = 0.02  # common practice: seen by nobody, even in a neutral grey

OVER = (
    "Dye cannot be taken out again. The hue holds if the doses still to come grow "
    "by the same share; with yarn added in that share, too, the depth holds as well."
)
OVER_LAST = (
    "Dye cannot be taken out again, and the other doses are in: the hue leans to this "
    "dye. It holds if the others get as much more of their whole; else leave it so, "
    "and judge the lot dry."
)
OVER_ALONE = (
    "Dye cannot be taken out again: the yarn comes out deeper, unless yarn is added "
    "in the same share before the heat is on."
)
UNDER = (
    "What is missing can still go in: lower the heat, lift the yarn, give it well "
    "diluted and stir."
)
UNSAID = (
    "Give no more of it yet. What its bottle lost is what went in: read the level, or "
    "weigh it. Then take the line back and type the amount."
)


@dataclass(frozen=True, kw_only=True)
class Deviation:
    """A dose that is over or under: the sentence, the advice, what is missing.

    ``factor`` is what the other doses grow by to hold the hue; None where none of
    them is still to come, or where nothing is over.
    """

    step: str
    title: str
    words: str
    advice: str
    missing_ml: float | None
    factor: float | None = None


def deviations(bath: BathNow) -> tuple[Deviation, ...]:
    """Return the doses that differ from the plan by more than is tolerated."""
    return tuple(_deviations(bath))


def _deviations(bath: BathNow) -> Iterator[Deviation]:
    for each in bath.steps:
        dose = each.dose
        if dose is None or not each.is_done:
            continue
        if any(tick.act == BathAct.DOSED and tick.value is None for tick in each.ticks):
            yield _unsaid(each, dose)
            continue
        share = (dose.given_g - dose.dye_g) / whole_dose_g(bath, dose)
        if abs(share) > TOLERATED:
            yield _deviation(bath, each, dose, share)


def whole_dose_g(bath: BathNow, dose: DoseNow) -> float:
    """Return all that is planned of a dye, from however many bottles."""
    doses = (each.dose for each in bath.steps)
    return sum(one.dye_g for one in doses if one and one.dye_id == dose.dye_id)


def _factor(bath: BathNow, dose: DoseNow, share: float) -> float | None:
    """Return what the rest is rescaled by; none of it may be of the same dye."""
    rest = {x.dose.dye_id for x in bath.steps if x.dose is not None and not x.is_done}
    return 1 + share if share > 0 and rest and dose.dye_id not in rest else None


def _over(bath: BathNow, dose: DoseNow) -> str:
    """Return what can be done about too much of a dye, by what else goes in."""
    doses = [(x.is_done, x.dose) for x in bath.steps]
    others = [done for done, one in doses if one and one.dye_id != dose.dye_id]
    if not others:
        return OVER_ALONE
    return OVER_LAST if all(others) else OVER


def _deviation(bath: BathNow, each: StepNow, dose: DoseNow, share: float) -> Deviation:
    missing_ml = None
    if share < 0 and dose.strength_percent:
        missing_ml = 100 * (dose.dye_g - dose.given_g) / dose.strength_percent
    return Deviation(
        step=each.step.key,
        title=dose.dye_name,
        words=f"{dose.dye_name}: {_words(dose.depth_percent, share)}",
        advice=_over(bath, dose) if share > 0 else UNDER,
        missing_ml=missing_ml,
        factor=_factor(bath, dose, share),
    )


def _unsaid(each: StepNow, dose: DoseNow) -> Deviation:
    """Return what is known of a dose that is in while nobody can say how much."""
    planned = amount_text(dose.depth_percent, "%")
    return Deviation(
        step=each.step.key,
        title=dose.dye_name,
        words=f"{dose.dye_name}: how much went in is not known; {planned} was planned.",
        advice=UNSAID,
        missing_ml=None,
    )


def _words(planned_percent: float, share: float) -> str:
    """Say how deep a dye is now, as a share of its whole dose is over or under."""
    planned = amount_text(planned_percent, "%")
    if share <= -1:
        return f"left out; {planned} was planned."
    given = amount_text(planned_percent * (1 + share), "%")
    how = "deeper" if share > 0 else "lighter"
    much = f"{number_text(100 * abs(share), digits=2)}{NO_BREAK}%"
    return f"{given} instead of {planned}, {much} {how}."
