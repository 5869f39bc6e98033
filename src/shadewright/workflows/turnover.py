"""What to mix, what to pour away, and the money that goes with it."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shadewright.core.costing import Cost, CostPart, total_cost
from shadewright.core.quantities import amount_text
from shadewright.core.solutions.keeping import Fate, Purpose
from shadewright.records.models import StockBottle
from shadewright.workflows.bottle_choice import refused_for
from shadewright.workflows.costs import stock_costs
from shadewright.workflows.promised import wanted_g
from shadewright.workflows.shelf import ShelfBottle, shelf

_TRACE_G = 1e-6
_LET_GO = (Fate.POUR, Fate.TEST)


@dataclass(frozen=True, kw_only=True)
class ToMix:
    """A dye of which a fresh stock is wanted, how much dye in it, and why."""

    dye_id: int
    dye_name: str
    wanted_g: float
    why: str


@dataclass(frozen=True, kw_only=True)
class ToLetGo:
    """A bottle that is better let go, and what the dye in it cost."""

    bottle: ShelfBottle
    is_test_worth: bool
    why: str
    cost: CostPart


@dataclass(frozen=True, kw_only=True)
class Turnover:
    """What comes and what goes on the shelf."""

    to_mix: tuple[ToMix, ...]
    to_let_go: tuple[ToLetGo, ...]
    lost: Cost


def turnover() -> Turnover:
    """Return what to mix for what is planned, and what to pour away."""
    bottles = shelf()
    going = tuple(_going([x for x in bottles if x.keeping.fate in _LET_GO]))
    return Turnover(
        to_mix=tuple(_to_mix(bottles)),
        to_let_go=going,
        lost=total_cost([each.cost for each in going]),
    )


def _to_mix(bottles: Sequence[ShelfBottle]) -> Iterator[ToMix]:
    held, low = _held_g(bottles), _low(bottles)
    for (dye_id, dye_name), wanted in wanted_g().items():
        missing_g = wanted - held.get(dye_id, 0.0)
        if missing_g > _TRACE_G:
            low.pop(dye_id, None)
            yield ToMix(
                dye_id=dye_id,
                dye_name=dye_name,
                wanted_g=missing_g,
                why=f"Planned baths want {amount_text(wanted, 'g')} of dye, and good "
                f"bottles hold {amount_text(held.get(dye_id, 0.0), 'g')}.",
            )
    yield from low.values()


def _held_g(bottles: Sequence[ShelfBottle]) -> dict[int, float]:
    """Return the dye that the usual bath may draw, in grams by dye."""
    held: dict[int, float] = defaultdict(float)
    for each in bottles:
        if not refused_for(each, Purpose.USUAL):
            held[each.dye_id] += each.usable_ml * each.strength_percent / 100
    return held


def _low(bottles: Sequence[ShelfBottle]) -> dict[int, ToMix]:
    """Return the dyes of which every good bottle is nearly empty."""
    good: dict[int, list[ShelfBottle]] = defaultdict(list)
    for each in bottles:
        if not (each.is_empty or each.is_mix_fresh or refused_for(each, Purpose.USUAL)):
            good[each.dye_id].append(each)
    return {
        dye_id: ToMix(
            dye_id=dye_id,
            dye_name=own[0].dye_name,
            wanted_g=0.0,
            why=f"All that is left is {_left(own)}.",
        )
        for dye_id, own in good.items()
        if all(each.is_low for each in own)
    }


def _left(bottles: Sequence[ShelfBottle]) -> str:
    return " and ".join(
        f"{amount_text(x.volume_ml, 'ml')} in {x.code}" for x in bottles
    )


def _going(bottles: Sequence[ShelfBottle]) -> Iterator[ToLetGo]:
    codes = [each.code for each in bottles]
    rows = {row.code: row.pk for row in StockBottle.objects.filter(code__in=codes)}
    held = {
        rows[x.code]: (x.code, x.volume_ml * x.strength_percent / 100) for x in bottles
    }
    costs = stock_costs(held)
    for each in bottles:
        yield ToLetGo(
            bottle=each,
            is_test_worth=each.keeping.fate is Fate.TEST,
            why=_why(each),
            cost=costs[rows[each.code]],
        )


def _why(bottle: ShelfBottle) -> str:
    if bottle.is_empty:
        return "Nothing more can be drawn from it."
    if bottle.is_settled:
        return "It has settled and is past its time."
    if bottle.is_mix_fresh:
        return "Its dye is mixed fresh for the day."
    if bottle.discard_by is not None:
        return "Its discard-by day has passed."
    if bottle.keeping.is_own_life:
        return "By your own looks half of its dye’s bottles have settled by this age."
    return "It is older than six months."
