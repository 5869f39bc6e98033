"""How long a dye keeps, from the looks that were written down."""

from datetime import timedelta

import pytest

from shadewright.core.solutions.keeping import Fate
from shadewright.core.tables.stock_age import OLD_DAYS, PAST_DAYS
from shadewright.workflows.bottles import Look, enter_bottle, look_at, record_strength
from shadewright.workflows.dye_lives import (
    dye_lives,
    life_of_dye,
    suggested_discard_day,
)
from shadewright.workflows.filling import Particulars
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import stamp_now, this_moment, today
from shadewright.workflows.undo import undo
from tests.workflows.bench import new_dye, now

pytestmark = pytest.mark.django_db


def made(dye_id: int, *, days_ago: int, is_about: bool = False) -> ShelfBottle:
    return enter_bottle(
        dye_id=dye_id,
        strength_percent=1.0,
        volume_ml=300.0,
        stamp=now(),
        about=Particulars(
            made_on=today() - timedelta(days=days_ago), is_date_about=is_about
        ),
    )


def looked(bottle: ShelfBottle, look: Look, *, days_ago: int) -> ShelfBottle:
    at = this_moment() - timedelta(days=days_ago)
    return look_at(code=bottle.code, look=look, stamp=stamp_now(by=None, at=at))


def test_looks_make_a_dye_s_life() -> None:
    dye = new_dye()
    for settles in (True, True, False, False, False):
        bottle = made(dye, days_ago=100)
        looked(bottle, Look.CLEAR, days_ago=60)
        last = Look.SETTLED if settles else Look.CLEAR
        looked(bottle, last, days_ago=50 if settles else 10)
    life = life_of_dye(dye)
    assert (life.watched, life.settled, life.is_from_checks) == (5, 2, True)
    assert life.look_by_days == 40
    assert suggested_discard_day(dye, made_on=today()) == today() + timedelta(
        days=PAST_DAYS
    )
    other = new_dye("Kelp")
    assert dye_lives()[other].watched == 0
    assert suggested_discard_day(other, made_on=today()) is None


def test_a_day_that_is_only_about_known_and_a_look_taken_back_say_nothing() -> None:
    dye = new_dye()
    looked(made(dye, days_ago=100, is_about=True), Look.SETTLED, days_ago=1)
    stamp = now()
    look_at(code=made(dye, days_ago=50).code, look=Look.SETTLED, stamp=stamp)
    undo(deed=stamp.deed, stamp=now())
    assert life_of_dye(dye).watched == 0


@pytest.mark.by_hand
def test_one_that_settled_early_makes_the_others_due_for_a_look() -> None:
    # Found settled on day 20 and never looked at before: the middle is day 10.
    dye = new_dye()
    looked(made(dye, days_ago=60), Look.SETTLED, days_ago=40)
    other = shelf_bottle(made(dye, days_ago=20).code)
    assert other.keeping.look_by == today() - timedelta(days=10)
    assert other.keeping.fate is Fate.LOOK
    assert other.trouble == "look first"
    assert not looked(other, Look.CLEAR, days_ago=0).trouble


@pytest.mark.by_hand
def test_days_left_by_common_practice() -> None:
    # 182 − 20 = 162 of 182 days.
    keeping = made(new_dye(), days_ago=20).keeping
    assert keeping.look_by == today() + timedelta(days=OLD_DAYS - 20)
    assert keeping.days_left == 162
    assert keeping.life_left == pytest.approx(162 / 182)
    assert not keeping.is_own_life


def test_a_test_lets_an_old_bottle_serve_again() -> None:
    bottle = made(new_dye(), days_ago=200)
    assert bottle.trouble == "test or pour"
    tested = record_strength(code=bottle.code, strength_percent=0.9, stamp=now())
    assert not tested.trouble
    assert tested.keeping.standing.tested_days == 0


def test_a_settled_bottle_is_re_warmed_and_then_looked_at() -> None:
    bottle = made(new_dye(), days_ago=5)
    settled = looked(bottle, Look.SETTLED, days_ago=0)
    assert settled.keeping.fate is Fate.REWARM
    assert looked(bottle, Look.REWARMED, days_ago=0).keeping.fate is Fate.LOOK
    assert looked(bottle, Look.CLEAR, days_ago=0).keeping.fate is Fate.KEEP
