"""Undo: a counter-line, all day long, in every ledger that a deed wrote in."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest
from django.utils import timezone
from time_machine import TimeMachineFixture

from shadewright.errors import ConflictError, NotFoundError
from shadewright.records.models import BottleLine, JarLine
from shadewright.workflows.bottles import (
    Look,
    draw,
    look_at,
    pour_away,
    read_level,
    record_strength,
)
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import count_jar, jar
from shadewright.workflows.ledger_pages import bottle_page, jar_page
from shadewright.workflows.mending import (
    add_powder,
    add_stock,
    add_water,
    dilute,
    merge,
)
from shadewright.workflows.shelf import ShelfBottle, shelf, shelf_bottle
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.undo import undo
from tests.workflows.bench import entered, made, new_dye, new_jar, now

pytestmark = pytest.mark.django_db

RESTS = "Something later rests on this"


@pytest.fixture
def dye_id() -> int:
    return new_dye()


@pytest.fixture
def bottle(dye_id: int) -> ShelfBottle:
    return entered(dye_id)


def done(act: Callable[[Stamp], object]) -> Stamp:
    stamp = now()
    act(stamp)
    return stamp


def take_back(stamp: Stamp) -> None:
    undo(deed=stamp.deed, stamp=now())


@pytest.mark.parametrize(
    "act",
    [
        lambda code, stamp: draw(code=code, volume_ml=35.0, stamp=stamp),
        lambda code, stamp: look_at(code=code, look=Look.SETTLED, stamp=stamp),
        lambda code, stamp: record_strength(
            code=code, strength_percent=0.8, stamp=stamp
        ),
        lambda code, stamp: read_level(
            code=code, volume_ml=400.0, is_evaporated=True, stamp=stamp
        ),
        lambda code, stamp: add_water(code=code, volume_ml=100.0, stamp=stamp),
        lambda code, stamp: add_powder(
            code=code, powder_g=1.0, jar_id=None, stamp=stamp
        ),
        lambda code, stamp: pour_away(code=code, stamp=stamp),
    ],
    ids=["draw", "look", "test", "evaporated", "water", "powder", "pour"],
)
def test_whatever_was_done_to_a_bottle_can_be_taken_back(
    bottle: ShelfBottle, act: Callable[[str, Stamp], object]
) -> None:
    stamp = done(lambda stamp: act(bottle.code, stamp))
    assert shelf_bottle(bottle.code) != bottle
    take_back(stamp)
    assert shelf_bottle(bottle.code) == bottle
    newest, undone, first = bottle_page(bottle.code).entries
    assert newest.words.startswith("Undone: ")
    assert (undone.is_undone, undone.may_undo, undone.left) == (True, False, None)
    assert (first.is_undone, first.may_undo) == (False, True)


def test_making_a_stock_is_taken_back_in_bottle_and_jar(dye_id: int) -> None:
    jar_id = new_jar(dye_id)
    stamp = now()
    code = made(dye_id, jar_id, stamp=stamp).code
    assert jar(jar_id).left_g == 95.0
    take_back(stamp)
    assert jar(jar_id).left_g == 100.0
    assert shelf() == ()
    assert shelf_bottle(code).trouble == "taken back"
    with pytest.raises(ConflictError, match="taken back"):
        draw(code=code, volume_ml=1.0, stamp=now())
    assert [entry.is_undone for entry in jar_page(jar_id).entries] == [
        False,
        True,
        False,
    ]


def test_powder_is_taken_back_in_bottle_and_jar(
    dye_id: int, bottle: ShelfBottle
) -> None:
    jar_id = new_jar(dye_id)
    stamp = done(
        lambda stamp: add_powder(
            code=bottle.code, powder_g=2.0, jar_id=jar_id, stamp=stamp
        )
    )
    take_back(stamp)
    assert jar(jar_id).left_g == 100.0
    assert shelf_bottle(bottle.code) == bottle


def test_a_merge_is_taken_back_in_every_bottle(
    dye_id: int, bottle: ShelfBottle
) -> None:
    others = [entered(dye_id, volume_ml=100.0 * n, strength_percent=n) for n in (1, 2)]
    stamp = done(
        lambda stamp: merge(
            code=bottle.code, from_codes=[one.code for one in others], stamp=stamp
        )
    )
    take_back(stamp)
    before = {one.code: one for one in (bottle, *others)}
    assert {one.code: one for one in shelf()} == before


def test_a_dilution_is_taken_back_in_both_bottles(bottle: ShelfBottle) -> None:
    stamp = done(
        lambda stamp: dilute(
            code=bottle.code,
            want_percent=0.5,
            volume_ml=100.0,
            stamp=stamp,
            about=Particulars(),
        )
    )
    take_back(stamp)
    assert shelf() == (bottle,)


def test_an_undo_is_written_once_and_is_no_deed_to_undo(bottle: ShelfBottle) -> None:
    stamp = done(lambda stamp: draw(code=bottle.code, volume_ml=35.0, stamp=stamp))
    undoing = now()
    for _ in range(2):
        undo(deed=stamp.deed, stamp=undoing)
    assert BottleLine.objects.filter(act="undone").count() == 1
    with pytest.raises(ConflictError, match="taken back already"):
        take_back(stamp)
    with pytest.raises(ConflictError, match="taken back already"):
        take_back(undoing)


def test_what_was_never_done_cannot_be_undone() -> None:
    with pytest.raises(NotFoundError, match="no act to undo"):
        undo(deed=uuid4(), stamp=now())


def test_the_middle_can_be_taken_back_if_what_follows_still_adds_up(
    bottle: ShelfBottle,
) -> None:
    first = done(lambda stamp: draw(code=bottle.code, volume_ml=100.0, stamp=stamp))
    draw(code=bottle.code, volume_ml=50.0, stamp=now())
    take_back(first)
    assert shelf_bottle(bottle.code).volume_ml == 450.0


def _water_then_all_drawn(bottle: ShelfBottle) -> Stamp:
    stamp = done(lambda s: add_water(code=bottle.code, volume_ml=100.0, stamp=s))
    draw(code=bottle.code, volume_ml=550.0, stamp=now())
    return stamp


def _filled_then_looked_at(bottle: ShelfBottle) -> Stamp:
    stamp = now()
    code = made(bottle.dye_id, stamp=stamp).code
    look_at(code=code, look=Look.CLEAR, stamp=now())
    return stamp


def _water_then_much_powder(bottle: ShelfBottle) -> Stamp:
    stamp = done(lambda s: add_water(code=bottle.code, volume_ml=500.0, stamp=s))
    add_powder(code=bottle.code, powder_g=300.0, jar_id=None, stamp=now())
    return stamp


def _tested_then_poured_over(bottle: ShelfBottle) -> Stamp:
    stamp = done(
        lambda s: record_strength(code=bottle.code, strength_percent=1.1, stamp=s)
    )
    other = entered(bottle.dye_id)
    add_stock(code=other.code, from_code=bottle.code, volume_ml=50.0, stamp=now())
    return stamp


def _mended_then_diluted(bottle: ShelfBottle) -> Stamp:
    stamp = done(
        lambda s: add_powder(code=bottle.code, powder_g=1.0, jar_id=None, stamp=s)
    )
    dilute(
        code=bottle.code,
        want_percent=0.5,
        volume_ml=50.0,
        stamp=now(),
        about=Particulars(),
    )
    return stamp


def _merged_then_drawn(bottle: ShelfBottle) -> Stamp:
    other = entered(bottle.dye_id)
    stamp = done(lambda s: merge(code=bottle.code, from_codes=[other.code], stamp=s))
    draw(code=bottle.code, volume_ml=600.0, stamp=now())
    return stamp


@pytest.mark.parametrize(
    "history",
    [
        _water_then_all_drawn,
        _filled_then_looked_at,
        _water_then_much_powder,
        _tested_then_poured_over,
        _mended_then_diluted,
        _merged_then_drawn,
    ],
)
def test_what_something_later_rests_on_is_not_taken_back_alone(
    bottle: ShelfBottle, history: Callable[[ShelfBottle], Stamp]
) -> None:
    stamp = history(bottle)
    before = (BottleLine.objects.count(), shelf())
    with pytest.raises(ConflictError, match=RESTS):
        take_back(stamp)
    assert (BottleLine.objects.count(), shelf()) == before


def test_a_jar_never_holds_less_than_nothing(dye_id: int) -> None:
    jar_id = new_jar(dye_id, powder_g=10.0)
    made(dye_id, jar_id, powder_g=9.0)
    more = done(lambda s: count_jar(jar_id=jar_id, reading_g=10.0, stamp=s))
    made(dye_id, jar_id, powder_g=8.0)
    with pytest.raises(ConflictError, match=RESTS):
        take_back(more)
    assert jar(jar_id).left_g == 2.0
    assert JarLine.objects.count() == 4


def test_undo_holds_all_day_and_not_after_midnight(
    dye_id: int, time_machine: TimeMachineFixture
) -> None:
    zone = timezone.get_current_timezone()
    morning = datetime(2026, 11, 25, 0, 1, tzinfo=zone)
    time_machine.move_to(morning, tick=False)
    bottle = entered(dye_id)
    stamps = [
        done(lambda s: draw(code=bottle.code, volume_ml=10.0, stamp=s))
        for _ in range(2)
    ]
    time_machine.move_to(morning + timedelta(hours=23, minutes=58), tick=False)
    assert bottle_page(bottle.code).entries[0].may_undo
    take_back(stamps[1])
    time_machine.move_to(morning + timedelta(hours=24), tick=False)
    assert not any(entry.may_undo for entry in bottle_page(bottle.code).entries)
    with pytest.raises(ConflictError, match="on an earlier day"):
        take_back(stamps[0])
    assert shelf_bottle(bottle.code).volume_ml == 490.0


@pytest.mark.parametrize("zone", ["Pacific/Auckland", "America/Los_Angeles"])
def test_the_day_is_the_studios_own(
    dye_id: int, time_machine: TimeMachineFixture, zone: str
) -> None:
    """One local day lies in two days of Greenwich."""
    with timezone.override(zone):
        local = timezone.get_current_timezone()
        time_machine.move_to(datetime(2026, 11, 25, 1, tzinfo=local), tick=False)
        bottle = made(dye_id)
        assert bottle.made_on == datetime(2026, 11, 25, tzinfo=UTC).date()
        stamp = done(lambda s: draw(code=bottle.code, volume_ml=10.0, stamp=s))
        time_machine.move_to(datetime(2026, 11, 25, 23, tzinfo=local), tick=False)
        assert made(dye_id).made_on == bottle.made_on
        take_back(stamp)
        assert shelf_bottle(bottle.code).volume_ml == 500.0
