"""Each dose of a day with the bottles that it will come from, in the order of dyeing.

A dose keeps the bottle that it was planned from while that one is good and holds it;
any other is looked for a bottle anew. What other days were promised is left to them.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import date

from shadewright.core.baths import (
    BottleShare,
    Candidate,
    ChosenBottles,
    chosen_bottles,
    liquor_ml,
)
from shadewright.core.quantities import is_more
from shadewright.core.solutions.keeping import Purpose
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.days.schedules import BathAt, Schedule, schedule_of
from shadewright.workflows.promised import AwaitedDose, awaited_on, promised_ml
from shadewright.workflows.shelf import ShelfBottle, shelf


@dataclass(frozen=True, kw_only=True)
class ServedDose:
    """A dose and what it will be drawn from; what is missing has no bottle."""

    awaited: AwaitedDose
    liquor_ml: float
    chosen: ChosenBottles
    is_as_planned: bool

    @property
    def new_code(self) -> str:
        """The one other bottle that it could come from whole; empty where none."""
        shares = self.chosen.shares
        if self.is_as_planned or self.chosen.missing_g or len(shares) != 1:
            return ""
        return shares[0].code


@dataclass(kw_only=True)
class Shelf:
    """The bottles, and what was taken of each so far in thought."""

    bottles: Sequence[ShelfBottle]
    taken_ml: dict[str, float] = field(default_factory=dict)

    def candidates(self, dye_id: int, purpose: Purpose) -> list[Candidate]:
        """Return a dye's bottles as they then stand."""
        offer = Offer(bottles=self.bottles, purpose=purpose, taken_ml=self.taken_ml)
        return offer.candidates(dye_id)

    def take(self, shares: Sequence[BottleShare]) -> None:
        """Count what is drawn."""
        for each in shares:
            taken = self.taken_ml.get(each.code, 0.0)
            self.taken_ml[each.code] = taken + each.volume_ml


def shelf_for(day: date) -> Shelf:
    """Return the shelf as a day finds it: what other days were promised is taken."""
    return Shelf(bottles=shelf(), taken_ml=promised_ml(but_on=day))


def doses_served(day: date, standing: Shelf) -> tuple[ServedDose, ...]:
    """Return the doses of a day in the order of dyeing; the shelf is drawn on."""
    doses = sorted(awaited_on(day), key=_order(schedule_of(day)))
    kept = [_kept(each, standing) for each in doses]
    return tuple(
        ServedDose(
            awaited=each,
            liquor_ml=_liquor_ml(each),
            chosen=_chosen(each, standing) if had is None else had,
            is_as_planned=had is not None,
        )
        for each, had in zip(doses, kept, strict=True)
    )


def _order(plan: Schedule | None) -> Callable[[AwaitedDose], tuple[bool, float, int]]:
    """Return what sorts doses as the plan dyes them, else as they were planned."""
    starts = {} if plan is None else {x.number: _start(x) for x in plan.baths}

    def key(each: AwaitedDose) -> tuple[bool, float, int]:
        start = starts.get(each.bath.number)
        return start is None, start or 0.0, each.bath.pk

    return key


def _start(each: BathAt) -> float:
    return min((stage.starts_at.timestamp() for stage in each.stages), default=0.0)


def _kept(each: AwaitedDose, standing: Shelf) -> ChosenBottles | None:
    """Return the dose as it was planned, where its bottle still gives it."""
    row = each.row
    if row.bottle is None or row.volume_ml is None or row.strength_percent is None:
        return None
    bottles = standing.candidates(row.dye_id, Purpose(each.bath.purpose))
    own = next((x for x in bottles if x.code == row.bottle.code and x.is_good), None)
    if own is None or is_more(row.volume_ml, than=own.usable_ml):
        return None
    share = BottleShare(
        code=own.code,
        volume_ml=row.volume_ml,
        dye_g=row.dye_g,
        strength_percent=row.strength_percent,
    )
    standing.take([share])
    return ChosenBottles(shares=(share,), missing_g=0.0)


def _chosen(each: AwaitedDose, standing: Shelf) -> ChosenBottles:
    chosen = chosen_bottles(
        dye_g=each.row.dye_g,
        liquor_ml=_liquor_ml(each),
        bottles=standing.candidates(each.row.dye_id, Purpose(each.bath.purpose)),
    )
    standing.take(chosen.shares)
    return chosen


def _liquor_ml(each: AwaitedDose) -> float:
    return liquor_ml(
        fibre_mass_g=each.bath.fibre_g, liquor_ratio=each.bath.liquor_ratio
    )
