"""A plan made into what the page shows."""

from collections.abc import Iterator
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.baths import BottleShare
from shadewright.core.baths.rounds import ACID_CARE, HelperWanted
from shadewright.core.quantities import amount_text, number_text, rounded_to_step
from shadewright.core.quantities.writing import beside_text
from shadewright.web.acidity.sour import sour_plan
from shadewright.web.baths.dosing import tool_choice
from shadewright.web.baths.heating import shown_heat
from shadewright.web.baths.pages import DoseShown, Said, ShareShown, ShownPlan
from shadewright.web.baths.words import moment_words
from shadewright.web.depths import sureness
from shadewright.web.parts import Caution, measured
from shadewright.web.shelf.tasks import bottle_address
from shadewright.workflows.baths import BathPlan, PlannedDose
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.tools_at_hand import AtHand

_STOCK_VOLUMES_ML = (100.0, 250.0, 500.0, 1000.0)
_STOCK_PERCENT = 1.0
_TO_SPARE = 1.1


def shown_plan(plan: BathPlan) -> ShownPlan:
    """Return a plan as the page shows it."""
    return ShownPlan(
        doses=tuple(
            _dose(dose, place, plan.tools)
            for place, dose in enumerate(plan.doses, start=1)
        ),
        has_tools=bool(plan.tools.every),
        water=measured(plan.water.fresh_water_ml / 1000, "l"),
        sour=sour_plan(plan),
        facts=tuple(_facts(plan)),
        heat=shown_heat(plan.heating.heat, top_caution=plan.heating.caution),
        troubles=plan.troubles,
        notes=plan.notes,
        cautions=tuple(_cautions(plan)),
    )


def stock_address(dye_id: int, wanted_g: float) -> str:
    """Return the page that makes a stock with enough of a dye, filled in."""
    wanted_ml = 100 * wanted_g * _TO_SPARE / _STOCK_PERCENT
    fit = (each for each in _STOCK_VOLUMES_ML if each >= wanted_ml)
    asked = {
        "dye": dye_id,
        "strength_percent": number_text(_STOCK_PERCENT, digits=4),
        "volume_ml": number_text(next(fit, _STOCK_VOLUMES_ML[-1]), digits=4),
    }
    return f"{reverse('plan-stock')}?{urlencode(asked)}"


def helper_amount(helper: HelperWanted) -> str:
    """Return how much of a helper goes in, and when."""
    words = moment_words(helper.moment)
    if helper.at_c is not None:
        words += f", at {amount_text(helper.at_c, '°C')}"
    return f"{amount_text(helper.amount, helper.unit)} {words}"


def _dose(dose: PlannedDose, place: int, tools: AtHand) -> DoseShown:
    is_short = bool(dose.missing_g)
    return DoseShown(
        dye=dose.dye_name,
        sureness=sureness(dose.dosed.how_sure, dose.depth_percent),
        tool=tool_choice(dose, place, tools),
        dye_g=amount_text(dose.dye_g, "g"),
        shares=tuple(
            shown_share(
                share, share_g, is_by_weight=tools.is_by_weight, tool=dose.dosed.tool
            )
            for share, share_g in zip(dose.shares, dose.dosed.shares_g, strict=True)
        ),
        missing=amount_text(dose.missing_g, "g") if is_short else "",
        stock_address=stock_address(dose.dye_id, dose.missing_g) if is_short else "",
        advice="" if dose.dosed.tool else dose.advice,
    )


def shown_share(
    share: BottleShare, share_g: float, *, is_by_weight: bool, tool: ToolNow | None
) -> ShareShown:
    """Return a share in ml with its g beside it, or the other way round.

    Grams to be weighed are those that the scale can show.
    """
    step_g = tool.step_g if tool and is_by_weight else 0.0
    grams = (
        amount_text(rounded_to_step(share_g, step=step_g), "g")
        if step_g
        else beside_text(share_g)
    )
    said = [amount_text(share.volume_ml, "ml"), grams]
    amount, beside = reversed(said) if is_by_weight else said
    return ShareShown(
        code=share.code,
        address=bottle_address(share.code),
        amount=amount,
        beside=beside,
    )


def _facts(plan: BathPlan) -> Iterator[Said]:
    ratio = number_text(plan.liquor_ratio, digits=4)
    liquor = amount_text(plan.liquor_ml / 1000, "l")
    yield Said(term="Liquor", words=f"{liquor} in all, 1:{ratio}")
    if plan.water.stock_ml:
        yield Said(term="Stock in it", words=amount_text(plan.water.stock_ml, "ml"))
    if plan.water.wet_yarn_ml:
        wet = amount_text(plan.water.wet_yarn_ml, "ml")
        yield Said(term="Water in the yarn", words=wet)
    for helper in plan.helpers:
        yield Said(term=helper.name, words=helper_amount(helper))


def _cautions(plan: BathPlan) -> Iterator[Caution]:
    if any(helper.is_acid for helper in plan.helpers):
        yield Caution(title="Acid", text=ACID_CARE)
    for sentence in plan.cautions:
        yield Caution(title="Before it is dyed", text=sentence)
