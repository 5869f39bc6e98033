"""What to add, row by row: depths, and what is drawn of which bottle."""

from collections.abc import Callable, Iterator

from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.baths.planning import shown_share, stock_address
from shadewright.web.corrections.pages import AdditionRow, SmallShown
from shadewright.web.pages import Link
from shadewright.web.swatch_plans.showing import shown_first
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.correcting.correcting import UNSEEN, Addition
from shadewright.workflows.correcting.too_small import Instead, TooSmall

Way = Callable[[Instead, int], str]
"""The address of a page that does something else with a dye."""


def addition_rows(
    additions: tuple[Addition, ...], *, way: Way | None = None
) -> tuple[AdditionRow, ...]:
    """Return additions as a page shows them; ``way`` leads to doing otherwise."""
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
            small=None if each.small is None else _small(each, each.small, way),
        )
        for each in additions
    )


def _small(each: Addition, small: TooSmall, way: Way | None) -> SmallShown:
    least = amount_text(small.least_ml, "ml")
    what = f"for {small.tool}" if small.tool else "to measure"
    worth = "leave it out" if each.moved <= UNSEEN else "it is worth measuring"
    return SmallShown(
        words=f"Too little {what}: {least} is the least. Without it the lot "
        f"would end ΔE{NO_BREAK}{each.moved:.1f} from there: {worth}.",
        stock=_stock(small),
        ways=() if way is None else tuple(_ways(each, small, way)),
    )


def _stock(small: TooSmall) -> str:
    if small.draw is None:
        return ""
    drawn = f"Or draw {amount_text(small.draw.volume_ml, 'ml')} of {small.draw.stock}"
    return f"{drawn}: {small.first.words}." if small.first else f"{drawn}."


def _ways(each: Addition, small: TooSmall, way: Way) -> Iterator[Link]:
    leave = Link(words="Leave it out", address=way(Instead.LEAVE, each.dye_id))
    if each.moved <= UNSEEN:
        yield leave
    if small.first is not None:
        shown = shown_first([small.first])[0]
        if shown.key:
            yield Link(words=shown.key, address=shown.address)
    if each.may_be_least:
        least = amount_text(small.least_ml, "ml")
        yield Link(
            words=f"Add {least} of {small.code}",
            address=way(Instead.LEAST, each.dye_id),
        )
    if each.moved > UNSEEN:
        yield leave


def _draws(dose: PlannedDose) -> Iterator[str]:
    for share, share_g in zip(dose.shares, dose.dosed.shares_g, strict=True):
        shown = shown_share(share, share_g, is_by_weight=False, tool=dose.dosed.tool)
        yield f"{shown.amount} ({shown.beside}) from {shown.code}"
