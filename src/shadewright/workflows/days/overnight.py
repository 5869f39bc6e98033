"""Which baths cool overnight in their pots: as wished, else by the room's habit.

Overnight is the usual case, for a slow cool loses no dye and asks for nobody. But a pot
that is left full serves once a day, and each of these baths wants one to itself that
holds it. So where a day has more baths than such pots, as many as there are too many
are rinsed the same day: first those that are due, then the smallest, which cool first.
"""

from collections.abc import Iterable, Sequence

from shadewright.core.baths.liquor import ROOM_TO_SPARE
from shadewright.core.planning.own_pots import with_own_pots
from shadewright.records.models import Bath, Pot
from shadewright.workflows.days.day_now import WishNow, wish_of


def overnight_of(
    rows: Iterable[Bath], *, is_habit: bool, pots: Sequence[Pot]
) -> set[str]:
    """Return the numbers of the baths that stay in their pots to the next day."""
    known = [(row, wish_of(row)) for row in rows]
    holders = {row.number: _holders(row, wish, pots) for row, wish in known}
    said = [row for row, wish in known if wish.is_overnight]
    may = [row for row, wish in known if is_habit and _may_stay(wish)]
    may.sort(key=lambda row: (-row.liquor_ml, row.pk))
    usable = {pot for each in holders.values() for pot in each}
    too_many = max(0, len(known) - len(usable))
    asked = [*said, *may[: max(0, len(may) - too_many)]]
    seated = with_own_pots([holders[row.number] for row in asked])
    return {row.number for row in said} | {asked[place].number for place in seated}


def _may_stay(wish: WishNow) -> bool:
    """Whether habit decides of a bath."""
    is_said = wish.is_overnight is not None or wish.due_at is not None
    return not is_said and not wish.is_steamed


def _holders(row: Bath, wish: WishNow, pots: Sequence[Pot]) -> tuple[int, ...]:
    """Return the pots that hold a bath with a tenth to spare, the smallest first."""
    wanted_l = row.liquor_ml / 1000.0 * ROOM_TO_SPARE
    fit = [
        pot
        for pot in pots
        if pot.volume_l + 1e-9 >= wanted_l and wish.pot_id in {None, pot.pk}
    ]
    return tuple(pot.pk for pot in sorted(fit, key=lambda pot: pot.volume_l))
