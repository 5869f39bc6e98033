"""How the demo judges its lots: a standard, one dry check, a snip, one correction."""

from functools import partial

from shadewright.core.quality import Tolerances
from shadewright.records.models import Lot
from shadewright.records.models.swatches import ReadBy
from shadewright.records.writes import Stamp
from shadewright.workflows.correcting.correcting import corrected
from shadewright.workflows.correcting.keeping import (
    CorrectionKind,
    ToKeep,
    keep_correction,
)
from shadewright.workflows.correcting.off_shade import off_shade
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.lessons import seen_of_lot
from shadewright.workflows.demo.swatches import read_words
from shadewright.workflows.judging.deciding import FITS, Choice, decide
from shadewright.workflows.judging.dry_checks import keep_check
from shadewright.workflows.judging.snips import keep_snip
from shadewright.workflows.judging.standards import Piece, lot_as_standard
from shadewright.workflows.judging.tolerances import StudioTolerances, keep_tolerances
from shadewright.workflows.judging.tone_bands import Band, keep_tone_band
from shadewright.workflows.recipes import version
from shadewright.workflows.shades.entering_swatches import swatch_of_bath
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.shades.wanted import wanted_of_lot

JUDGED = ("Low Tide", "Hollow 4-ply")
"""The colourway and yarn whose lots are held against a standard."""
MATCHED = ("Millrace", "Byre DK")
"""Of this one the newest lot is to come to an old one, for a jumper half knitted."""
TONAL = "Bramble Grey"
_TOLERANCES = StudioTolerances(steps=Tolerances(match=1.0, alternate=2.0, new_lot=3.0))
_BAND = Band(least=1.0, most=4.0)
_SNIP_MIN = 20.0


def write_judged(house: House) -> None:
    """Write down when lots were judged; the correction is dyed tomorrow."""
    at, note = house.diary.at, house.diary.note
    note(at(14, "18:00"), house.ines, partial(_set_up, house))
    note(at(2, "17:40"), house.ines, _snip)
    note(at(2, "18:20"), house.ines, partial(_check, house))
    note(house.diary.before(40), house.ines, partial(_correct, house))


def _set_up(house: House, stamp: Stamp) -> None:
    """Say what is wanted of lots; the newest that was read becomes a standard."""
    keep_tolerances(_TOLERANCES)
    keep_tone_band(version(house.versions[TONAL]).recipe_id, _BAND)
    piece = Piece(where="Shade drawer, second row")
    lot_as_standard(_read_lots(*JUDGED)[-1], piece=piece, stamp=stamp)


def _snip(stamp: Stamp) -> None:
    keep_snip(_read_lots(*JUDGED)[-1], minutes=_SNIP_MIN, stamp=stamp)


def _check(house: House, stamp: Stamp) -> None:
    """Hold the newest lot against the standard, dry, and decide what it says."""
    number = _read_lots(*JUDGED)[-1]
    lot = swatch_now(swatch_of_bath(number, stamp=house.diary.stamp(stamp.by or 0)))
    words = read_words(house, ReadBy.METER, seen_of_lot(house, lot, when="checked"))
    skeins = range(1, len(words.texts) + 1)
    found = keep_check(number, read=words, skeins=skeins, stamp=stamp)
    if found is not None and found.verdict is not None:
        choice = FITS.get(found.verdict, Choice.ALTERNATE)
        decide(number, choice, stamp=house.diary.stamp(stamp.by or 0))


def _correct(house: House, stamp: Stamp) -> None:
    """Plan the bath that brings a new lot to an old one."""
    old, *_, number = _read_lots(*MATCHED)
    way = corrected(off_shade(number, wanted=wanted_of_lot(old)))
    wish = ToKeep(
        number=number,
        kind=CorrectionKind.CORRECT,
        doses=way.first,
        fibre_g=way.off.fibre_g,
        dyed_on=house.diary.day(-1),
        skeins=Lot.objects.get(number=number).bath.skeins,
        foretold={
            "de_before": way.found.de_before,
            "de_after": way.found.de_after,
            "share": way.found.share,
        },
    )
    keep_correction(wish, stamp=stamp)


def _read_lots(name: str, base: str) -> list[str]:
    """Return the lots of a colourway on a yarn that were read, the oldest first."""
    lots = Lot.objects.filter(
        bath__version__recipe__name=name, bath__base__name=base, bath__is_swatch=False
    )
    read = lots.exclude(bath__swatch=None).order_by("id")
    return list(read.values_list("number", flat=True))
