"""The clocks of a bath: begun by a tick, put off, heard, called for on the way up."""

import pytest

from shadewright.records.models.baths import BathAct
from shadewright.records.models.recipes import When
from shadewright.records.recipe_reads import bath_row
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.rounds import touches_of
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


@pytest.mark.by_hand
def test_clocks_begin_with_the_first_tick_and_can_be_put_off(pot: Ready) -> None:
    begun = ago(minutes=10)
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=begun)
    tapped(pot.number, BathAct.HEAT_ON, "heat")  # the second phone
    look, top = bath_now(pot.number).clocks
    assert (look.key, (look.rings_at - begun).total_seconds()) == ("look", 900)
    assert (top.key, (top.rings_at - begun).total_seconds()) == ("top", 3000)  # 50/1
    tapped(pot.number, BathAct.NOTE, "look/more", value=5.0, unit="min")
    later = bath_now(pot.number).clocks[0]
    assert (later.rings_at - begun).total_seconds() == 1200
    tapped(pot.number, BathAct.HEAT_OFF, "off")
    assert bath_now(pot.number).clocks == ()


@pytest.mark.by_hand
def test_acid_on_the_way_up_is_called_for_at_its_minute() -> None:
    founded()
    number = ready(when=When.ON_THE_WAY, at_c=60.0).number
    begun = ago(minutes=1)
    tapped(number, BathAct.HEAT_ON, "heat", at=begun)
    look, acid, top = bath_now(number).clocks
    assert [look.key, acid.key, top.key] == ["look", "add-1", "top"]
    assert (acid.rings_at - begun).total_seconds() == 1200  # (60 - 40) / 1
    assert acid.words == "B1 Low Tide: Citric acid"
    tapped(number, BathAct.ADDED, "add-1", value=2.0, unit="g")
    assert [each.key for each in bath_now(number).clocks] == ["look", "top"]
    assert touches_of(bath_row(number)) == (20.0,)


def test_an_alarm_that_was_heard_is_silent_until_the_next(pot: Ready) -> None:
    tapped(pot.number, BathAct.HEAT_ON, "heat", at=ago(minutes=16))
    assert not bath_now(pot.number).clocks[0].is_heard
    tapped(pot.number, BathAct.NOTE, "look/heard")
    assert bath_now(pot.number).clocks[0].is_heard
    tapped(pot.number, BathAct.CHECKED, "look")
    assert [clock.key for clock in bath_now(pot.number).clocks] == ["top"]
