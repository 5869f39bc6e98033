"""The clocks of the room: nobody has looked for a while, and the room closes.

A pot on the heat is never left alone. Any tap at any pot says that somebody is there;
when none came for as long as the room allows, the desk rings. It rings too when the
last person leaves, by the hours that were said, and something is still on the heat. The
alarm stands with the bath that went unlooked at for longest, and its *Heard* is a line
there.
"""

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from django.utils import timezone

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text
from shadewright.records import day_reads
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import HEARD, BathNow, Clock
from shadewright.workflows.days.room import Room, room_now
from shadewright.workflows.stamps import today

WATCH, CLOSING = "watch", "closing"
ROOM_TITLES = {WATCH: "nobody had looked", CLOSING: "the room closes"}
"""What the room’s clocks are called in a ledger, once somebody heard them."""


def room_clocks(baths: Sequence[BathNow]) -> tuple[Clock, ...]:
    """Return what rings for the room while any of these baths is on the heat."""
    hot = on_the_heat(baths)
    if not hot:
        return ()
    room = room_now()
    return (_watch(baths, hot, room), *_closing(baths, hot, room))


def on_the_heat(baths: Sequence[BathNow]) -> tuple[BathNow, ...]:
    """Return the baths whose heat was put on and not off, as far as was written."""
    return tuple(bath for bath in baths if _is_hot(bath))


def closes_at(room: Room, day: date) -> datetime:
    """Return when the last person leaves: as was said of the day, else as always."""
    said = day_reads.day_row(day)
    closes = room.closes_at if said is None else said.closes_at or room.closes_at
    leaving = () if said is None else [each.ends_at for each in said.presences.all()]
    return timezone.make_aware(datetime.combine(day, max(leaving, default=closes)))


def _watch(baths: Sequence[BathNow], hot: Sequence[BathNow], room: Room) -> Clock:
    every = timedelta(minutes=room.look_every_min)
    return Clock(
        bath=min(hot, key=_looked_at).number,
        key=WATCH,
        words=f"Nobody has looked for {amount_text(room.look_every_min, 'min')}. "
        f"On the heat: {_named(hot)}",
        rings_at=max(_looked_at(bath) for bath in baths if bath.lines) + every,
        every=every,
    )


def _closing(
    baths: Sequence[BathNow], hot: Sequence[BathNow], room: Room
) -> tuple[Clock, ...]:
    """Ring at the close of the day of the heat, and of today, until it was heard."""
    heard = [
        line.at
        for bath in baths
        for line in bath.standing
        if line.step == CLOSING + HEARD
    ]
    for day in sorted({*map(_heated_on, hot), today()}):
        closes = closes_at(room, day)
        if _has_hours(room, day) and not any(at >= closes for at in heard):
            return (_close(hot, closes),)
    return ()


def _close(hot: Sequence[BathNow], closes: datetime) -> Clock:
    return Clock(
        bath=min(hot, key=_looked_at).number,
        key=CLOSING,
        words=f"The room closes. Still on the heat: {_named(hot)}. "
        "Stay, or turn it off",
        rings_at=closes,
    )


def _has_hours(room: Room, day: date) -> bool:
    """Whether anybody said hours, so that the end of them is not made up."""
    return room.is_described or day_reads.day_row(day) is not None


def _named(hot: Sequence[BathNow]) -> str:
    return ", ".join(bath.called for bath in hot)


def _is_hot(bath: BathNow) -> bool:
    ticks = {each.step.kind: each.ticks for each in bath.steps}
    is_on = any(tick.act == BathAct.HEAT_ON for tick in ticks[StepKind.HEAT])
    return is_on and not any(tick.act == BathAct.HEAT_OFF for tick in bath.standing)


def _heated_on(bath: BathNow) -> date:
    on = (line.at for line in bath.standing if line.act == BathAct.HEAT_ON)
    return timezone.localdate(min(on))


def _looked_at(bath: BathNow) -> datetime:
    return max(line.at for line in bath.lines)
