"""What would narrow the doses of a bath that is planned; nothing is kept."""

from dataclasses import dataclass

from shadewright.core.baths.levers.proposals import dose_levers
from shadewright.core.baths.levers.pulled import DoseAdvice, Hand
from shadewright.core.baths.levers.saying import advice_sentence
from shadewright.core.baths.levers.ways import Stock, Wanted, Way
from shadewright.core.baths.liquor import ROOM_TO_SPARE
from shadewright.records import recipe_reads
from shadewright.workflows.bath_wishes import SWATCH_MOST_G
from shadewright.workflows.baths import BathPlan, PlannedDose
from shadewright.workflows.levers_at_hand import (
    device_of,
    devices_of,
    makeable,
    making_of,
    scale_of,
    stocks_of,
)
from shadewright.workflows.tools_at_hand import AtHand


@dataclass(frozen=True, kw_only=True)
class AdvisedDose:
    """A dye of a bath: its advice and the sentence; or why there is none.

    ``lacks`` says what no figure covers, because nobody knows it.
    """

    dye_id: int
    dye_name: str
    advice: DoseAdvice | None
    sentence: str
    lacks: tuple[str, ...] = ()


def bath_advice(plan: BathPlan) -> tuple[AdvisedDose, ...]:
    """Return for each dye of a plan how sure it is, and what would narrow it most."""
    most_g = _most_yarn_g(plan)
    return tuple(_advised(dose, plan, most_g) for dose in plan.doses)


def _advised(
    dose: PlannedDose, plan: BathPlan, most_yarn_g: float | None
) -> AdvisedDose:
    stocks = stocks_of(plan.offer, dose.dye_id)
    way = _way(dose, stocks)
    if way is None:
        return AdvisedDose(
            dye_id=dose.dye_id,
            dye_name=dose.dye_name,
            advice=None,
            sentence=_why_none(dose),
        )
    advice = dose_levers(
        wanted=_wanted(dose, plan),
        way=way,
        hand=_hand(dose, stocks, plan.tools, most_yarn_g),
    )
    return AdvisedDose(
        dye_id=dose.dye_id,
        dye_name=dose.dye_name,
        advice=advice,
        sentence=advice_sentence(advice=advice),
        lacks=dose.dosed.how_sure.lacks,
    )


def _hand(
    dose: PlannedDose,
    stocks: tuple[Stock, ...],
    tools: AtHand,
    most_yarn_g: float | None,
) -> Hand:
    devices = devices_of(tools.every)
    return Hand(
        stocks=stocks,
        makeable=makeable(
            dose.dye_id, making_of(tools), standing=stocks, devices=devices
        ),
        devices=devices,
        most_yarn_g=most_yarn_g,
    )


def _wanted(dose: PlannedDose, plan: BathPlan) -> Wanted:
    return Wanted(
        dye=dose.dye_name,
        depth_percent=dose.depth_percent,
        yarn_g=plan.wish.fibre_g,
        liquor_ml=plan.liquor_ml,
        yarn_scale=scale_of(plan.tools.yarn_scale),
    )


def _way(dose: PlannedDose, stocks: tuple[Stock, ...]) -> Way | None:
    """Return how a dose is planned; None where it is not one dose from one bottle."""
    device = device_of(dose.dosed.tool)
    codes = [share.code for share in dose.shares]
    stock = next((each for each in stocks if [each.code] == codes), None)
    if dose.missing_g or device is None or stock is None:
        return None
    return Way(stock=stock, device=device)


def _why_none(dose: PlannedDose) -> str:
    if not dose.shares:
        return "No bottle gives this dose, so a stock is to be made first."
    if dose.missing_g:
        return "The bottles do not hold the whole dose: make a stock first."
    if len(dose.shares) > 1:
        return "One bottle that holds the whole dose would be surer than two."
    return "Say what doses are measured in: then it can be said how sure they are."


def _most_yarn_g(plan: BathPlan) -> float | None:
    if plan.wish.is_swatch:
        return SWATCH_MOST_G
    if plan.wish.pot_id is None:
        return None
    pot = recipe_reads.pot_row(plan.wish.pot_id)
    return 1000.0 * pot.volume_l / ROOM_TO_SPARE / plan.liquor_ratio
