"""The demo's swatches enter the studio, and each is read as the book tells."""

from dataclasses import replace
from functools import partial

from shadewright.exchange.colour_text import on_screen
from shadewright.records.models import Meter
from shadewright.records.models.swatches import ReadBy
from shadewright.records.writes import Stamp
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.house import NOTE, House
from shadewright.workflows.demo.swatch_book import (
    EARLY,
    LATE,
    InBook,
    Seen,
    seen_of,
    swatch_book,
)
from shadewright.workflows.shades.entering_swatches import SwatchWords, keep_swatch
from shadewright.workflows.shades.readings import ReadWords, keep_reading

METER = "Hand meter"


def write_swatches(house: House) -> None:
    """Write down when the meter came, and the evenings on which swatches were read."""
    note, at = house.diary.note, house.diary.at
    note(at(EARLY + 6, "17:30"), house.ines, partial(_receive_meter, house))
    for days_ago in (EARLY, LATE):
        by = house.ines if days_ago == EARLY else house.tam
        note(at(days_ago, "16:30"), by, partial(_enter, house, days_ago))
    note(at(LATE - 1, "17:10"), house.ines, partial(_read_again, house))


def read_words(house: House, read_by: ReadBy, seen: Seen) -> ReadWords:
    """Return what was seen as a hand would type it."""
    if seen.spectrum:
        text = " ".join(f"{part}" for part in seen.spectrum)
        return ReadWords(read_by=read_by, spectrum_text=text)
    if read_by is ReadBy.EYE:
        return ReadWords(
            read_by=read_by, texts=tuple(on_screen(lab).hex_code for lab in seen.labs)
        )
    return ReadWords(
        read_by=read_by,
        texts=tuple(f"{lab.L}, {lab.a}, {lab.b}" for lab in seen.labs),
        meter_id=house.meters[METER],
    )


def _receive_meter(house: House, stamp: Stamp) -> None:
    meter = Meter(name=METER, geometry="45/0, 8 mm", spread=0.3, notes=NOTE)
    keep_item(meter, stamp)
    house.meters[METER] = meter.pk


def _enter(house: House, days_ago: int, stamp: Stamp) -> None:
    """Type the swatches that lie ready, each with its colour."""
    for place, swatch in enumerate(swatch_book(), start=1):
        if swatch.read_ago == days_ago:
            _enter_one(house, place, swatch, stamp.by or 0)


def _enter_one(house: House, place: int, swatch: InBook, by: int) -> None:
    swatch_id = keep_swatch(
        words=SwatchWords(
            base=swatch.yarn,
            doses=swatch.doses,
            dyed_on=house.diary.day(swatch.dyed_ago),
        ),
        stamp=house.diary.stamp(by),
    )
    house.swatches[place] = swatch_id
    _read(house, place, swatch, swatch.read_by, by)


def _read_again(house: House, stamp: Stamp) -> None:
    for place, swatch in enumerate(swatch_book(), start=1):
        if swatch.again_by is not None:
            _read(house, place, swatch, swatch.again_by, stamp.by or 0)


def _read(house: House, place: int, swatch: InBook, read_by: ReadBy, by: int) -> None:
    words = read_words(house, read_by, seen_of(swatch, place, read_by))
    keep_reading(
        swatch_id=house.swatches[place],
        words=replace(words, is_wet=swatch.is_wet),
        stamp=house.diary.stamp(by),
    )
