"""The dye room: when it opens, how many sinks and rack places, and its habits."""

from dataclasses import dataclass, fields
from datetime import UTC, date, datetime, time

from django.db import transaction
from django.utils import timezone

from shadewright.errors import ConflictError, OutOfRangeError
from shadewright.records import day_reads
from shadewright.records.models import DyeRoom, Studio


@dataclass(frozen=True, kw_only=True)
class Room:
    """The room as the studio described it, or as most are, in min, h, days and %."""

    opens_at: time = time(8)
    closes_at: time = time(18)
    sinks: int = 1
    rack_slots: int = 40
    washout_min: float = 10.0
    dry_hours: float = 36.0
    pack_days: float = 2.0
    seconds_percent: float = 5.0
    spare_percent: float = 10.0
    look_every_min: float = 20.0
    cools_overnight: bool = True
    is_described: bool = False


def room_now() -> Room:
    """Return the dye room, its usual values where nobody described it."""
    row = day_reads.room_row()
    if row is None:
        return Room()
    return Room(
        opens_at=row.opens_at,
        closes_at=row.closes_at,
        sinks=row.sinks,
        rack_slots=row.rack_slots,
        washout_min=row.washout_min,
        dry_hours=row.dry_hours,
        pack_days=row.pack_days,
        seconds_percent=row.seconds_percent,
        spare_percent=row.spare_percent,
        look_every_min=row.look_every_min,
        cools_overnight=row.cools_overnight,
        is_described=True,
    )


@transaction.atomic
def keep_room(room: Room) -> None:
    """Keep the room as it is described; days that have their own hours keep them."""
    require_hours(room.opens_at, room.closes_at)
    names = {field.name for field in fields(room)} - {"is_described"}
    said = {name: getattr(room, name) for name in names}
    DyeRoom.objects.update_or_create(studio=Studio.objects.first(), defaults=said)


def require_hours(opens_at: time, closes_at: time) -> None:
    """Refuse a day that closes before it opens."""
    if closes_at <= opens_at:
        raise OutOfRangeError(
            name="The close",
            given=f"{closes_at:%H:%M}",
            allowed=f"after the opening at {opens_at:%H:%M}",
            argument="closes_at",
        )


def require_known_clock(day: date, at: time | None, *, argument: str) -> None:
    """Refuse a time that the clock on the wall leaps over, when clocks change."""
    if at is None:
        return
    wall = datetime.combine(day, at)
    moment = timezone.make_aware(wall).astimezone(UTC)
    if timezone.localtime(moment).replace(tzinfo=None) != wall:
        raise ConflictError(
            why=f"The clocks are changed on this day, and {at:%H:%M} is left out.",
            advice="Choose a time before or after.",
            argument=argument,
        )
