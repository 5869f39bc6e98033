"""The dye room: when it opens, how many sinks and rack places, and its habits."""

from dataclasses import dataclass
from datetime import time

from shadewright.records import day_reads


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
