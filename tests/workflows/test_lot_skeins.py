"""Skeins that went out: counted, never more than there are, taken back for the day."""

from uuid import uuid4

import pytest

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import SkeinsOut
from shadewright.records.models.lots import Grade
from shadewright.workflows.lot_skeins import Sending, send_out, skeins_of
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.trace_buyers import onwards_from_lot
from shadewright.workflows.trace_nodes import Kind
from shadewright.workflows.undo import undo
from tests.workflows.asked import asked_by
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def pot() -> Ready:
    return ready()


def sent(number: str, skeins: int, to_whom: str = "Bo") -> None:
    said = Sending(skeins=skeins, to_whom=to_whom)
    send_out(number=number, said=said, stamp=stamp_now(by=None))


def test_what_went_out_is_no_longer_here(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=5)
    sent(number, 3)
    sent(number, 1, "The fair")
    lot = skeins_of(number)
    assert (lot.counted, lot.gone, lot.left) == (5, 4, 1)
    assert [each.to_whom for each in lot.out] == ["Bo", "The fair"]


def test_the_skeins_of_one_lot_are_asked_once(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=5)
    sent(number, 3)
    asked = asked_by(lambda: skeins_of(number))
    assert len(set(asked)) == len(asked)


def test_the_same_deed_sent_twice_is_written_once(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=5)
    stamp, said = stamp_now(by=None), Sending(skeins=2, to_whom="Bo")
    send_out(number=number, said=said, stamp=stamp)
    send_out(number=number, said=said, stamp=stamp)
    assert SkeinsOut.objects.count() == 1


def test_undo_brings_them_back(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=5)
    deed = uuid4()
    said = Sending(skeins=2, to_whom="Bo")
    send_out(number=number, said=said, stamp=stamp_now(by=None, deed=deed))
    undo(deed=deed, stamp=stamp_now(by=None))
    assert skeins_of(number).left == 5
    assert skeins_of(number).out == ()


def test_more_than_are_left_is_refused(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=2)
    sent(number, 1)
    with pytest.raises(OutOfRangeError, match="from 1 to 1"):
        sent(number, 2)


def test_a_lot_that_nobody_counted_gives_skeins_all_the_same(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True)
    sent(number, 2)
    assert skeins_of(number).left is None


def test_nobody_is_no_buyer(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=2)
    with pytest.raises(MissingError):
        sent(number, 1, "  ")


def test_a_swatch_is_not_for_sale(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=1, grade=Grade.SWATCH)
    with pytest.raises(ConflictError, match="swatch"):
        sent(number, 1)


def test_the_tree_names_buyers_and_what_nobody_knows(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, skeins=4)
    sent(number, 3)
    tree = onwards_from_lot(number)
    buyer, left = tree.below
    assert (buyer.kind, buyer.name) == (Kind.BUYER, "Bo")
    assert left.is_missing
    assert left.name == "1 skein"
