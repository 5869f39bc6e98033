"""What to add, row by row: depths, and what is drawn of which bottle."""

from collections.abc import Iterator

from shadewright.core.quantities import amount_text
from shadewright.web.baths.planning import shown_share, stock_address
from shadewright.web.corrections.pages import AdditionRow
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.correcting.correcting import Addition


def addition_rows(additions: tuple[Addition, ...]) -> tuple[AdditionRow, ...]:
    """Return additions as a page shows them."""
    return tuple(
        AdditionRow(
            name=each.dye_name,
            whole=amount_text(each.whole_percent, "%"),
            first=amount_text(each.first_percent, "%"),
            draws=tuple(_draws(each.first)),
            missing=amount_text(each.first.missing_g, "g")
            if each.first.missing_g
            else "",
            make=stock_address(each.dye_id, each.first.missing_g)
            if each.first.missing_g
            else "",
        )
        for each in additions
    )


def _draws(dose: PlannedDose) -> Iterator[str]:
    for share, share_g in zip(dose.shares, dose.dosed.shares_g, strict=True):
        shown = shown_share(share, share_g, is_by_weight=False, tool=dose.dosed.tool)
        yield f"{shown.amount} ({shown.beside}) from {shown.code}"
