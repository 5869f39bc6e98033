"""What hangs on the rack, and when it should be dry."""

from datetime import timedelta

import pytest

from shadewright.records.models import Bath, DyeRoom, Studio
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.rack import rack_now, rack_used, take_off_rack
from shadewright.workflows.lots import Grade, LotWords, change_lot
from shadewright.workflows.stamps import this_moment
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded, now
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]

HOUR = 60.0


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def test_nothing_hangs_in_a_new_studio() -> None:
    rack = rack_now()
    assert (rack.slots, rack.skeins, rack.hung) == (40, 0, ())


def test_yarn_hangs_until_it_is_called_dry(pot: Ready) -> None:
    Bath.objects.filter(number=pot.number).update(skeins=4)
    tapped(pot.number, BathAct.HUNG, "", at=ago(minutes=10 * HOUR))
    (one,) = rack_now().hung
    assert (one.skeins, one.is_counted) == (4, True)
    assert one.dry_at - one.hung_at == timedelta(hours=36)  # the room's usual hours
    stamp = now()
    take_off_rack(pot.number, stamp=stamp)
    assert rack_now().skeins == 0
    undo(deed=stamp.deed, stamp=now())
    assert rack_now().skeins == 4


def test_what_should_be_dry_by_then_is_not_planned_around(pot: Ready) -> None:
    studio = Studio.objects.get()
    DyeRoom.objects.create(studio=studio, dry_hours=24.0, rack_slots=12)
    other = pot.another(fibre_g=250.0)
    tapped(pot.number, BathAct.HUNG, "", at=ago(minutes=30 * HOUR))
    tapped(other, BathAct.HUNG, "", at=ago(minutes=10 * HOUR))
    at = this_moment()
    assert rack_now().slots == 12
    assert rack_now().skeins == 4  # 100 g and 250 g, in skeins of 100 g
    assert rack_used(at) == 3
    assert rack_used(at + timedelta(hours=13)) == 3
    assert rack_used(at + timedelta(hours=15)) == 0


def test_the_line_may_say_how_many_were_hung(pot: Ready) -> None:
    tapped(pot.number, BathAct.HUNG, "", value=3, unit="skeins")
    assert rack_now().skeins == 3


def test_what_was_taken_back_hangs_no_more(pot: Ready) -> None:
    deed = tapped(pot.number, BathAct.HUNG, "")
    undo(deed=deed, stamp=now())
    assert rack_now().hung == ()


def test_a_lot_that_was_weighed_dry_hangs_no_more(pot: Ready) -> None:
    tapped(pot.number, BathAct.HUNG, "")
    finished(pot.number, is_sure=True)
    assert rack_now().skeins == 1
    change_lot(
        number=pot.number,
        said=LotWords(grade=Grade.FIRST, grams=101.0),
        stamp=now(),
    )
    assert rack_now().skeins == 0
