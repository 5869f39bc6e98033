"""Bleed and rub tests of a lot, graded by the grey scales.

Staining of a white cloth is graded by the grey scale for staining (ISO 105-A03), the
change of the yarn by that for change of colour (ISO 105-A02): 5 is none, 1 is a great
one, halves between. The steps are kitchen tests after the standards' idea (ISO 105-X12
for rubbing, ISO 105-E01 for water), from memory; they replace no laboratory.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from uuid import UUID

from django.core.files.base import ContentFile
from django.db import transaction

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.exchange.photo import kept_photo
from shadewright.records import judging_reads, lot_reads
from shadewright.records.models import FastnessTest
from shadewright.records.models.judging import FastnessKind
from shadewright.records.writes import keep_line
from shadewright.workflows.kept_photos import kept_photo_bytes
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.undo import may_undo

__all__ = [
    "CLOTHS",
    "STEPS",
    "FastnessKind",
    "FastnessNow",
    "FastnessWords",
    "cloth_photo",
    "fastness_of",
    "keep_test",
    "weak_kinds",
]

CLOTHS = ("wool", "cotton", "silk", "nylon")
SELLABLE = 4.0
"""Staining from which the trade calls a yarn fast enough (common practice)."""

STEPS: Mapping[FastnessKind, str] = {
    FastnessKind.BLEED: (
        "Wet 20 cm of yarn and the white cloths, wring both out, press the yarn "
        "between them under a weight, leave overnight, part them and dry them apart."
    ),
    FastnessKind.WASH: (
        "Sew or tie 20 cm of yarn to the white cloths, wash as the tag says, rinse, "
        "dry them apart."
    ),
    FastnessKind.RUB_DRY: (
        "Rub a dry white cloth over 10 cm of yarn, ten times, forth and back."
    ),
    FastnessKind.RUB_WET: "The same with a damp cloth; dry it before you look.",
}


@dataclass(frozen=True, kw_only=True)
class FastnessWords:
    """What came of a test: staining by cloth, change of the yarn, each 1 to 5."""

    kind: FastnessKind
    staining: Mapping[str, float]
    change: float | None = None
    note: str = ""
    photo: bytes = field(default=b"", repr=False)


@dataclass(frozen=True, kw_only=True)
class FastnessNow:
    """A test as it stands; ``is_weak`` where a cloth was stained too much to sell."""

    id: int
    kind: FastnessKind
    staining: tuple[tuple[str, float], ...]
    change: float | None
    note: str
    at: datetime
    by: str
    has_photo: bool
    is_weak: bool
    deed: UUID
    may_undo: bool


def fastness_of(number: str) -> tuple[FastnessNow, ...]:
    """Return the tests of a lot that stand, the newest first."""
    lot = lot_reads.lot_row(number)
    rows = judging_reads.standing_fastness_tests().filter(lot=lot).order_by("-id")
    return tuple(map(_shaped, rows))


def weak_kinds(number: str) -> tuple[FastnessKind, ...]:
    """Return the tests whose newest outcome stained a cloth too much to sell."""
    newest = {test.kind: test for test in reversed(fastness_of(number))}
    return tuple(kind for kind, test in newest.items() if test.is_weak)


@transaction.atomic
def keep_test(*, number: str, said: FastnessWords, stamp: Stamp) -> None:
    """Write a test down, once."""
    lot = lot_reads.locked_lot_row(number)
    if is_written(stamp.deed):
        return
    if not lot.lines.all():
        raise ConflictError(why=f"Lot {number} was taken back.")
    _check(said)
    row = FastnessTest(
        lot=lot,
        kind=said.kind,
        cloths=[
            {"cloth": cloth, "staining": grade}
            for cloth, grade in said.staining.items()
        ],
        change=said.change,
        note=said.note.strip()[:300],
    )
    if said.photo:
        drawn = ContentFile(kept_photo(said.photo))
        row.photo.save(f"{number}-{stamp.deed.hex}.jpg", drawn, save=False)
    keep_line(row, stamp)


def cloth_photo(number: str, test_id: int) -> bytes:
    """Return the photo of a test's cloths."""
    lot = lot_reads.lot_row(number)
    row = judging_reads.standing_fastness_tests().filter(lot=lot, pk=test_id).first()
    if row is None:
        raise NotFoundError(kind="photo", key=f"{number}, {test_id}")
    return kept_photo_bytes(row.photo, key=f"{number}, {test_id}")


def _check(said: FastnessWords) -> None:
    if not said.staining and said.change is None:
        raise MissingError(
            name="A grade",
            advice="Grade at least one cloth, or the change of the yarn.",
            argument="change",
        )
    grades = [*said.staining.values(), *([] if said.change is None else [said.change])]
    for grade in grades:
        if not (1 <= grade <= 5 and not (2 * grade) % 1):
            raise OutOfRangeError(
                name="A grade",
                given=f"{grade:g}",
                allowed="from 1 to 5, in halves",
                argument="change",
            )


def _shaped(row: FastnessTest) -> FastnessNow:
    staining = tuple((each["cloth"], each["staining"]) for each in row.cloths)
    return FastnessNow(
        id=row.pk,
        kind=FastnessKind(row.kind),
        staining=staining,
        change=row.change,
        note=row.note,
        at=row.at,
        by="" if row.by is None else row.by.name,
        has_photo=bool(row.photo),
        is_weak=any(grade < SELLABLE for _cloth, grade in staining),
        deed=row.deed,
        may_undo=may_undo(row),
    )
