"""The demo's dye room: its hours and its rack, who is in, and how its days end."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import partial

from shadewright.records.models.days import DayAct
from shadewright.records.writes import Stamp
from shadewright.workflows.days.closed_days import close_days
from shadewright.workflows.days.day_ledger import say_all_off, write_day
from shadewright.workflows.days.day_now import PersonIn
from shadewright.workflows.days.hours import HoursSaid, keep_hours, put_out
from shadewright.workflows.days.room import Room, keep_room
from shadewright.workflows.demo.calendar import Diary
from shadewright.workflows.demo.house import House

ROOM = Room(rack_slots=40, look_every_min=20.0, seconds_percent=5.0)
_METERED_SINCE = 16
_NOON = range(12, 15)
_LAST_MINUTE = time(23, 59)


@dataclass(frozen=True, kw_only=True)
class Hours:
    """From when to when a day is open."""

    opens_at: time
    closes_at: time


def write_room(house: House) -> None:
    """Write down the room, and the evenings of the days that are over."""
    at, note = house.diary.at, house.diary.note
    note(at(98, "18:30"), house.ines, lambda _: keep_room(ROOM))
    note(at(9, "08:10"), house.tam, partial(_put_out, house))
    note(at(5, "18:20"), house.ines, lambda _: _close(house))
    for days_ago in range(_METERED_SINCE, 0, -1):
        if days_ago % 7 in {2, 5} or days_ago == 1:
            _write_meters(house, days_ago)


def hours_of_today(now: datetime) -> Hours:
    """Return hours in which the day is half over, whenever somebody looks."""
    if now.hour in _NOON:
        return Hours(opens_at=ROOM.opens_at, closes_at=ROOM.closes_at)
    closes = now.hour + 6
    return Hours(
        opens_at=time(max(0, now.hour - 4)),
        closes_at=time(closes) if closes < 24 else _LAST_MINUTE,
    )


def say_who_is_in(day: date, hours: Hours, stamp: Stamp) -> None:
    """Say that Ines comes first and Tam stays to the end."""
    opens, closes = hours.opens_at, hours.closes_at
    ines = PersonIn(name="Ines", starts_at=opens, ends_at=_hour_of(closes, -1))
    tam = PersonIn(name="Tam", starts_at=_hour_of(opens, 2), ends_at=closes)
    said = HoursSaid(opens_at=opens, closes_at=closes, people=(ines, tam))
    keep_hours(day=day, said=said, stamp=stamp)


def _close(house: House) -> None:
    """Close the studio for a journey, a month from now."""
    first_on = house.diary.day(0) + timedelta(days=30)
    last_on = first_on + timedelta(days=3)
    close_days(first_on=first_on, last_on=last_on, why="Visiting the mill")


def _put_out(house: House, stamp: Stamp) -> None:
    """Leave a pot alone for a day."""
    put_out(
        day=house.diary.day(9),
        pot_id=house.pots["Tall kettle"],
        why="The handle is loose.",
        stamp=stamp,
    )


def _hour_of(at: time, hours: int) -> time:
    return at.replace(hour=at.hour + hours)


def _write_meters(house: House, days_ago: int) -> None:
    """Read both meters in the morning and in the evening; then all is off."""
    diary = house.diary
    for clock, used in (("08:05", 0.0), ("17:40", 1.0)):
        read = partial(_read_meters, diary, days_ago, used)
        diary.note(diary.at(days_ago, clock), house.tam, read)
    diary.note(
        diary.at(days_ago, "17:50"),
        house.ines,
        lambda stamp: say_all_off(diary.day(days_ago), stamp=stamp),
    )


def _read_meters(diary: Diary, days_ago: int, used: float, stamp: Stamp) -> None:
    day, gone = diary.day(days_ago), _METERED_SINCE - days_ago
    water_m3 = round(212.40 + 0.31 * gone + used * diary.chance.uniform(0.18, 0.26), 2)
    power_kwh = round(4810.2 + 9.0 * gone + used * diary.chance.uniform(3.2, 5.6), 1)
    write_day(day, DayAct.WATER, value=water_m3, stamp=stamp)
    again = diary.stamp(stamp.by or 0)
    write_day(day, DayAct.POWER, value=power_kwh, stamp=again)
