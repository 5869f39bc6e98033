"""Which baths cool overnight in their pots: as wished, else by the room's habit.

Overnight is the usual case, for a slow cool loses no dye and asks for nobody. But a pot
that is left full serves once a day. So where a day has more baths than pots, as many as
there are too many are rinsed the same day: first those that are due, then the smallest,
which cool first.
"""

from collections.abc import Iterable

from shadewright.records.models import Bath
from shadewright.workflows.days.bath_facts import litres_of
from shadewright.workflows.days.day_now import wish_of


def overnight_of(rows: Iterable[Bath], *, is_habit: bool, pots: int) -> set[str]:
    """Return the numbers of the baths that stay in their pots to the next day."""
    known = list(rows)
    wished = {row.number: wish_of(row) for row in known}
    open_to_both = [
        row
        for row in known
        if is_habit
        and wished[row.number].is_overnight is None
        and wished[row.number].due_at is None
        and not wished[row.number].is_steamed
    ]
    said = {number for number, wish in wished.items() if wish.is_overnight}
    most = max(0, pots - len(said))
    by_size = sorted(open_to_both, key=lambda row: (-litres_of(row), row.pk))
    too_many = max(0, len(known) - pots)
    stay = max(0, min(most, len(by_size) - too_many))
    return said | {row.number for row in by_size[:stay]}
