"""Lots: one bath, one lot; nothing overwritten, and undone for a day."""

from pathlib import Path
from uuid import uuid4

import pytest
import time_machine

from shadewright.errors import (
    ConflictError,
    InputError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.records.models import Lot, LotLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import ColourEvidence, Grade
from shadewright.workflows.bath_pages import BathStatus, bath_now, open_baths
from shadewright.workflows.lot_pages import lot_now, lots
from shadewright.workflows.lots import (
    LotWords,
    add_photo,
    change_lot,
    finish_bath,
    note_colour,
    photo_bytes,
)
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.exchange.test_photo import photo
from tests.workflows.bench import founded, now
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db
FIRST = LotWords(grade=Grade.FIRST)


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def test_the_lot_carries_the_baths_number_and_closes_it(pot: Ready) -> None:
    number = finished(dyed(pot), grams=98.5, skeins=1, place=" Shelf  C2 ", note="Even")
    assert number == pot.number
    lot = lot_now(number)
    assert (lot.held.grams, lot.held.skeins) == (98.5, 1)
    assert lot.held.place == "Shelf C2"
    assert lot.held.notes == ("Even",)
    assert bath_now(number).status is BathStatus.FINISHED
    assert open_baths() == ()


def test_what_is_not_weighed_yet_is_not_known(pot: Ready) -> None:
    lot = lot_now(finished(dyed(pot)))
    assert lot.held.grams is None
    assert lot.held.grade is Grade.FIRST


def test_sent_twice_it_is_written_once(pot: Ready) -> None:
    dyed(pot)
    stamp = stamp_now(by=None, deed=uuid4())
    for _time in range(2):
        finish_bath(number=pot.number, said=FIRST, stamp=stamp)
    assert Lot.objects.count() == 1
    assert LotLine.objects.count() == 1


def test_a_bath_gives_one_lot(pot: Ready) -> None:
    finished(dyed(pot))
    with pytest.raises(ConflictError, match="has its lot already"):
        finished(pot.number)


def test_a_bath_not_begun_or_given_up_asks_once(pot: Ready) -> None:
    with pytest.raises(ConflictError, match="was not begun") as caught:
        finished(pot.number)
    assert caught.value.argument == "is_sure"
    tapped(pot.number, BathAct.GIVEN_UP, "")
    with pytest.raises(ConflictError, match="was given up"):
        finished(pot.number)
    assert finished(pot.number, is_sure=True) == pot.number


def test_a_lot_taken_back_opens_its_bath_and_keeps_its_number(pot: Ready) -> None:
    dyed(pot)
    stamp = now()
    finish_bath(number=pot.number, said=FIRST, stamp=stamp)
    undo(deed=stamp.deed, stamp=now())
    assert lot_now(pot.number).is_void
    assert [bath.number for bath in open_baths()] == [pot.number]
    assert not open_baths()[0].has_lot
    assert lots().count == 0
    with pytest.raises(ConflictError, match="was taken back"):
        change_lot(number=pot.number, said=FIRST, stamp=now())
    finished(pot.number, place="Rack")
    assert Lot.objects.count() == 1
    assert lot_now(pot.number).held.place == "Rack"


def test_only_what_changed_is_a_line_and_the_newest_holds(pot: Ready) -> None:
    finished(dyed(pot), skeins=2)
    said = LotWords(grade=Grade.SECOND, skeins=2, grams=99.0)
    stamp = now()
    assert change_lot(number=pot.number, said=said, stamp=stamp)
    assert not change_lot(number=pot.number, said=said, stamp=now())
    words = [
        entry.words.replace("\u00a0", " ") for entry in lot_now(pot.number).entries
    ]
    assert words[:2] == ["Weighed dry: 99 g", "Graded: Second"]
    undo(deed=stamp.deed, stamp=now())
    after = lot_now(pot.number)
    assert after.held.grade is Grade.FIRST
    assert after.held.grams is None
    assert after.entries[0].words.startswith("Undone: ")


def test_it_can_be_undone_today_and_not_tomorrow(pot: Ready) -> None:
    with time_machine.travel("2026-11-25 12:00", tick=False):
        number = pot.another()
        stamp = now()
        finish_bath(number=number, said=FIRST, stamp=stamp, is_sure=True)
        assert lot_now(number).entries[0].may_undo
    with time_machine.travel("2026-11-26 12:00", tick=False):
        assert not lot_now(number).entries[0].may_undo
        with pytest.raises(ConflictError, match="earlier day"):
            undo(deed=stamp.deed, stamp=now())


@pytest.mark.parametrize(
    ("said", "argument"),
    [({"grams": -1.0}, "grams"), ({"skeins": 10_001}, "skeins")],
)
def test_numbers_that_cannot_be_are_refused(
    pot: Ready, said: dict[str, float], argument: str
) -> None:
    dyed(pot)
    with pytest.raises(OutOfRangeError) as caught:
        finished(pot.number, **said)  # type: ignore[arg-type]
    assert caught.value.argument == argument
    assert not Lot.objects.exists()


def test_a_bath_or_lot_that_is_not_there(pot: Ready) -> None:
    with pytest.raises(NotFoundError, match="no bath"):
        finished("261125-B99")
    with pytest.raises(NotFoundError, match="no lot"):
        change_lot(number=pot.number, said=FIRST, stamp=now())


def test_colours_carry_what_they_rest_on(pot: Ready) -> None:
    finished(dyed(pot))
    for colour, evidence in (
        ("#A0522D", ColourEvidence.HEX),
        ("45, 25.5, −3", ColourEvidence.METER),
    ):
        note_colour(number=pot.number, colour=colour, evidence=evidence, stamp=now())
    noted = lot_now(pot.number).held.colour
    assert noted is not None
    assert noted.words == "L 45, a 25.5, b −3"
    assert noted.evidence == "read by a meter"
    assert noted.is_shown
    words = [entry.words for entry in lot_now(pot.number).entries]
    assert "Colour: #a0522d, picked on a screen" in words


def test_a_colour_that_is_none_is_refused(pot: Ready) -> None:
    finished(dyed(pot))
    before = LotLine.objects.count()
    with pytest.raises(InputError, match="neither Lab"):
        note_colour(
            number=pot.number,
            colour="blue-ish",
            evidence=ColourEvidence.HEX,
            stamp=now(),
        )
    assert LotLine.objects.count() == before


def test_a_photo_is_kept_anew_and_gone_when_taken_back(
    pot: Ready, folder: Path
) -> None:
    finished(dyed(pot))
    stamp = now()
    for _time in range(2):
        add_photo(number=pot.number, photo=photo(), stamp=stamp)
    kept = lot_now(pot.number).held.photo
    assert kept is not None
    content = photo_bytes(number=pot.number, line_id=kept)
    assert content.startswith(b"\xff\xd8")
    assert b"secret kitchen" not in content
    assert len(list((folder / "files" / "lots").iterdir())) == 1
    undo(deed=stamp.deed, stamp=now())
    with pytest.raises(NotFoundError, match="no photo"):
        photo_bytes(number=pot.number, line_id=kept)


def test_a_photo_whose_file_is_gone_is_said_to_be(pot: Ready, folder: Path) -> None:
    finished(dyed(pot))
    add_photo(number=pot.number, photo=photo(), stamp=now())
    next((folder / "files" / "lots").iterdir()).unlink()
    kept = lot_now(pot.number).held.photo
    with pytest.raises(NotFoundError, match="file is gone"):
        photo_bytes(number=pot.number, line_id=kept or 0)


def test_the_list_is_searched_and_sorted(pot: Ready) -> None:
    first, second, third = dyed(pot), dyed(pot, pot.another()), pot.another()
    finished(first, grams=90.0, place="Rack")
    finished(second, grade=Grade.ONE_OFF, grams=110.0)
    finished(third, is_sure=True, place="Attic")
    assert [row.number for row in lots().rows] == [third, second, first]
    assert [r.number for r in lots(order="-grams").rows] == [second, first, third]
    assert [r.number for r in lots(query="attic tide").rows] == [third]
    assert [r.number for r in lots(query="one-off").rows] == [second]
    assert lots(query="nowhere").count == 0
    assert lots(page=99).page == 1


def test_where_the_bath_went_differently_is_said(pot: Ready) -> None:
    dyed(pot, volumes_ml={pot.slate: 66.0})
    tapped(pot.number, BathAct.PROBLEM, "hold")
    went = lot_now(finished(pot.number)).went
    assert went[0].replace("\u00a0", " ").startswith("Slate: 0.66 % instead of 0.6 %")
    assert went[-1] == "Problem: not said which."
