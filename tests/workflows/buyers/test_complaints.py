"""A complaint with its kit: circles, tests, and a draft that promises nothing."""

from datetime import date, timedelta
from uuid import uuid4

import pytest

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.records.models import FastnessTest, Lot
from shadewright.workflows.buyers.complaints import (
    ComplaintAbout,
    ComplaintWords,
    close_complaint,
    complaint_now,
    complaints,
    keep_complaint,
    name_lot,
)
from shadewright.workflows.buyers.replies import ReplyFacts, draft_reply
from shadewright.workflows.lot_skeins import Sending, send_out
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]

BLEEDS = ComplaintAbout.BLEEDS


@pytest.fixture
def pot() -> Ready:
    return ready()


@pytest.fixture
def lot(pot: Ready) -> str:
    return finished(pot.number, is_sure=True, skeins=4)


def kept(lot: str, **said: object) -> int:
    words = {"from_whom": "Bo", "about": BLEEDS, "lot": lot} | said
    complaint = ComplaintWords(**words)  # type: ignore[arg-type]
    return keep_complaint(said=complaint, stamp=stamp_now(by=None))


def test_a_complaint_finds_who_else_has_it_and_how_it_was_tested(lot: str) -> None:
    said = Sending(skeins=2, to_whom="Tam")
    send_out(number=lot, said=said, stamp=stamp_now(by=None))
    row = Lot.objects.get(number=lot)
    FastnessTest.objects.create(
        lot=row, deed=uuid4(), kind="bleed", cloths=[{"cloth": "wool", "staining": 4.5}]
    )
    now = complaint_now(kept(lot, said="It ran in the bath"))
    assert now.reaches[0].out == 2
    assert now.tests == ("bleed, wet on white: staining wool 4.5 (of 5)",)
    assert f"lot {lot}" in now.reply
    assert "One other buyer" in now.reply
    assert "staining wool 4.5" in now.reply


def test_sent_twice_it_is_written_once(lot: str) -> None:
    stamp = stamp_now(by=None)
    words = ComplaintWords(from_whom="Bo", about=BLEEDS, lot=lot)
    first = keep_complaint(said=words, stamp=stamp)
    assert keep_complaint(said=words, stamp=stamp) == first
    assert len(complaints()) == 1


def test_without_a_lot_it_is_kept_and_asks_for_one() -> None:
    ready()
    now = complaint_now(kept(""))
    assert now.reaches == ()
    assert "the lot number on its tag" in now.reply


def test_a_lot_that_is_not_there_is_refused() -> None:
    ready()
    with pytest.raises(NotFoundError):
        kept("990101-B9")


def test_it_comes_from_somebody_and_not_tomorrow(lot: str) -> None:
    with pytest.raises(MissingError):
        kept(lot, from_whom=" ")
    with pytest.raises(OutOfRangeError):
        kept(lot, came_on=today() + timedelta(days=1))


def test_closed_twice_it_says_both(lot: str) -> None:
    number = kept(lot)
    close_complaint(number=number, outcome="New skeins sent")
    close_complaint(number=number, outcome="They hold")
    now = complaint_now(number)
    assert now.entry.is_closed
    assert now.outcome == "New skeins sent; They hold"
    close_complaint(number=number, outcome="They hold")
    assert complaint_now(number).outcome == "New skeins sent; They hold"
    with pytest.raises(OutOfRangeError, match="in all"):
        close_complaint(number=number, outcome="x" * 290)


def test_the_lot_is_named_once_the_tag_is_found(pot: Ready, lot: str) -> None:
    number = kept("")
    with pytest.raises(NotFoundError):
        name_lot(number=number, lot="990101-B9")
    name_lot(number=number, lot=f" {lot.lower()} ")
    assert complaint_now(number).entry.lot == lot
    other = finished(pot.another(), is_sure=True)
    with pytest.raises(ConflictError, match="already"):
        name_lot(number=number, lot=other)


def test_a_draft_says_no_more_than_is_written_down(lot: str) -> None:
    reply = complaint_now(kept(lot)).reply
    assert "Nobody else is written down" in reply
    assert "No bleed or rub test of this lot is written down" in reply
    assert "test" not in complaint_now(kept("")).reply


@pytest.mark.parametrize("about", ComplaintAbout)
def test_no_draft_promises_safety_or_law(about: ComplaintAbout) -> None:
    facts = ReplyFacts(
        to_whom="Bo",
        studio="Fell Lane",
        number="261125-B2",
        colourway="Low Tide",
        base="Fell DK",
        dyed_on=date(2026, 11, 25),
        tests=(),
        others=0,
    )
    text = draft_reply(about, facts).casefold()
    assert "25\xa0nov 2026" in text
    for word in ("safe", "legal", "guarantee", "certified", "colourfast"):
        assert word not in text
