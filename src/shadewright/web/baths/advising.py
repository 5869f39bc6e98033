"""The advice on a bath's plan: a sentence for each dye, and one tap to follow it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.baths.levers.pulled import (
    DoseAdvice,
    Lever,
    Proposal,
    scales_to_check,
)
from shadewright.core.baths.levers.saying import share_words
from shadewright.core.quantities import number_text
from shadewright.web.baths.dosing import WEIGHT
from shadewright.web.levers.addresses import (
    making_address,
    thinning_address,
    tool_address,
)
from shadewright.web.pages import Link
from shadewright.web.shelf.tasks import bottle_address
from shadewright.workflows.advice import AdvisedDose, bath_advice
from shadewright.workflows.baths import BathPlan

_ASKED_OF_A_PLAN = (
    "version",
    "base",
    "mill_lot",
    "fibre_g",
    "skeins",
    "is_swatch",
    "purpose",
    "pot",
    "source",
    "water",
    "liquor_ratio",
    "yarn_scale",
    "dosing",
    "wet_yarn_g",
    "dyed_on",
    "notes",
    "instead_of",
)
_TOOL = "tool-"


@dataclass(frozen=True, kw_only=True)
class AdviceShown:
    """How sure one dye is, how sure it could be, what to do, and where to do it."""

    dye: str
    now: str
    best: str
    sentence: str
    key: Link | None


def advice_panel(plan: BathPlan, typed: Mapping[str, Any]) -> tuple[AdviceShown, ...]:
    """Return the advice for a plan; ``typed`` is what its form was sent."""
    return tuple(
        _shown(advised, place, typed)
        for place, advised in enumerate(bath_advice(plan), start=1)
    )


def _shown(advised: AdvisedDose, place: int, typed: Mapping[str, Any]) -> AdviceShown:
    advice = advised.advice
    return AdviceShown(
        dye=advised.dye_name,
        now="" if advice is None else share_words(advice.now),
        best="" if advice is None else share_words(advice.best),
        sentence=advised.sentence,
        key=None if advice is None else _key(advised, advice, place, typed),
    )


def _key(
    advised: AdvisedDose, advice: DoseAdvice, place: int, typed: Mapping[str, Any]
) -> Link | None:
    """Return where the strongest lever is pulled."""
    first = advice.strongest
    if first is None:
        return None
    stock = first.way.stock
    if first.lever is Lever.MAKE and not stock.code:
        address = making_address(
            advised.dye_id,
            strength_percent=stock.strength.value,
            volume_ml=stock.usable_ml,
        )
        return Link(words="Make this stock", address=address)
    if first.lever is Lever.MAKE:
        return Link(words=f"Thin bottle {stock.code}", address=thinning_address(stock))
    if first.lever is Lever.BOTTLE:
        address = bottle_address(stock.code)
        return Link(words=f"See bottle {stock.code}", address=address)
    if first.lever is Lever.CHECK:
        scale = scales_to_check(advice, first)[0]
        address = tool_address(scale.key)
        return Link(words=f"Check the {scale.name}", address=address)
    return Link(words="Plan it so", address=_plan_with(typed, first, place))


def _plan_with(typed: Mapping[str, Any], proposal: Proposal, place: int) -> str:
    """Return the plan as it was typed, with one thing changed."""
    asked = {
        name: str(value)
        for name, value in typed.items()
        if value and (name in _ASKED_OF_A_PLAN or name.startswith(_TOOL))
    }
    asked |= _changed(proposal, place)
    return f"{reverse('plan-bath')}?{urlencode(asked)}"


def _changed(proposal: Proposal, place: int) -> dict[str, str]:
    tool = proposal.way.device.key.rpartition(" ")[2]
    yarn = proposal.wanted.yarn_scale
    if proposal.lever is Lever.YARN and yarn is not None:
        return {"yarn_scale": yarn.key.rpartition(" ")[2]}
    if proposal.lever is Lever.BATCH:
        return {"fibre_g": number_text(proposal.wanted.yarn_g, digits=6)}
    by_weight = {"dosing": WEIGHT} if proposal.lever is Lever.WEIGHT else {}
    return {**by_weight, f"{_TOOL}{place}": tool}
