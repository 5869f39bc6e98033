"""What the demo learns of its colours: lots read, some of them evidence, and fits."""

from functools import partial

from shadewright.records.models import Lot
from shadewright.records.models.swatches import ReadBy
from shadewright.records.writes import Stamp
from shadewright.workflows.demo.absorption import DYES, YARNS
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.swatch_book import Seen, chance_of, dyed, seen_by
from shadewright.workflows.demo.swatches import read_words
from shadewright.workflows.shades.entering_swatches import swatch_of_bath
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.judging import leave_lot, teach_lot
from shadewright.workflows.shades.readings import keep_reading
from shadewright.workflows.shades.swatches import SwatchNow, swatch_now

FIRST_FIT, LAST_FIT = 64, 1
READING_DAYS = (57, 43, 29, 15, 3)
"""So many days ago Ines read the ends of the lots that had come off the line."""
TEACHING_DAYS, TAUGHT = (43, 29), 2
"""On which of these she let so many of them teach, and left the next one out."""
READ = 5
"""So many lots she read on such a day, beside all swatches."""
_LINE_DAYS = 14


def write_lessons(house: House) -> None:
    """Write down when lots are read, and when the palette is fitted."""
    note, at = house.diary.note, house.diary.at
    for days_ago in READING_DAYS:
        read = partial(_read_lots, house, days_ago)
        note(at(days_ago, "16:20"), house.ines, read)
    for days_ago, why in ((FIRST_FIT, "the first swatches"), (LAST_FIT, "lots read")):
        note(at(days_ago, "19:40"), house.ines, partial(_fit, why))


def _fit(why: str, stamp: Stamp) -> None:
    del stamp
    fit_now(why=why)


def _read_lots(house: House, days_ago: int, stamp: Stamp) -> None:
    """Read the swatches and some lots of the last two weeks; let a few lots teach."""
    by = stamp.by or 0
    since = house.diary.day(days_ago + _LINE_DAYS)
    rows = Lot.objects.filter(
        bath__dyed_on__gt=since, bath__base__name__in=YARNS, bath__swatch=None
    )
    ready = [
        lot for lot in rows.select_related("bath").order_by("id") if _is_known(lot)
    ]
    ends = [lot.number for lot in ready if not lot.bath.is_swatch][:READ]
    for number in (*(lot.number for lot in ready if lot.bath.is_swatch), *ends):
        _read_lot(house, number, by)
    if days_ago in TEACHING_DAYS:
        for number in ends[:TAUGHT]:
            teach_lot(number=number, stamp=house.diary.stamp(by))
        for number in ends[TAUGHT : TAUGHT + 1]:
            leave_lot(number=number, stamp=house.diary.stamp(by))


def _is_known(lot: Lot) -> bool:
    """Whether all its dyes stand in the swatch book."""
    return set(lot.bath.doses.values_list("dye__name", flat=True)) <= set(DYES)


def _read_lot(house: House, number: str, by: int) -> None:
    swatch_id = swatch_of_bath(number, stamp=house.diary.stamp(by))
    words = read_words(house, ReadBy.METER, seen_of_lot(house, swatch_now(swatch_id)))
    keep_reading(swatch_id=swatch_id, words=words, stamp=house.diary.stamp(by))


def seen_of_lot(house: House, lot: SwatchNow, *, when: str = "read") -> Seen:
    """Return what the meter shows of a lot; its spots differ with the occasion."""
    dyed_on = lot.dyed_on or house.diary.now.date()
    spectrum = dyed(
        lot.base_name,
        lot.doses,
        days_ago=(house.diary.now.date() - dyed_on).days,
        chance=chance_of(f"lot {lot.id}"),
    )
    return seen_by(ReadBy.METER, spectrum, chance_of(f"lot {lot.id} {when}"))
