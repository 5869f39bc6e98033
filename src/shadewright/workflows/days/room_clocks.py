"""The clocks of the room: nobody has looked for a while; the room closes and it is hot.

A pot on the heat is never left alone. Any tap at any pot says that somebody is there;
when none came for as long as the room allows, the desk rings. The alarm stands with the
bath that went unlooked at for longest, and its *Heard* is a line there.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from django.utils import timezone

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.records import day_reads
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import HEARD, BathNow, Clock
from shadewright.workflows.days.room import Room, room_now
from shadewright.workflows.stamps import today

WATCH, CLOSING = "watch", "closing"


def room_clocks(baths: Sequence[BathNow]) -> tuple[Clock, ...]:
    """Return what rings for the room while any of these baths is on the heat."""
    hot = on_the_heat(baths)
    return tuple(_clocks(baths, hot, room_now())) if hot else ()


def on_the_heat(baths: Sequence[BathNow]) -> tuple[BathNow, ...]:
    """Return the baths whose heat was put on and not off, as far as was written."""
    return tuple(bath for bath in baths if _is_hot(bath))


def closes_at(room: Room) -> datetime:
    """Return when the room closes today: as was said of the day, else as always."""
    said = day_reads.day_row(today())
    closes = room.closes_at if said is None else said.closes_at or room.closes_at
    return timezone.make_aware(datetime.combine(today(), closes))


def _clocks(
    baths: Sequence[BathNow], hot: Sequence[BathNow], room: Room
) -> Iterator[Clock]:
    names = ", ".join(bath.called for bath in hot)
    every = timedelta(minutes=room.look_every_min)
    looked = max(_looked_at(bath) for bath in baths if bath.lines)
    yield Clock(
        bath=min(hot, key=_looked_at).number,
        key=WATCH,
        words=f"Nobody has looked for {amount_text(room.look_every_min, 'min')}. "
        f"On the heat: {names}",
        rings_at=looked + every,
        every=every,
    )
    closes = closes_at(room)
    yield Clock(
        bath=hot[0].number,
        key=CLOSING,
        words=f"The room closes. Still on the heat: {names}",
        rings_at=closes,
        is_heard=_is_heard(baths, CLOSING, closes),
    )


def _is_hot(bath: BathNow) -> bool:
    ticks = {each.step.kind: each.ticks for each in bath.steps}
    is_on = any(tick.act == BathAct.HEAT_ON for tick in ticks[StepKind.HEAT])
    return is_on and not any(tick.act == BathAct.HEAT_OFF for tick in bath.standing)


def _looked_at(bath: BathNow) -> datetime:
    return max(line.at for line in bath.lines)


def _is_heard(baths: Sequence[BathNow], key: str, since: datetime) -> bool:
    lines = (line for bath in baths for line in bath.standing)
    return any(line.step == key + HEARD and line.at >= since for line in lines)
