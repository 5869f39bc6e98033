"""The demo's last steps of a bath: the cup once more, the rinse, the rack, dry."""

from datetime import timedelta
from functools import partial

from shadewright.records import day_reads
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.records.writes import Stamp
from shadewright.workflows.bath_shapes import RACK, RINSE, BathStatus
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.days.day_now import status_of_row
from shadewright.workflows.days.rack import SKEINS
from shadewright.workflows.demo.days import dye_days
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.kettle import PHONES

_SINCE = 16
"""For so many days the studio has ticked what comes after the heat."""
_DRY_HOURS = 40
_LEFT_PERCENT = (1.0, 2.0, 4.0, 8.0)
_RINSES = 3


def write_after_heat(house: House) -> None:
    """Write down how the baths of the last dye days were looked at and rinsed."""
    for days_ago in (each for each in dye_days() if each <= _SINCE):
        cups = partial(_look_at_cups, house, days_ago)
        house.diary.note(house.diary.at(days_ago, "17:20"), house.tam, cups)
        rinse = partial(_rinse, house, days_ago)
        house.diary.note(house.diary.at(days_ago - 1, "09:40"), house.ines, rinse)


def _rinse_and_hang(house: House, row: Bath, by: int) -> None:
    """Tick the rinses of a bath and put it on the rack, where it hangs until dry."""
    rinsed = Tap(bath=row.number, act=BathAct.RINSED, step=RINSE, device=PHONES[0])
    for _ in range(_RINSES):
        keep_tap(rinsed, stamp=house.diary.stamp(by))
    hung = Tap(
        bath=row.number,
        act=BathAct.HUNG,
        step=RACK,
        value=row.skeins,
        unit=SKEINS if row.skeins else "",
        device=PHONES[0],
    )
    stamp = house.diary.stamp(by)
    keep_tap(hung, stamp=stamp)
    dry_at = stamp.at + timedelta(hours=_DRY_HOURS)
    house.diary.note(dry_at, house.tam, partial(_dry, row.number))


def _look_at_cups(house: House, days_ago: int, stamp: Stamp) -> None:
    """Hold a cup of each kettle bath beside its first one."""
    for row in _kettles(house, days_ago):
        left = house.diary.chance.choice(_LEFT_PERCENT)
        seen = Tap(bath=row.number, act=BathAct.LEFTOVER, value=left, unit="%")
        keep_tap(seen, stamp=house.diary.stamp(stamp.by or house.tam))


def _rinse(house: House, days_ago: int, stamp: Stamp) -> None:
    for row in _kettles(house, days_ago):
        _rinse_and_hang(house, row, stamp.by or house.ines)


def _kettles(house: House, days_ago: int) -> list[Bath]:
    rows = day_reads.baths_of_day(house.diary.day(days_ago)).filter(is_swatch=False)
    return [row for row in rows if status_of_row(row) is BathStatus.COOLING]


def _dry(number: str, stamp: Stamp) -> None:
    keep_tap(Tap(bath=number, act=BathAct.DRY, step=RACK), stamp=stamp)
