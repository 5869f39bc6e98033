"""A day has lines of its own: all off, the meters, a note. They can be undone."""

from datetime import datetime, timedelta

import pytest
from time_machine import TimeMachineFixture

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import DayLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.day_ledger import (
    DayAct,
    day_ledger,
    say_all_off,
    write_day,
)
from shadewright.workflows.stamps import this_moment, today
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded, now
from tests.workflows.pots import ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def read(act: DayAct, value: float) -> None:
    write_day(today(), act, value=value, stamp=now())


def test_all_off_stands_until_it_is_undone() -> None:
    stamp = now()
    say_all_off(today(), stamp=stamp)
    assert day_ledger(today()).all_off is not None
    undo(deed=stamp.deed, stamp=now())
    ledger = day_ledger(today())
    assert ledger.all_off is None
    assert [each.is_undone for each in ledger.entries] == [True, True]
    with pytest.raises(ConflictError, match="taken back already"):
        undo(deed=stamp.deed, stamp=now())


def test_sent_twice_it_is_written_once() -> None:
    stamp = now()
    say_all_off(today(), stamp=stamp)
    say_all_off(today(), stamp=stamp)
    assert DayLine.objects.count() == 1


def test_a_heat_that_is_put_on_later_wants_a_new_look(
    time_machine: TimeMachineFixture,
) -> None:
    founded()
    pot = ready()
    say_all_off(today(), stamp=now())
    time_machine.move_to(this_moment() + timedelta(minutes=1))
    tapped(pot.number, BathAct.HEAT_ON, "heat")
    assert day_ledger(today()).all_off is None
    say_all_off(today(), hot=["B1 Low Tide"], stamp=now())
    said = day_ledger(today()).all_off
    assert said is not None
    assert said.note == "not ticked as off: B1 Low Tide"


def test_a_meter_that_is_read_twice_tells_what_was_used() -> None:
    read(DayAct.POWER, 1204.5)
    assert day_ledger(today()).power_kwh is None
    read(DayAct.POWER, 1206.0)
    read(DayAct.POWER, 1211.0)
    read(DayAct.WATER, 88.2)
    ledger = day_ledger(today())
    assert ledger.power_kwh == pytest.approx(6.5)
    assert ledger.water_m3 is None


def test_a_meter_does_not_run_backwards() -> None:
    read(DayAct.WATER, 88.2)
    with pytest.raises(OutOfRangeError, match=r"at least 88\.2") as refused:
        read(DayAct.WATER, 82.8)
    assert refused.value.argument == "value"


def test_a_reading_wants_a_number_and_a_note_words() -> None:
    with pytest.raises(MissingError, match="water meter"):
        write_day(today(), DayAct.WATER, stamp=now())
    with pytest.raises(MissingError, match="The note"):
        write_day(today(), DayAct.NOTE, note="  ", stamp=now())
    assert day_ledger(today()).entries == ()


def test_a_line_of_yesterday_is_not_undone(time_machine: TimeMachineFixture) -> None:
    stamp = now()
    day: datetime = this_moment()
    say_all_off(today(), stamp=stamp)
    time_machine.move_to(day + timedelta(days=1))
    with pytest.raises(ConflictError, match="earlier day"):
        undo(deed=stamp.deed, stamp=now())
