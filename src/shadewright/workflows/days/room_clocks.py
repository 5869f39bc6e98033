"""The clock of the room: nobody has looked for a while.

A pot on the heat is never left alone. Any tap at any pot says that somebody is there;
when none came for as long as the room allows, the desk rings. The alarm stands with the
bath that went unlooked at for longest, and its *Heard* is a line there.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta

from django.utils import timezone

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.records import day_reads
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import BathNow, Clock
from shadewright.workflows.days.room import Room, room_now
from shadewright.workflows.stamps import today

WATCH = "watch"
ROOM_TITLES = {WATCH: "nobody had looked"}
"""What the room’s clocks are called in a ledger, once somebody heard them."""


def room_clocks(baths: Sequence[BathNow]) -> tuple[Clock, ...]:
    """Return what rings for the room while any of these baths is on the heat."""
    hot = on_the_heat(baths)
    return (_watch(baths, hot, room_now()),) if hot else ()


def on_the_heat(baths: Sequence[BathNow]) -> tuple[BathNow, ...]:
    """Return the baths whose heat was put on and not off, as far as was written."""
    return tuple(bath for bath in baths if _is_hot(bath))


def closes_at(room: Room) -> datetime:
    """Return when the room closes today: as was said of the day, else as always."""
    said = day_reads.day_row(today())
    closes = room.closes_at if said is None else said.closes_at or room.closes_at
    return timezone.make_aware(datetime.combine(today(), closes))


def _watch(baths: Sequence[BathNow], hot: Sequence[BathNow], room: Room) -> Clock:
    every = timedelta(minutes=room.look_every_min)
    return Clock(
        bath=min(hot, key=_looked_at).number,
        key=WATCH,
        words=f"Nobody has looked for {amount_text(room.look_every_min, 'min')}. "
        f"On the heat: {', '.join(bath.called for bath in hot)}",
        rings_at=max(_looked_at(bath) for bath in baths if bath.lines) + every,
        every=every,
    )


def _is_hot(bath: BathNow) -> bool:
    ticks = {each.step.kind: each.ticks for each in bath.steps}
    is_on = any(tick.act == BathAct.HEAT_ON for tick in ticks[StepKind.HEAT])
    return is_on and not any(tick.act == BathAct.HEAT_OFF for tick in bath.standing)


def _looked_at(bath: BathNow) -> datetime:
    return max(line.at for line in bath.lines)
