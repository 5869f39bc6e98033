"""A dose too small to measure: the least that can be, and the stock that would do."""

from dataclasses import dataclass
from enum import StrEnum

from shadewright.core.baths.doses import LEAST_DOSE_ML
from shadewright.core.quantities import is_more
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.shades.find_wishes import AtShelf
from shadewright.workflows.shades.measurable import TOO_MUCH_ROUNDED, step_of
from shadewright.workflows.shades.plan_stocks import (
    Lined,
    PlannedDraw,
    StockFirst,
    WantedDose,
    lined_up,
)


class Instead(StrEnum):
    """What is done with a dose that is too small."""

    LEAST = "least"
    LEAVE = "leave"


@dataclass(frozen=True, kw_only=True)
class TooSmall:
    """A dose that is less than its tool shows, rounded by no more than a tenth.

    ``least_percent`` is the least that can be drawn of the same bottle; ``draw`` what
    is drawn of a stock that suits, ``first`` how that is had; both None where no stock
    would do.
    """

    volume_ml: float
    least_ml: float
    least_percent: float
    code: str
    tool: str
    draw: PlannedDraw | None
    first: StockFirst | None


def too_small(dose: PlannedDose, at: AtShelf) -> TooSmall | None:
    """Return what to do about a dose of stock; None where it can be measured."""
    if dose.missing_g or not dose.shares:
        return None
    volume_ml = sum(share.volume_ml for share in dose.shares)
    least_ml = _least_ml(dose, volume_ml)
    if not is_more(least_ml, than=volume_ml):
        return None
    stock, tool = dose.shares[0], dose.dosed.tool
    lined = _weaker(dose, at)
    return TooSmall(
        volume_ml=volume_ml,
        least_ml=least_ml,
        least_percent=least_ml * stock.strength_percent / at.bath.fibre_g,
        code=stock.code,
        tool="" if tool is None else tool.name,
        draw=next((each for each in lined.draws if each.is_suiting), None),
        first=lined.first[-1] if lined.first else None,
    )


def _least_ml(dose: PlannedDose, volume_ml: float) -> float:
    """Return the least that its tool measures; a usual least where none is known."""
    tool = dose.dosed.tool
    step = 0.0 if tool is None else step_of(tool)
    if tool is None or not step:
        return LEAST_DOSE_ML
    least = step / (2.0 * TOO_MUCH_ROUNDED)
    if tool.balance is None:
        return least
    return least * volume_ml / sum(dose.dosed.shares_g)


def _weaker(dose: PlannedDose, at: AtShelf) -> Lined:
    wanted = WantedDose(
        swatch=1,
        dye_id=dose.dye_id,
        dye_name=dose.dye_name,
        depth_percent=dose.depth_percent,
        dye_g=dose.dye_g,
    )
    return lined_up(
        [wanted],
        liquor_ml=at.liquor_ml,
        bottles={dose.dye_id: at.offer.candidates(dose.dye_id)},
        tools=at.tools,
    )
