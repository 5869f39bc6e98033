"""Planned baths: their numbers, planning anew, giving up, another bottle, lists."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from shadewright.errors import (
    ConflictError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.records.models import (
    Bath,
    Lot,
)
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_lists import (
    baths_of_recipe,
    coming_baths,
    past_baths,
)
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.baths import BathPlan, BathWish, keep_bath, plan_bath
from shadewright.workflows.bottles import Look, look_at
from shadewright.workflows.planned_baths import (
    bottles_for,
    change_bottle,
    give_up,
    plan_anew,
)
from shadewright.workflows.recipes import recipe, version
from shadewright.workflows.stamps import today
from shadewright.workflows.undo import undo
from tests.workflows.bench import entered, founded, now
from tests.workflows.pots import Ready, ready, tapped
from tests.workflows.test_at_once import at_once

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    return ready()


def wish(pot: Ready, **said: Any) -> BathWish:  # ruff: ignore[any-type]
    plain = BathWish(
        version_id=pot.version, base_id=pot.base, fibre_g=100.0, dyed_on=today()
    )
    return replace(plain, **said)


def shares(plan: BathPlan) -> list[tuple[str, float]]:
    return [(s.code, round(s.volume_ml, 6)) for d in plan.doses for s in d.shares]


def test_numbers_go_on_by_day_and_kind_and_are_never_used_again(pot: Ready) -> None:
    day = f"{today():%y%m%d}"
    assert pot.number == f"{day}-B1"
    assert keep_bath(wish=wish(pot, fibre_g=10, is_swatch=True), stamp=now()) == (
        f"{day}-S1"
    )
    second = keep_bath(wish=wish(pot), stamp=now())
    give_up(number=second, why="no time", stamp=now())
    assert keep_bath(wish=wish(pot), stamp=now()) == f"{day}-B3"
    tomorrow = today() + timedelta(days=1)
    assert keep_bath(wish=wish(pot, dyed_on=tomorrow), stamp=now()) == (
        f"{tomorrow:%y%m%d}-B1"
    )


def test_a_bath_is_planned_once_for_one_deed(pot: Ready) -> None:
    stamp = now()
    assert keep_bath(wish=wish(pot), stamp=stamp) == keep_bath(
        wish=wish(pot, fibre_g=50.0), stamp=stamp
    )
    assert Bath.objects.count() == 2


@pytest.mark.django_db(transaction=True)
def test_people_who_plan_at_once_never_get_one_number() -> None:
    founded()
    pot = ready()
    stamp = now()
    twice = [lambda: keep_bath(wish=wish(pot), stamp=stamp)] * 2
    others = [lambda: keep_bath(wish=wish(pot), stamp=now())] * 5
    assert at_once(*twice, *others) == []
    numbers = sorted(Bath.objects.values_list("number", flat=True))
    assert numbers == [f"{today():%y%m%d}-B{count}" for count in range(1, 8)]


@pytest.mark.django_db(transaction=True)
def test_a_bath_is_planned_anew_once() -> None:
    founded()
    pot = ready()
    raised = at_once(
        *[lambda: plan_anew(number=pot.number, wish=wish(pot), stamp=now())] * 3
    )
    assert [type(error) for error in raised] == [ConflictError] * 2
    assert Bath.objects.count() == 2


def test_planning_anew_gives_the_old_one_up_and_frees_its_bottles() -> None:
    pot = ready(bottle_ml=70.0)
    stamp = now()
    new = plan_anew(number=pot.number, wish=wish(pot, fibre_g=110.0), stamp=stamp)
    assert (
        shares(plan_bath(wish(pot, fibre_g=110.0), instead_of=new))[0][0] == pot.slate
    )
    old = bath_now(pot.number)
    assert old.status is BathStatus.GIVEN_UP
    assert old.lines[0].note == f"planned anew as {new}"
    assert plan_anew(number=pot.number, wish=wish(pot), stamp=stamp) == new
    tapped(new, BathAct.STARTED, "fill")
    with pytest.raises(ConflictError, match="has begun"):
        plan_anew(number=new, wish=wish(pot), stamp=now())


def test_a_bath_is_given_up_once_and_may_be_taken_back(pot: Ready) -> None:
    stamp = now()
    for _ in range(2):
        give_up(number=pot.number, why="  yarn felted ", stamp=stamp)
    assert bath_now(pot.number).lines[0].note == "yarn felted"
    with pytest.raises(ConflictError, match="is over"):
        give_up(number=pot.number, why="", stamp=now())
    undo(deed=stamp.deed, stamp=now())
    assert bath_now(pot.number).status is BathStatus.PLANNED
    Lot.objects.create(bath=Bath.objects.get(number=pot.number), number=pot.number)
    with pytest.raises(ConflictError, match="is over"):
        give_up(number=pot.number, why="", stamp=now())
    with pytest.raises(NotFoundError):
        give_up(number="nothing", why="", stamp=now())


@pytest.mark.by_hand
def test_another_bottle_is_reckoned_with_its_own_strength(pot: Ready) -> None:
    # 0.6 g from 2 % are 30 ml.
    strong = entered(pot.slate_dye, strength_percent=2.0).code
    assert [x.code for x in bottles_for(pot.number, "dose-1")] == sorted([
        pot.slate,
        strong,
    ])
    stamp = now()
    for _ in range(2):
        change_bottle(number=pot.number, step="dose-1", code=strong, stamp=stamp)
    now_ = bath_now(pot.number)
    step = next(x.step for x in now_.steps if x.step.key == "dose-1")
    assert step.code == strong
    assert step.amount == pytest.approx(30.0)
    assert now_.status is BathStatus.PLANNED
    assert f"from {strong}, was planned from {pot.slate}" in now_.lines[0].note
    assert len(now_.lines) == 1
    assert not now_.lines[0].may_undo
    with pytest.raises(ConflictError, match="Choose the other bottle again"):
        undo(deed=stamp.deed, stamp=now())


def test_a_bottle_that_cannot_give_the_dose_is_refused(pot: Ready) -> None:
    little = entered(pot.slate_dye, volume_ml=59.0).code
    settled = entered(pot.slate_dye).code
    look_at(code=settled, look=Look.SETTLED, stamp=now())
    cases: dict[str, type[OutOfRangeError | ConflictError]] = {
        little: OutOfRangeError,
        settled: ConflictError,
        pot.gorse: OutOfRangeError,
    }
    for code, kind in cases.items():
        with pytest.raises(kind) as refused:
            change_bottle(number=pot.number, step="dose-1", code=code, stamp=now())
        assert refused.value.argument == "bottle"
    assert [x.code for x in bottles_for(pot.number, "dose-1")] == [pot.slate]
    with pytest.raises(NotFoundError):
        change_bottle(number=pot.number, step="dose-9", code=pot.slate, stamp=now())


def test_a_dose_in_the_pot_keeps_its_bottle(pot: Ready) -> None:
    other = entered(pot.slate_dye).code
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60, unit="ml", bottle=pot.slate)
    with pytest.raises(ConflictError, match="in the pot already"):
        change_bottle(number=pot.number, step="dose-1", code=other, stamp=now())
    give_up(number=pot.number, why="", stamp=now())
    with pytest.raises(ConflictError, match="is over"):
        change_bottle(number=pot.number, step="dose-2", code=other, stamp=now())


def test_the_lists_tell_where_each_bath_is(pot: Ready) -> None:
    coming = keep_bath(wish=wish(pot, dyed_on=today() + timedelta(days=2)), stamp=now())
    gone = keep_bath(wish=wish(pot, dyed_on=today() - timedelta(days=2)), stamp=now())
    left = keep_bath(wish=wish(pot, dyed_on=today() - timedelta(days=3)), stamp=now())
    tapped(left, BathAct.STARTED, "fill")
    assert [(x.number, x.status) for x in coming_baths()] == [
        (left, BathStatus.GOING),
        (pot.number, BathStatus.PLANNED),
        (coming, BathStatus.PLANNED),
    ]
    assert [each.number for each in past_baths().rows] == [gone, left]
    assert [each.number for each in past_baths(without={gone}).rows] == [left]
    assert [each.number for each in past_baths("low fell").rows] == [gone, left]
    assert past_baths("moor").rows == ()
    tide = recipe(version(pot.version).recipe_id)
    assert len(baths_of_recipe(tide.id, most=5)) == 4
    assert len(baths_of_recipe(tide.id, most=3)) == 3
