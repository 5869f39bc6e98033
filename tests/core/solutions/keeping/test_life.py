"""How long a dye keeps, from the studio's own looks."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.core.solutions.keeping import Seen, Watch, dye_life, watched
from shadewright.core.solutions.ledger import BottleAct
from shadewright.core.tables.stock_age import OLD_DAYS, PAST_DAYS

CLEAR, SETTLED, REWARMED = BottleAct.CLEAR, BottleAct.SETTLED, BottleAct.REWARMED


def seen(*looks: tuple[int, BottleAct]) -> Watch | None:
    return watched(Seen(days=days, act=act) for days, act in looks)


@pytest.mark.parametrize(
    ("looks", "watch"),
    [
        ([], None),
        ([(3, BottleAct.STIRRED)], None),
        ([(3, CLEAR), (40, CLEAR)], Watch(clear_days=40)),
        ([(3, CLEAR), (40, SETTLED)], Watch(clear_days=3, settled_days=40)),
        ([(12, SETTLED)], Watch(clear_days=0, settled_days=12)),
        ([(12, CLEAR), (12, SETTLED)], Watch(clear_days=11, settled_days=12)),
        ([(0, SETTLED)], Watch(clear_days=0, settled_days=1)),
        # What was re-warmed lives a second life, which does not count.
        ([(5, CLEAR), (9, REWARMED), (50, CLEAR)], Watch(clear_days=5)),
        (
            [(5, CLEAR), (9, SETTLED), (10, REWARMED), (10, CLEAR), (70, SETTLED)],
            Watch(clear_days=5, settled_days=9),
        ),
    ],
)
def test_looks_make_a_watch(
    looks: list[tuple[int, BottleAct]], watch: Watch | None
) -> None:
    assert seen(*looks) == watch


def test_without_a_look_common_practice_stands() -> None:
    life = dye_life([])
    assert (life.look_by_days, life.discard_by_days) == (OLD_DAYS, PAST_DAYS)
    assert not life.is_from_checks
    assert life.words == "No bottle has been watched yet: common practice stands."


def test_too_few_is_said() -> None:
    life = dye_life([Watch(clear_days=day) for day in (12, 60, 30)])
    assert not life.is_from_checks
    assert life.words == "3 bottles watched, none settled by day 60: too few to say."


@pytest.mark.by_hand
def test_one_that_settled_early_calls_for_an_earlier_look() -> None:
    # Clear on day 20, settled on day 33: the middle of the gap is 26.5.
    life = dye_life([Watch(clear_days=20, settled_days=33), Watch(clear_days=60)])
    assert (life.look_by_days, life.discard_by_days) == (26, PAST_DAYS)
    assert life.words == "1 of 2 bottles settled: too few to say."


def test_mix_fresh_is_for_the_day_whatever_was_seen() -> None:
    many = [Watch(clear_days=50, settled_days=60)] * 6
    life = dye_life(many, is_mix_fresh=True)
    assert (life.look_by_days, life.discard_by_days) == (1, 1)
    assert not life.is_from_checks


@pytest.mark.by_hand
def test_enough_looks_make_a_life_of_their_own() -> None:
    # Ten bottles: one settled after day 30, five more after day 60, four are clear at
    # 90. After 30 nine in ten are clear still; after 60 four in ten: below a half.
    life = dye_life([
        Watch(clear_days=30, settled_days=40),
        *[Watch(clear_days=60, settled_days=70)] * 5,
        *[Watch(clear_days=90)] * 4,
    ])
    assert life.is_from_checks
    assert (life.look_by_days, life.discard_by_days) == (60, 60)
    assert life.words.startswith("6 of 10 bottles settled: nine in ten are clear up to")
    assert life.look_by_range is not None
    first, last = life.look_by_range
    assert first == 30
    assert last == 70


@pytest.mark.by_hand
def test_a_dye_that_keeps_long_may_outlive_common_practice() -> None:
    # Two of ten after day 250: eight in ten are left, which is below nine; the curve
    # never comes below a half.
    life = dye_life([
        *[Watch(clear_days=250, settled_days=300)] * 2,
        *[Watch(clear_days=320)] * 8,
    ])
    assert life.look_by_days == 250
    assert life.discard_by_days == 250


WATCHES = st.lists(
    st.tuples(st.integers(0, 300), st.none() | st.integers(1, 60)), max_size=12
)


@settings(deadline=None)
@given(looks=WATCHES, is_fresh=st.booleans())
def test_law_the_look_comes_before_the_discard(
    looks: list[tuple[int, int | None]], *, is_fresh: bool
) -> None:
    life = dye_life(
        [
            Watch(clear_days=day, settled_days=None if more is None else day + more)
            for day, more in looks
        ],
        is_mix_fresh=is_fresh,
    )
    assert 0 <= life.look_by_days <= life.discard_by_days
    if life.look_by_range is not None:
        assert life.look_by_range[0] <= life.look_by_days
