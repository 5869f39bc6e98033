"""What a buyer wrote, and all that helps to answer it."""

from dataclasses import dataclass, field
from datetime import date
from itertools import islice

from django.core.files.base import ContentFile
from django.db import transaction
from django.db.models import Max, Q

from shadewright.errors import (
    ConflictError,
    MissingError,
    OutOfRangeError,
)
from shadewright.exchange.photo import kept_photo
from shadewright.records import judging_reads, lot_reads, recipe_reads, selling_reads
from shadewright.records.models import Complaint, FastnessTest, Lot
from shadewright.records.models.selling import ComplaintAbout
from shadewright.workflows.buyers.kin import kin_of
from shadewright.workflows.buyers.recall import Reach, reaches_of
from shadewright.workflows.buyers.replies import ReplyFacts, draft_reply
from shadewright.workflows.kept_photos import kept_photo_bytes
from shadewright.workflows.lot_skeins import skeins_of
from shadewright.workflows.stamps import Stamp, past_date, today
from shadewright.workflows.studio import studio

__all__ = [
    "ComplaintAbout",
    "ComplaintEntry",
    "ComplaintNow",
    "ComplaintWords",
    "close_complaint",
    "complaint_now",
    "complaint_photo",
    "complaints",
    "keep_complaint",
    "name_lot",
]

_AND, _MOST_OUTCOME, _MOST_SISTERS = "; ", 300, 6


@dataclass(frozen=True, kw_only=True)
class ComplaintWords:
    """What is said of a complaint; the lot may not be known."""

    from_whom: str
    about: ComplaintAbout
    lot: str = ""
    said: str = ""
    came_on: date | None = None
    photo: bytes = field(default=b"", repr=False)


@dataclass(frozen=True, kw_only=True)
class ComplaintEntry:
    """A complaint in one line."""

    number: int
    from_whom: str
    about: str
    lot: str
    colourway: str
    came_on: date
    is_closed: bool


@dataclass(frozen=True, kw_only=True)
class ComplaintNow:
    """A complaint with its kit: the circles around its lot, tests, a draft reply."""

    entry: ComplaintEntry
    said: str
    has_photo: bool
    outcome: str
    reaches: tuple[Reach, ...]
    tests: tuple[str, ...]
    reply: str


def complaints() -> tuple[ComplaintEntry, ...]:
    """Return all complaints, the open ones first."""
    return tuple(map(_entry, selling_reads.complaint_rows()))


def complaint_now(number: int) -> ComplaintNow:
    """Return one complaint with everything that helps to answer it."""
    row = selling_reads.complaint_row(number)
    tests = () if row.lot is None else _tests(row.lot)
    return ComplaintNow(
        entry=_entry(row),
        said=row.said,
        has_photo=bool(row.photo),
        outcome=row.outcome,
        reaches=() if row.lot is None else reaches_of(kin_of(row.lot.number)),
        tests=tests,
        reply=draft_reply(ComplaintAbout(row.about), _facts(row, tests)),
    )


@transaction.atomic
def keep_complaint(*, said: ComplaintWords, stamp: Stamp) -> int:
    """Write a complaint down, once, and return its number."""
    recipe_reads.lock_numbers()
    known = Complaint.objects.filter(deed=stamp.deed).first()
    if known is not None:
        return known.number
    if not said.from_whom.strip():
        raise MissingError(
            name="From whom it came", advice="A name will do.", argument="from_whom"
        )
    came_on = past_date(said.came_on, name="The day", argument="came_on")
    last = Complaint.objects.aggregate(last=Max("number"))["last"] or 0
    row = Complaint(
        number=last + 1,
        deed=stamp.deed,
        lot=_lot(said.lot) if said.lot.strip() else None,
        from_whom=" ".join(said.from_whom.split())[:80],
        about=said.about,
        said=said.said.strip()[:4000],
        came_on=came_on or today(),
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    if said.photo:
        drawn = ContentFile(kept_photo(said.photo))
        row.photo.save(f"{stamp.deed.hex}.jpg", drawn, save=False)
    row.save()
    return row.number


@transaction.atomic
def close_complaint(*, number: int, outcome: str) -> None:
    """Close a complaint and say how it ended; what was said before stays."""
    row = selling_reads.complaint_row(number)
    if not outcome.strip():
        raise MissingError(
            name="How it ended",
            advice="New skeins sent, money back, nothing found: in a few words.",
            argument="outcome",
        )
    said = row.outcome.split(_AND) if row.outcome else []
    if outcome.strip() not in said:
        said.append(outcome.strip())
    row.is_closed, row.outcome = True, _short_enough(_AND.join(said))
    row.save(update_fields=["is_closed", "outcome"])


@transaction.atomic
def name_lot(*, number: int, lot: str) -> None:
    """Write down of which lot a complaint is, once it is known."""
    row = selling_reads.complaint_row(number)
    found = _lot(lot)
    if row.lot is not None and row.lot != found:
        raise ConflictError(
            why=f"Complaint {number} is of lot {row.lot.number} already.",
            advice="Close it, and write it anew for the other lot.",
            argument="lot",
        )
    row.lot = found
    row.save(update_fields=["lot"])


def complaint_photo(number: int) -> bytes:
    """Return the photo that came with a complaint."""
    row = selling_reads.complaint_row(number)
    return kept_photo_bytes(row.photo, key=f"of complaint {number}")


def _lot(number: str) -> Lot:
    return lot_reads.lot_row(number.strip().upper())


def _short_enough(outcome: str) -> str:
    if len(outcome) > _MOST_OUTCOME:
        raise OutOfRangeError(
            name="How it ended",
            given=f"{len(outcome)} characters",
            allowed=f"at most {_MOST_OUTCOME} in all, with what stands there",
            argument="outcome",
        )
    return outcome


def _entry(row: Complaint) -> ComplaintEntry:
    lot = row.lot
    return ComplaintEntry(
        number=row.number,
        from_whom=row.from_whom,
        about=ComplaintAbout(row.about).label,
        lot="" if lot is None else lot.number,
        colourway="" if lot is None else selling_reads.sold_as(lot.bath).name,
        came_on=row.came_on,
        is_closed=row.is_closed,
    )


def _facts(row: Complaint, tests: tuple[str, ...]) -> ReplyFacts:
    here, lot = studio(), row.lot
    name = "" if here is None else here.name
    if lot is None:
        return ReplyFacts(
            to_whom=row.from_whom,
            studio=name,
            number="",
            colourway="",
            base="",
            dyed_on=None,
            tests=(),
            others=0,
        )
    buyers = {each.to_whom.casefold() for each in skeins_of(lot.number).out}
    return ReplyFacts(
        to_whom=row.from_whom,
        studio=name,
        number=lot.number,
        colourway=selling_reads.sold_as(lot.bath).name,
        base=lot.bath.base.name,
        dyed_on=lot.bath.dyed_on,
        tests=tests,
        others=len(buyers - {row.from_whom.casefold()}),
        sister_lots=_sisters(lot),
    )


def _sisters(lot: Lot) -> tuple[str, ...]:
    sold = selling_reads.sold_as(lot.bath)
    rows = lot_reads.lots_that_stand().filter(bath__base_id=lot.bath.base_id)
    corrects = Q(bath__version__recipe__correction__isnull=False)
    rows = rows.filter(Q(bath__version__recipe=sold) | corrects).exclude(pk=lot.pk)
    found = (
        row.number for row in rows if selling_reads.sold_as(row.bath).pk == sold.pk
    )
    return tuple(islice(found, _MOST_SISTERS))


def _tests(lot: Lot) -> tuple[str, ...]:
    rows = judging_reads.standing_fastness_tests().filter(lot=lot)
    return tuple(map(_test_words, rows))


def _test_words(row: FastnessTest) -> str:
    stained = ", ".join(
        f"{cloth['cloth']} {cloth['staining']:g}" for cloth in row.cloths
    )
    words = f"staining {stained}" if stained else "no cloth graded"
    changed = "" if row.change is None else f", change of shade {row.change:g}"
    return f"{row.get_kind_display().lower()}: {words}{changed} (of 5)"
