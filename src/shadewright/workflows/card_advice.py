"""The one line on a bath's card that says what would make its doses surer."""

from shadewright.core.baths.levers.saying import proposal_sentence
from shadewright.errors import StudioError
from shadewright.workflows.advice import AdvisedDose, bath_advice
from shadewright.workflows.bath_pages import BathNow, BathStatus
from shadewright.workflows.baths import plan_bath
from shadewright.workflows.planned_baths import wish_of


def card_advice(bath: BathNow) -> str:
    """Return the strongest lever of the least sure dose; empty once it has begun."""
    if bath.status is not BathStatus.PLANNED:
        return ""
    try:
        plan = plan_bath(wish_of(bath.number), instead_of=bath.number)
        advised = bath_advice(plan)
    except StudioError:
        return ""
    return _sentence(max(advised, key=_gain)) if advised else ""


def _gain(dose: AdvisedDose) -> float:
    first = None if dose.advice is None else dose.advice.strongest
    return (
        0.0 if dose.advice is None or first is None else dose.advice.now - first.after
    )


def _sentence(dose: AdvisedDose) -> str:
    first = None if dose.advice is None else dose.advice.strongest
    if dose.advice is None or first is None:
        return ""
    said = proposal_sentence(advice=dose.advice, proposal=first)
    return f"Surer {dose.dye_name}: {said[:1].lower()}{said[1:]}"
