"""Making a stock on paper: the mixing sheet of one that is planned or under way."""

from shadewright.paper import MixingSheet, mixing_sheet_pdf
from shadewright.workflows.stamps import today
from shadewright.workflows.stocks import PlannedStock
from shadewright.workflows.studio import studio


def mixing_sheet(stock: PlannedStock, *, paper: str = "a4") -> bytes:
    """Return the sheet of a stock as a PDF, with its jar if that is known."""
    here = studio()
    sheet = MixingSheet(
        dye_name=stock.dye_name,
        plan=stock.plan,
        jar=stock.jar_code,
        hazard_words=stock.hazard_words,
        is_demo=here is not None and here.is_demo,
    )
    return mixing_sheet_pdf([sheet], paper=paper, printed_on=today())
