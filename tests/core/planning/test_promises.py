"""When yarn can be ready: by hand, and laws."""

from collections.abc import Collection
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.promises import (
    DRY_FAST,
    DRY_SLOW,
    Habit,
    KnownDay,
    dyed_on,
    ready_on,
)

_TODAY = date(2026, 11, 25)


def habit(
    *,
    skeins: int = 20,
    between: float = 7.0,
    night: bool = True,
    closed: Collection[int] = (),
) -> Habit:
    return Habit(
        skeins_a_day=skeins,
        days_between=between,
        dry_hours=36.0,
        pack_days=2.0,
        cools_overnight=night,
        closed=frozenset(_TODAY + timedelta(days=away) for away in closed),
    )


def known(*days: tuple[int, int]) -> list[KnownDay]:
    return [
        KnownDay(day=_TODAY + timedelta(days=away), free_skeins=free)
        for away, free in days
    ]


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "days", "away"),
    [
        (1, (), 7),
        (41, (), 21),  # 20, 20 and 1
        (8, ((2, 8),), 2),
        (9, ((2, 8),), 9),  # the ninth a week after
        (9, ((2, 0), (9, 0), (16, 8)), 23),  # full days; 8 on the third; a week on
        (9, ((2, 4), (20, 20)), 9),  # in the gap of 18 days comes a usual one
    ],
)
def test_the_day_on_which_the_last_of_a_queue_is_dyed(
    skeins: int, days: tuple[tuple[int, int], ...], away: int
) -> None:
    found = dyed_on(skeins=skeins, today=_TODAY, known=known(*days), habit=habit())
    assert found == _TODAY + timedelta(days=away)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("dries", "night", "away"),
    [
        (DRY_FAST, True, 4),  # a night, 24 h, 2 days
        (DRY_SLOW, True, 5),  # a night, 48 h, 2 days
        (1.0, False, 4),  # 36 h are two days, 2 days
    ],
)
def test_what_comes_after_the_pot(dries: float, *, night: bool, away: int) -> None:
    found = ready_on(dyed=_TODAY, habit=habit(night=night), dries=dries)
    assert found == _TODAY + timedelta(days=away)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "closed", "away"),
    [
        (1, {7, 8}, 9),  # put off by two days
        (21, {7, 8}, 16),  # and the next with it: 9 and a week
        (21, {14}, 15),
        (21, {1, 2, 3}, 14),  # no dye day falls on them
    ],
)
def test_a_closed_dye_day_is_put_off_and_those_after_it_too(
    skeins: int, closed: set[int], away: int
) -> None:
    pace = habit(closed=closed)
    found = dyed_on(skeins=skeins, today=_TODAY, known=(), habit=pace)
    assert found == _TODAY + timedelta(days=away)


@pytest.mark.by_hand
def test_a_day_that_is_planned_on_a_closed_one_stands() -> None:
    pace = habit(closed={2})
    found = dyed_on(skeins=8, today=_TODAY, known=known((2, 8)), habit=pace)
    assert found == _TODAY + timedelta(days=2)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("closed", "away"),
    [
        ({1}, 6),  # hung on the 2nd, dry on the 4th, packed on the 5th and 6th
        ({2}, 5),  # yarn dries on a closed day too: dry on the 3rd
        ({3}, 6),  # dry on the 3rd, which is closed: packed on the 5th and 6th
        ({4, 5}, 7),  # packed on the 6th and 7th
    ],
)
def test_nobody_hangs_or_packs_on_a_closed_day(closed: set[int], away: int) -> None:
    found = ready_on(dyed=_TODAY, habit=habit(closed=closed), dries=DRY_SLOW)
    assert found == _TODAY + timedelta(days=away)


@given(
    st.integers(1, 200),
    st.integers(0, 50),
    st.integers(1, 40),
    st.floats(1.0, 14.0),
    st.lists(st.integers(1, 60), unique=True).map(sorted),
)
def test_more_yarn_before_one_is_never_sooner_and_never_today(
    skeins: int, more: int, a_day: int, between: float, days: list[int]
) -> None:
    pace = habit(skeins=a_day, between=between)
    planned = known(*((away, 3) for away in days))
    first = dyed_on(skeins=skeins, today=_TODAY, known=planned, habit=pace)
    then = dyed_on(skeins=skeins + more, today=_TODAY, known=planned, habit=pace)
    assert _TODAY < first <= then
