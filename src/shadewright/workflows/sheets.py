"""Making a stock on paper: the mixing sheet of one that is planned or under way."""

from shadewright.paper import MixingSheet, mixing_sheet_pdf
from shadewright.workflows.labels import spread_words
from shadewright.workflows.stamps import today
from shadewright.workflows.stock_spreads import NOTHING_SAID, MadeWith
from shadewright.workflows.stock_tools import fill_to_g, planned_spread
from shadewright.workflows.stocks import PlannedStock
from shadewright.workflows.studio import studio


def mixing_sheet(
    stock: PlannedStock, *, made_with: MadeWith = NOTHING_SAID, paper: str = "a4"
) -> bytes:
    """Return the sheet of a stock as a PDF, with jar and tools where they are known."""
    here = studio()
    sheet = MixingSheet(
        dye_name=stock.dye_name,
        plan=stock.plan,
        jar=stock.jar_code,
        scale="" if made_with.scale is None else made_with.scale.name,
        ware="" if made_with.ware is None else made_with.ware.name,
        filled_g=fill_to_g(stock.plan) if made_with.is_by_weight else None,
        spread_words=spread_words(planned_spread(stock, made_with).strength),
        hazard_words=stock.hazard_words,
        is_demo=here is not None and here.is_demo,
    )
    return mixing_sheet_pdf([sheet], paper=paper, printed_on=today())
