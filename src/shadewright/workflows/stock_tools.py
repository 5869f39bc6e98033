"""What a stock is measured with: what can be chosen, and what usually is."""

from shadewright.core.solutions.filling import filled_mass_g
from shadewright.core.solutions.making import StockPlan
from shadewright.core.solutions.weighing import larger_batch_advice
from shadewright.records import reads
from shadewright.workflows.readings import read_mass
from shadewright.workflows.stock_spreads import MadeWith, StockSpread, made_spread
from shadewright.workflows.stocks import PlannedStock
from shadewright.workflows.tools import ToolNow, tool_now, tools_now
from shadewright.workflows.usual_tools import usual_tools


def scales() -> tuple[ToolNow, ...]:
    """Return the scales in use."""
    return tuple(tool for tool in tools_now() if tool.balance is not None)


def ware() -> tuple[ToolNow, ...]:
    """Return what holds a volume, of what is in use."""
    return tuple(tool for tool in tools_now() if tool.ware is not None)


def usual_for_stocks() -> MadeWith:
    """Return the studio's usual tools; else those of the last stock that was made."""
    usual = usual_tools()
    last = reads.last_measured_bottle()
    return MadeWith(
        scale=usual.powder_scale
        or _still_used(None if last is None else last.scale_id),
        ware=usual.fill_tool or _still_used(None if last is None else last.ware_id),
    )


def fill_to_g(plan: StockPlan) -> float:
    """Return what the finished stock weighs, if it goes as planned."""
    return filled_mass_g(volume_ml=plan.final_volume_ml, powder_g=plan.powder_g)


def planned_spread(stock: PlannedStock, made_with: MadeWith) -> StockSpread:
    """Return how sure a stock will be, if it goes as planned."""
    return made_spread(
        powder_g=stock.plan.powder_g,
        final_ml=stock.plan.final_volume_ml,
        powder_strength_percent=stock.plan.powder_strength_percent,
        made_with=made_with,
        deed="plan",
    )


def weighing_advice(stock: PlannedStock, made_with: MadeWith) -> str:
    """Return what a larger batch would do for the weighing, if the jar allows it."""
    plan = stock.plan
    if stock.jar_left_g is not None and stock.jar_left_g < 2.0 * plan.powder_g:
        return ""
    powder = read_mass(made_with.scale, plan.powder_g, role="powder", deed="plan")
    return larger_batch_advice(powder=powder, volume_ml=plan.final_volume_ml)


def _still_used(tool_id: int | None) -> ToolNow | None:
    tool = None if tool_id is None else tool_now(tool_id)
    return None if tool is None or tool.is_retired else tool
