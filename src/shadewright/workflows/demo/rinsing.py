"""The demo's lots: rinsed, dried, graded and put away the day after the bath."""

from datetime import datetime, timedelta
from functools import partial

from shadewright.records.models.lots import ColourEvidence, Grade
from shadewright.records.writes import Stamp
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.rota import Slip, Wanted
from shadewright.workflows.lots import LotWords, change_lot, finish_bath, note_colour

SHELVES = ("Shelf A, left", "Shelf A, right", "Shelf B")
FAIR = "Fair tub"

_GRADES: dict[Slip | None, tuple[Grade, str]] = {
    Slip.OVER_POUR: (Grade.SECOND, "Deeper than the sample."),
    Slip.MISSED_DOSE: (Grade.ONE_OFF, "Nobody’s colourway, but a good one."),
    Slip.LATE_ACID: (Grade.SECOND, "A little patchy near the ties."),
    Slip.WEAK_ACID: (Grade.FIRST, "Slow to take the dye up, then even."),
    Slip.SHORT_HOLD: (Grade.FIRST, "The first rinse ran coloured; then clear."),
    Slip.BOILED_OVER: (Grade.SECOND, "Paler on one side."),
}
_SEEN = {
    "Low Tide": "#6fa5a0",
    "Rosehip Lane": "#c0664b",
    "Kingcup": "#dcae3f",
    "Seaglass": "#b9d3c3",
    "Primrose Path": "#ede3a0",
}


def write_finishing(house: House, number: str, wanted: Wanted, at: datetime) -> None:
    """Write down when a bath is rinsed and its lot written."""
    house.diary.note(at, house.ines, partial(_finish, house, number, wanted))


def _finish(house: House, number: str, wanted: Wanted, stamp: Stamp) -> None:
    finish_bath(number=number, said=_said(house, wanted), stamp=stamp)
    if wanted.is_swatch and wanted.name in _SEEN:
        note_colour(
            number=number,
            colour=_SEEN[wanted.name],
            evidence=ColourEvidence.PHOTO,
            stamp=house.diary.stamp(house.ines),
        )
    if wanted.slip is Slip.TWO_PHONES:
        packed_at = stamp.at + timedelta(days=3)
        house.diary.note(packed_at, house.tam, partial(_pack, number))


def _pack(number: str, stamp: Stamp) -> None:
    said = LotWords(grade=Grade.FIRST, place=FAIR, note="Packed for the fair.")
    change_lot(number=number, said=said, stamp=stamp)


def _said(house: House, wanted: Wanted) -> LotWords:
    if wanted.is_swatch:
        return LotWords(grade=Grade.SWATCH, grams=wanted.fibre_g, place="Swatch book")
    chance = house.diary.chance
    grade, note = _GRADES.get(wanted.slip, (Grade.FIRST, ""))
    return LotWords(
        grade=grade,
        grams=round(wanted.fibre_g * chance.uniform(0.985, 1.0)),
        skeins=wanted.skeins,
        place=chance.choice(SHELVES) if grade is Grade.FIRST else FAIR,
        minutes=chance.randrange(25, 56, 5),
        note=note,
    )
