"""How old a bottle is."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions.age import AgeClass, StockAge, stock_age

TODAY = date(2026, 11, 25)
ORDER = list(AgeClass)


def aged(days: int, **more: object) -> AgeClass:
    made_on = TODAY - timedelta(days=days)
    return stock_age(made_on=made_on, today=TODAY, **more).age_class  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("days", "age_class"),
    [
        (0, AgeClass.FRESH),
        (28, AgeClass.FRESH),
        (29, AgeClass.WEEKS),
        (91, AgeClass.WEEKS),
        (92, AgeClass.OLD),
        (182, AgeClass.OLD),
        (183, AgeClass.PAST),
    ],
)
def test_the_four_steps(days: int, age_class: AgeClass) -> None:
    assert aged(days) is age_class


@pytest.mark.by_hand
def test_days_are_counted_from_the_day_made() -> None:
    age = stock_age(made_on=date(2026, 11, 3), today=TODAY)
    assert age == StockAge(days=22, age_class=AgeClass.FRESH)  # 3 to 25 November


def test_a_bottle_of_unknown_age_counts_as_old() -> None:
    assert stock_age(made_on=None, today=TODAY) == StockAge(
        days=None, age_class=AgeClass.OLD
    )


def test_a_dye_that_settles_is_made_for_the_day() -> None:
    assert aged(1, is_mix_fresh=True) is AgeClass.FRESH
    assert aged(2, is_mix_fresh=True) is AgeClass.PAST


def test_the_discard_day_itself_is_still_good() -> None:
    assert aged(3, discard_by=TODAY) is AgeClass.FRESH
    assert aged(3, discard_by=TODAY - timedelta(days=1)) is AgeClass.PAST
    past = stock_age(made_on=None, today=TODAY, discard_by=TODAY - timedelta(days=1))
    assert past.age_class is AgeClass.PAST


@pytest.mark.parametrize(
    ("days", "age_class"),
    [
        (20, AgeClass.FRESH),
        (21, AgeClass.OLD),
        (60, AgeClass.OLD),
        (61, AgeClass.PAST),
    ],
)
def test_a_dye_may_have_bounds_of_its_own(days: int, age_class: AgeClass) -> None:
    assert aged(days, look_by_days=20, discard_by_days=60) is age_class


@given(days=st.integers(0, 1000), later=st.integers(0, 1000), is_fresh=st.booleans())
def test_law_a_bottle_never_grows_younger(
    days: int, later: int, *, is_fresh: bool
) -> None:
    now, then = (
        ORDER.index(aged(age, is_mix_fresh=is_fresh)) for age in (days, days + later)
    )
    assert now <= then
