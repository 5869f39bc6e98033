"""Which bottles a job may use, and what a bottle asks for next."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions.keeping import (
    Fate,
    Purpose,
    Standing,
    fate,
    refusal,
)

FRESH = Standing(is_settled=False, is_fresh=True, is_past=False)
OLD = replace(FRESH, is_fresh=False)
PAST = replace(OLD, is_past=True)
MUST, USUAL, PLAY = Purpose.MUST_REPEAT, Purpose.USUAL, Purpose.PLAY


@pytest.mark.parametrize(
    ("standing", "allowed"),
    [
        (FRESH, {MUST, USUAL, PLAY}),
        (OLD, {USUAL, PLAY}),
        (PAST, {PLAY}),
        (replace(FRESH, is_guess=True), {USUAL, PLAY}),
        (replace(OLD, tested_days=28), {MUST, USUAL, PLAY}),
        (replace(OLD, tested_days=29), {USUAL, PLAY}),
        (replace(PAST, tested_days=0), {MUST, USUAL, PLAY}),
        (replace(FRESH, is_settled=True), set()),
        (replace(OLD, is_settled=True, tested_days=0), set()),
    ],
)
def test_what_a_bottle_may_be_used_for(
    standing: Standing, allowed: set[Purpose]
) -> None:
    assert {each for each in Purpose if not refusal(standing, purpose=each)} == allowed


STANDINGS = st.builds(
    Standing,
    is_settled=st.booleans(),
    is_fresh=st.booleans(),
    is_past=st.booleans(),
    is_guess=st.booleans(),
    tested_days=st.none() | st.integers(0, 60),
)


@given(standing=STANDINGS)
def test_law_what_may_repeat_may_do_all_and_what_is_usual_may_play(
    standing: Standing,
) -> None:
    may = [not refusal(standing, purpose=each) for each in (MUST, USUAL, PLAY)]
    assert may == sorted(may)


@pytest.mark.parametrize(
    ("standing", "asked", "found"),
    [
        (FRESH, {}, Fate.KEEP),
        (OLD, {}, Fate.KEEP),
        (OLD, {"is_due": True}, Fate.LOOK),
        (PAST, {"is_due": True}, Fate.TEST),
        (replace(PAST, tested_days=3), {}, Fate.KEEP),
        (replace(FRESH, is_settled=True), {}, Fate.REWARM),
        (replace(FRESH, is_settled=True), {"is_rewarmed": True}, Fate.LOOK),
        (replace(PAST, is_settled=True), {"is_rewarmed": True}, Fate.POUR),
        (FRESH, {"is_empty": True}, Fate.POUR),
    ],
)
def test_what_a_bottle_asks_for(
    standing: Standing, asked: dict[str, bool], found: Fate
) -> None:
    facts = {"is_empty": False, "is_rewarmed": False, "is_due": False, **asked}
    assert fate(standing, **facts) is found
