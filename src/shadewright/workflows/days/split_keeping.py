"""A split kept as baths, and taken back as long as none has begun."""

from dataclasses import replace
from uuid import UUID, uuid5

from django.db import transaction

from shadewright.errors import ConflictError, NotFoundError
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, BathFor, DayWish
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.baths import keep_bath
from shadewright.workflows.days.splitting import SplitWish, bath_of_split, split_wish
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.stamps import Stamp

_BEFORE = {BathStatus.PLANNED, BathStatus.GIVEN_UP}


@transaction.atomic
def keep_split(wish: SplitWish, stamp: Stamp) -> tuple[str, ...]:
    """Plan all the baths of a wish and return their numbers; sent twice, kept once."""
    recipe_reads.lock_numbers()
    kept = baths_kept(stamp.deed)
    if kept:
        return kept
    plan = split_wish(wish)
    batch = uuid5(stamp.deed, "batch") if len(plan.baths) > 1 else None
    numbers = []
    for place, bath in enumerate(plan.baths, start=1):
        asked = bath_of_split(wish, bath, plan.liquor_ratio, plan.pot_ids)
        own = replace(stamp, deed=_deed(stamp.deed, place))
        number = keep_bath(wish=asked, stamp=own)
        row = Bath.objects.get(number=number)
        DayWish.objects.create(bath=row, batch=batch)
        for line_id, skeins in plan.shares[place - 1]:
            BathFor.objects.create(bath=row, line_id=line_id, skeins=skeins)
        numbers.append(number)
    return tuple(numbers)


def baths_kept(deed: UUID) -> tuple[str, ...]:
    """Return the baths that one sending of a split has kept already."""
    numbers: list[str] = []
    while row := recipe_reads.bath_of_deed(_deed(deed, len(numbers) + 1)):
        numbers.append(row.number)
    return tuple(numbers)


def is_taken_back(numbers: tuple[str, ...]) -> bool:
    """Whether all these baths were given up."""
    return all(bath_now(x).status is BathStatus.GIVEN_UP for x in numbers)


@transaction.atomic
def take_split_back(deed: UUID, stamp: Stamp) -> int:
    """Give the baths of a split up, none of which may have begun; count them."""
    recipe_reads.lock_numbers()
    numbers = baths_kept(deed)
    if not numbers:
        raise NotFoundError(kind="split to take back", key=str(deed))
    states = {number: bath_now(number).status for number in numbers}
    begun = [x for x in numbers if states[x] not in _BEFORE]
    if begun:
        raise ConflictError(
            why=f"Bath {begun[0]} has begun.",
            advice="Give the others up one by one, on their own pages.",
        )
    waiting = [x for x in numbers if states[x] is BathStatus.PLANNED]
    for number in waiting:
        own = replace(stamp, deed=uuid5(stamp.deed, number))
        give_up(number=number, why="taken off the day again", stamp=own)
    return len(waiting)


def _deed(deed: UUID, place: int) -> UUID:
    """Return the key of one bath of a split: always the same for the same split."""
    return uuid5(deed, f"bath {place}")
