"""What a colour is for, and which bottles it may take."""

from dataclasses import replace

import pytest

from shadewright.core.solutions.keeping import Purpose
from shadewright.errors import ConflictError
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.baths import BathPlan, BathWish, keep_bath, plan_bath
from shadewright.workflows.bottles import Look, look_at, record_strength
from shadewright.workflows.filling import Particulars
from shadewright.workflows.mending import dilute, merge
from shadewright.workflows.planned_baths import bottles_for, change_bottle, wish_of
from shadewright.workflows.recipes import version, write_version
from shadewright.workflows.stamps import today
from tests.workflows.bench import entered, made, now
from tests.workflows.pots import Ready, ready

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    """Two bottles that were entered as they stood: nobody tested either."""
    return ready()


def planned(pot: Ready, purpose: Purpose | None = None) -> BathPlan:
    return plan_bath(replace(wish_of(pot.number), purpose=purpose))


def codes(plan: BathPlan) -> list[str]:
    return [share.code for dose in plan.doses for share in dose.shares]


def test_what_must_repeat_takes_fresh_or_tested_bottles_only(pot: Ready) -> None:
    plan = planned(pot, Purpose.MUST_REPEAT)
    assert codes(plan) == []
    assert plan.troubles[0] == (
        "No bottle of Slate may be used for a colour that must repeat. "
        f"{pot.slate} is of a strength that nobody weighed or tested. "
        "Make a fresh stock, test one of these, or plan it as play."
    )
    record_strength(code=pot.slate, strength_percent=0.95, stamp=now())
    fresh = made(pot.gorse_dye).code
    assert codes(planned(pot, Purpose.MUST_REPEAT)) == [pot.slate, fresh]


def test_what_has_settled_serves_nothing_until_it_was_looked_at(pot: Ready) -> None:
    look_at(code=pot.slate, look=Look.SETTLED, stamp=now())
    for purpose in (Purpose.USUAL, Purpose.PLAY):
        plan = planned(pot, purpose)
        assert codes(plan) == [pot.gorse]
        assert "Re-warm it and look at it" in plan.troubles[0]
    look_at(code=pot.slate, look=Look.REWARMED, stamp=now())
    assert codes(planned(pot, Purpose.PLAY)) == [pot.gorse]
    look_at(code=pot.slate, look=Look.CLEAR, stamp=now())
    assert codes(planned(pot, Purpose.PLAY)) == [pot.slate, pot.gorse]


def test_a_bath_is_for_what_its_recipe_is_for_unless_it_says_otherwise(
    pot: Ready,
) -> None:
    text = replace(version(pot.version).text, purpose=Purpose.MUST_REPEAT)
    strict = write_version(parent_id=pot.version, text=text, stamp=now())
    assert strict.text.purpose is Purpose.MUST_REPEAT
    wish = BathWish(
        version_id=strict.id,
        base_id=pot.base,
        fibre_g=100.0,
        dyed_on=wish_of(pot.number).dyed_on,
    )
    assert plan_bath(wish).purpose is Purpose.MUST_REPEAT
    number = keep_bath(wish=replace(wish, purpose=Purpose.PLAY), stamp=now())
    assert bath_now(number).purpose is Purpose.PLAY
    assert wish_of(number).purpose is Purpose.PLAY


def test_another_bottle_is_held_to_the_purpose_too(pot: Ready) -> None:
    made(pot.slate_dye)
    record_strength(code=pot.gorse, strength_percent=1.0, stamp=now())
    wish = replace(wish_of(pot.number), purpose=Purpose.MUST_REPEAT)
    number = keep_bath(wish=wish, stamp=now())
    guessed = entered(pot.slate_dye).code
    assert guessed not in {each.code for each in bottles_for(number, "dose-1")}
    with pytest.raises(ConflictError, match="nobody weighed or tested"):
        change_bottle(number=number, step="dose-1", code=guessed, stamp=now())


def test_what_was_poured_in_must_be_fresh_too(pot: Ready) -> None:
    fresh = made(pot.slate_dye).code
    thinned = dilute(
        code=fresh,
        want_percent=0.5,
        volume_ml=300.0,
        stamp=now(),
        about=Particulars(made_on=today()),
    )
    assert thinned.keeping.standing.is_fresh
    old = merge(code=made(pot.slate_dye).code, from_codes=[pot.slate], stamp=now())
    assert not old.keeping.standing.is_fresh  # nobody knows when that was made
