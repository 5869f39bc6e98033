"""Is everything off? Asked at the end of a day on which something was hot.

By the records every heat is off once the last bath's was ticked; the hands look all the
same, since a burner may be on that no bath knows of. What is said is kept with the day.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from shadewright.records import day_reads
from shadewright.workflows.bath_shapes import BathNow, BathStatus
from shadewright.workflows.days.room import room_now
from shadewright.workflows.days.room_clocks import closes_at, on_the_heat
from shadewright.workflows.stamps import today


@dataclass(frozen=True, kw_only=True)
class AllOffAsked:
    """The question of a day: which baths are still on the heat, as far as is written.

    ``is_closing`` says that the room's closing time has come.
    """

    day: date
    hot: tuple[str, ...]
    is_closing: bool


def all_off_asked(now: datetime, baths: Sequence[BathNow]) -> AllOffAsked | None:
    """Return the question if the time for it has come and nobody answered it yet."""
    heated_at, said_at = day_reads.heated_at(today()), day_reads.all_off_at(today())
    if heated_at is None or (said_at is not None and said_at >= heated_at):
        return None
    hot = on_the_heat(baths)
    is_closing = now >= closes_at(room_now(), today())
    if not is_closing and (hot or _waits(baths)):
        return None
    return AllOffAsked(
        day=today(), hot=tuple(bath.called for bath in hot), is_closing=is_closing
    )


def source_names() -> tuple[tuple[str, float], ...]:
    """Return each burner in use by its name, with its power in kW."""
    return tuple((row.name, row.power_kw) for row in day_reads.source_rows())


def _waits(baths: Sequence[BathNow]) -> bool:
    """Whether a bath of today has still to begin, or to go on the heat."""
    before_heat = {BathStatus.PLANNED, BathStatus.GOING}
    return any(x.dyed_on == today() and x.status in before_heat for x in baths)
