"""What the dye of a recipe costs, from the jars behind the bottles on the shelf."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from shadewright.core.baths import ChosenBottles
from shadewright.core.costing import Cost, CostPart, total_cost
from shadewright.records.models import StockBottle
from shadewright.workflows.costs import stock_costs

SKEIN_G = 100.0
_ONE_GRAM = 1.0


def gram_prices(codes: Sequence[str]) -> dict[str, CostPart]:
    """Return what a gram of dye in each bottle cost, by the bottle’s code."""
    rows = StockBottle.objects.filter(code__in=codes).values_list("pk", "code")
    held = {pk: (code, _ONE_GRAM) for pk, code in rows}
    return {part.name: part for part in stock_costs(held).values()}


def skein_cost(
    doses: Sequence[tuple[str, ChosenBottles]],
    prices: Mapping[str, CostPart],
    *,
    batch_g: float,
) -> Cost:
    """Return what the dye for 100 g of yarn costs, from the bottles of a batch."""
    share = SKEIN_G / batch_g
    parts = [
        _part(name, prices.get(each.code), share * each.dye_g)
        for name, chosen in doses
        for each in chosen.shares
    ]
    parts += [
        _short(name, chosen, prices, share * chosen.missing_g)
        for name, chosen in doses
        if chosen.missing_g
    ]
    return total_cost(parts)


def _short(
    name: str, chosen: ChosenBottles, prices: Mapping[str, CostPart], dye_g: float
) -> CostPart:
    """Price what the bottles lack like what they hold."""
    if chosen.shares:
        return _part(name, prices.get(chosen.shares[0].code), dye_g)
    return CostPart(name=name, money=None, why="no stock to price it from")


def _part(name: str, gram: CostPart | None, dye_g: float) -> CostPart:
    if gram is None or gram.money is None:
        why = "no price for it" if gram is None else gram.why
        return CostPart(name=name, money=None, why=why)
    return replace(gram, name=name, money=gram.money * dye_g)
