"""The stocks of a kept set: what is to make, new bottles; the set given up."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import starmap
from uuid import uuid5

from django.db import transaction

from shadewright.core.baths import Candidate, liquor_ml
from shadewright.core.baths.choosing import LARGEST_SHARE_OF_BATH
from shadewright.core.quantities import is_more
from shadewright.records import recipe_reads, shade_reads
from shadewright.records.models import Bath, BathDose, SwatchPlan
from shadewright.workflows.bath_pages import BathStatus
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.planned_baths import change_bottle, give_up
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.shades.plan_pages import (
    plan_row,
    set_baths,
    status_of_bath,
)
from shadewright.workflows.shades.plan_stocks import (
    Lined,
    PlannedDraw,
    StockFirst,
    WantedDose,
    least_dose_ml,
    lined_up,
)
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.tools_at_hand import AtHand, DosingWish, at_hand


@dataclass(frozen=True, kw_only=True)
class BottleChange:
    """A dose that could be drawn from a better bottle than it is planned from."""

    bath_number: str
    step: str
    code: str


@dataclass(frozen=True, kw_only=True)
class SetStocks:
    """What a kept set still wants: stocks to have first, doses to draw otherwise.

    ``waiting`` holds the doses that will be drawn otherwise than they are planned, by
    bath and step: from a stock of ``first``, or by one of the ``changes``.
    """

    first: tuple[StockFirst, ...] = ()
    changes: tuple[BottleChange, ...] = ()
    waiting: Mapping[tuple[str, str], PlannedDraw] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class SetThatWaits:
    """A set with doses that a new stock of a dye is for."""

    id: int
    name: str
    doses: int


def set_stocks(plan_id: int) -> SetStocks:
    """Return what a set still wants before it is dyed, in the baths not begun.

    A dye all of whose doses can be measured as they are planned is left alone.
    """
    every = list(_asked(plan_row(plan_id)))
    hard = {each.dose.dye_id for each in every if not each.is_fine}
    asked = [each for each in every if each.dose.dye_id in hard]
    if not asked:
        return SetStocks()
    lined = _lined(asked)
    pairs = list(zip(asked, lined.draws, strict=True))
    changes = tuple(x for x in starmap(_change, pairs) if x is not None)
    better = {(each.bath_number, each.step) for each in changes}
    draws = {(each.bath.number, each.step): draw for each, draw in pairs}
    return SetStocks(
        first=lined.first,
        changes=changes,
        waiting={
            key: draw for key, draw in draws.items() if not draw.code or key in better
        },
    )


def sets_that_wait(dye_id: int) -> tuple[SetThatWaits, ...]:
    """Return the sets that want a dye from another bottle than is planned."""
    rows = [(row, set_stocks(row.pk)) for row in shade_reads.open_plans_with(dye_id)]
    found = (
        SetThatWaits(
            id=row.pk,
            name=row.recipe.name,
            doses=sum(draw.dye_id == dye_id for draw in stocks.waiting.values()),
        )
        for row, stocks in rows
    )
    return tuple(each for each in found if each.doses)


@transaction.atomic
def take_new_bottles(plan_id: int, stamp: Stamp) -> int:
    """Draw every dose that is hard to measure from a bottle that suits; count them."""
    recipe_reads.lock_numbers()
    changes = set_stocks(plan_id).changes
    for each in changes:
        own = uuid5(stamp.deed, f"{each.bath_number} {each.step}")
        change_bottle(
            number=each.bath_number,
            step=each.step,
            code=each.code,
            stamp=replace(stamp, deed=own),
        )
    return len(changes)


@transaction.atomic
def give_up_set(plan_id: int, stamp: Stamp) -> int:
    """Give up the baths of a set that have not begun; count them."""
    recipe_reads.lock_numbers()
    numbers = [
        bath.number
        for bath in set_baths(plan_row(plan_id))
        if status_of_bath(bath) is BathStatus.PLANNED
    ]
    for number in numbers:
        own = replace(stamp, deed=uuid5(stamp.deed, number))
        give_up(number=number, why="the set was given up", stamp=own)
    return len(numbers)


@dataclass(frozen=True, kw_only=True)
class _Asked:
    """A dose of a bath that has not begun."""

    bath: Bath
    step: str
    dose: BathDose
    is_fine: bool


def _asked(plan: SwatchPlan) -> Iterator[_Asked]:
    for bath in set_baths(plan):
        if status_of_bath(bath) is not BathStatus.PLANNED:
            continue
        least_ml = least_dose_ml(_tools(bath))
        most_ml = LARGEST_SHARE_OF_BATH * _liquor_ml(bath)
        for place, dose in enumerate(bath.doses.all(), start=1):
            volume_ml = dose.volume_ml
            is_fine = (
                volume_ml is not None
                and not is_more(least_ml, than=volume_ml)
                and not is_more(volume_ml, than=most_ml)
            )
            yield _Asked(bath=bath, step=f"dose-{place}", dose=dose, is_fine=is_fine)


def _lined(asked: list[_Asked]) -> Lined:
    wanted = [
        WantedDose(
            swatch=place,
            dye_id=each.dose.dye_id,
            dye_name=each.dose.dye.name,
            depth_percent=each.dose.depth_percent,
            dye_g=each.dose.dye_g,
        )
        for place, each in enumerate(asked, start=1)
    ]
    bath = asked[0].bath
    offer = Offer(bottles=shelf(), taken_ml=_taken_ml(asked))
    bottles: dict[int, list[Candidate]] = {
        each.dye_id: offer.candidates(each.dye_id) for each in wanted
    }
    return lined_up(
        wanted, liquor_ml=_liquor_ml(bath), bottles=bottles, tools=_tools(bath)
    )


def _taken_ml(asked: list[_Asked]) -> dict[str, float]:
    """Return what other doses will take of each bottle."""
    taken = promised_ml()
    for each in asked:
        if each.dose.bottle is not None and each.dose.bottle.code in taken:
            taken[each.dose.bottle.code] -= each.dose.volume_ml or 0.0
    return {code: max(volume_ml, 0.0) for code, volume_ml in taken.items()}


def _change(each: _Asked, draw: PlannedDraw) -> BottleChange | None:
    now = "" if each.dose.bottle is None else each.dose.bottle.code
    if not draw.code or draw.code == now or not draw.is_suiting:
        return None
    return BottleChange(bath_number=each.bath.number, step=each.step, code=draw.code)


def _liquor_ml(bath: Bath) -> float:
    return liquor_ml(fibre_mass_g=bath.fibre_g, liquor_ratio=bath.liquor_ratio)


def _tools(bath: Bath) -> AtHand:
    return at_hand(DosingWish(is_by_weight=bath.is_by_weight), fibre_g=bath.fibre_g)
