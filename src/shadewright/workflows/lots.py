"""Lots: what came out of a bath, and what becomes of it, line by line.

One bath gives one lot, which carries the bath's number for good. What is said of
a lot is never overwritten: a new line holds from then on, and undo takes it back.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from django.core.files.base import ContentFile
from django.db import transaction

from shadewright.core.quantities import MOST_MASS_G, require_between
from shadewright.errors import ConflictError, MissingError, NotFoundError
from shadewright.exchange.colour_text import typed_colour
from shadewright.exchange.photo import kept_photo
from shadewright.records import lot_reads, recipe_reads
from shadewright.records.models import Bath, BathLine, Lot, LotLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import ColourEvidence, Grade, LotAct
from shadewright.records.writes import keep_line
from shadewright.workflows.kept_photos import kept_photo_bytes
from shadewright.workflows.lot_lines import Held, held
from shadewright.workflows.stamps import Stamp, is_written

__all__ = [
    "ColourEvidence",
    "Grade",
    "LotWords",
    "add_photo",
    "change_lot",
    "doubt_of",
    "doubt_of_bath",
    "finish_bath",
    "note_colour",
    "photo_bytes",
]

MOST_SKEINS = 10_000
_MOST_MINUTES = 100_000.0


@dataclass(frozen=True, kw_only=True)
class LotWords:
    """What is said of a lot; None or empty where nobody says so yet."""

    grade: Grade
    grams: float | None = None
    skeins: int | None = None
    place: str = ""
    minutes: float | None = None
    note: str = ""


@transaction.atomic
def finish_bath(
    *, number: str, said: LotWords, stamp: Stamp, is_sure: bool = False
) -> str:
    """Write the lot of a bath and return its number, which is the bath's own."""
    bath = recipe_reads.locked_bath(number)
    if is_written(stamp.deed):
        return number
    if lot_reads.baths_with_lot([bath]):
        raise ConflictError(
            why=f"Bath {number} has its lot already: one bath gives one lot.",
            advice="Open the lot and write there what is different.",
        )
    _check(said)
    doubt = doubt_of_bath(bath)
    if doubt and not is_sure:
        raise ConflictError(
            why=doubt,
            advice="Tick “Write the lot all the same” if yarn came out of it.",
            argument="is_sure",
        )
    lot = lot_reads.lot_of_bath(bath) or Lot.objects.create(
        bath=bath, number=number, created_at=stamp.at, created_by_id=stamp.by
    )
    _tick_finished(bath, stamp)
    _write(lot, _lines(said, Held()), stamp)
    return number


@transaction.atomic
def change_lot(*, number: str, said: LotWords, stamp: Stamp) -> bool:
    """Write down what is different of a lot now; say whether anything was."""
    lot = _locked(number)
    if is_written(stamp.deed):
        return True
    _check(said)
    lines = list(_lines(said, held(lot.lines.all())))
    _write(lot, lines, stamp)
    return bool(lines)


@transaction.atomic
def note_colour(
    *, number: str, colour: str, evidence: ColourEvidence, stamp: Stamp
) -> None:
    """Note a lot's colour with what it rests on."""
    lot = _locked(number)
    if is_written(stamp.deed):
        return
    found = typed_colour(colour)
    light, a, b = found.lab or (None, None, None)
    line = LotLine(
        act=LotAct.COLOURED,
        words=found.hex_code,
        colour_l=light,
        colour_a=a,
        colour_b=b,
        evidence=evidence,
    )
    _write(lot, [line], stamp)


@transaction.atomic
def add_photo(*, number: str, photo: bytes, stamp: Stamp) -> None:
    """Keep a photo of a lot, drawn anew and without what the phone wrote in it."""
    lot = _locked(number)
    if is_written(stamp.deed):
        return
    picture = ContentFile(kept_photo(photo), name=f"{number}-{stamp.deed.hex}.jpg")
    line = LotLine(act=LotAct.PHOTO, photo=picture)
    _write(lot, [line], stamp)


def photo_bytes(*, number: str, line_id: int) -> bytes:
    """Return a photo of a lot that nobody took back, as a JPEG."""
    lines = lot_reads.lot_row(number).lines.all()
    line = next((x for x in lines if x.pk == line_id and x.act == LotAct.PHOTO), None)
    if line is None:
        raise NotFoundError(kind="photo", key=f"{number}, {line_id}")
    return kept_photo_bytes(line.photo, key=number)


def doubt_of_bath(bath: Bath) -> str:
    """Say in one sentence why a bath is unlikely to have given yarn, if so."""
    acts = set(bath.lines.filter(undone_by=None).values_list("act", flat=True))
    if BathAct.GIVEN_UP in acts:
        return f"Bath {bath.number} was given up."
    if not acts - {BathAct.UNDO, BathAct.FINISHED, BathAct.NOTE}:
        return (
            f"Bath {bath.number} was not begun: nothing is ticked, so what went in "
            "is not written down."
        )
    return ""


def doubt_of(number: str) -> str:
    """Say why the bath of a number is unlikely to have given yarn, if so."""
    return doubt_of_bath(recipe_reads.bath_row(number))


def _locked(number: str) -> Lot:
    recipe_reads.locked_bath(number)
    lot = lot_reads.lot_row(number)
    if not lot.lines.all():
        raise ConflictError(
            why=f"Lot {number} was taken back.",
            advice="Finish its bath anew if yarn came out of it.",
        )
    return lot


def _check(said: LotWords) -> None:
    for value, most, unit, name, argument in (
        (said.grams, MOST_MASS_G, "g", "The dry yarn", "grams"),
        (said.skeins, MOST_SKEINS, "skeins", "The count", "skeins"),
        (said.minutes, _MOST_MINUTES, "min", "The minutes", "minutes"),
    ):
        if value is not None:
            require_between(
                value, least=0.0, most=most, unit=unit, name=name, argument=argument
            )
    if said.grade not in Grade:
        raise MissingError(
            name="The grade", advice="Choose how it may be sold.", argument="grade"
        )


def _lines(said: LotWords, before: Held) -> Iterator[LotLine]:
    # What nobody says anew stays as it was.
    if said.grade != before.grade:
        yield LotLine(act=LotAct.GRADED, words=said.grade)
    place = " ".join(said.place.split())[:80]
    if place != before.place:
        yield LotLine(act=LotAct.PLACED, words=place)
    for act, new, old in (
        (LotAct.WEIGHED, said.grams, before.grams),
        (LotAct.COUNTED, said.skeins, before.skeins),
        (LotAct.TIMED, said.minutes, before.minutes),
    ):
        if new is not None and new != old:
            yield LotLine(act=act, value=new)
    note = said.note.strip()[:300]
    if note:
        yield LotLine(act=LotAct.NOTE, words=note)


def _write(lot: Lot, lines: Iterable[LotLine], stamp: Stamp) -> None:
    for line in lines:
        line.lot = lot
        keep_line(line, stamp)


def _tick_finished(bath: Bath, stamp: Stamp) -> None:
    finished = bath.lines.filter(undone_by=None, act=BathAct.FINISHED)
    if not finished.exists():
        line = BathLine(bath=bath, act=BathAct.FINISHED, step="finish")
        keep_line(line, stamp)
