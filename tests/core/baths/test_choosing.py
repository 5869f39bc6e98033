"""Which bottles a dose comes from: cases by hand, and what must always hold."""

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    BottleShare,
    Candidate,
    ChosenBottles,
    chosen_bottles,
)


def bottle(
    code: str,
    *,
    strength_percent: float = 1.0,
    usable_ml: float = 400.0,
    age_days: int | None = 10,
    is_good: bool = True,
    days_left: int | None = None,
) -> Candidate:
    return Candidate(
        code=code,
        strength_percent=strength_percent,
        usable_ml=usable_ml,
        age_days=age_days,
        is_good=is_good,
        days_left=days_left,
    )


def drawn(chosen: ChosenBottles) -> dict[str, float]:
    return {share.code: round(share.volume_ml, 6) for share in chosen.shares}


def choose(*bottles: Candidate, dye_g: float = 0.6) -> ChosenBottles:
    return chosen_bottles(dye_g=dye_g, liquor_ml=3000.0, bottles=bottles)


def test_the_oldest_good_one_with_enough_is_taken() -> None:
    new, old = bottle("NEW", age_days=4), bottle("OLD", age_days=40)
    spoilt = bottle("BAD", age_days=90, is_good=False)
    small = bottle("LOW", age_days=80, usable_ml=59.9)
    assert drawn(choose(new, old, spoilt, small)) == {"OLD": 60.0}


def test_a_bottle_of_unknown_age_counts_as_the_oldest() -> None:
    assert drawn(choose(bottle("A", age_days=300), bottle("B", age_days=None))) == {
        "B": 60.0
    }


def test_the_first_to_expire_goes_before_the_oldest() -> None:
    # A younger bottle of a dye that settles sooner, or with a day written on it.
    old = bottle("OLD", age_days=100, days_left=200)
    short = bottle("NEW", age_days=10, days_left=5)
    assert drawn(choose(old, short)) == {"NEW": 60.0}


def test_a_bottle_past_its_day_that_may_be_used_is_used_up_first() -> None:
    tested = bottle("OLD", age_days=200, days_left=-18)
    new = bottle("NEW", age_days=10, days_left=172)
    assert drawn(choose(new, tested)) == {"OLD": 60.0}


@pytest.mark.by_hand
def test_without_a_day_of_its_own_common_practice_stands() -> None:
    # Six months, 182 days, from the day made: 182 − 100 = 82, after the other's 81.
    assert bottle("A", age_days=100).expires_in == 82
    first = choose(bottle("A", age_days=100), bottle("B", age_days=1, days_left=81))
    assert drawn(first) == {"B": 60.0}


@pytest.mark.by_hand
def test_where_none_holds_it_all_they_follow_each_other() -> None:
    # 40 ml of 1 % carry 0.4 g; the 0.2 g still wanted are 10 ml of 2 %.
    old = bottle("OLD", usable_ml=40.0, age_days=40)
    new = bottle("NEW", usable_ml=20.0, age_days=4, strength_percent=2.0)
    chosen = choose(new, old)
    first, second = chosen.shares
    assert first == BottleShare(
        code="OLD", volume_ml=40.0, dye_g=0.4, strength_percent=1.0
    )
    assert (second.code, second.strength_percent) == ("NEW", 2.0)
    assert second.volume_ml == pytest.approx(10.0)
    assert second.dye_g == pytest.approx(0.2)
    assert chosen.missing_g == 0.0


@pytest.mark.by_hand
def test_what_is_short_is_said_in_grams() -> None:
    # 0.6 g wanted, 30 ml of 1 % are 0.3 g.
    chosen = choose(bottle("A", usable_ml=30.0))
    assert drawn(chosen) == {"A": 30.0}
    assert chosen.missing_g == pytest.approx(0.3)
    assert choose() == ChosenBottles(shares=(), missing_g=0.6)


def test_an_empty_or_a_spoilt_bottle_gives_nothing() -> None:
    assert choose(bottle("A", usable_ml=0.0), bottle("B", is_good=False)).shares == ()


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("strength_percent", "dye_g", "is_taken"),
    [
        (1.0, 0.05, True),  # 100 x 0.05 / 1 = 5 ml, just enough to measure
        (1.0, 0.049, False),  # 4.9 ml
        (0.1, 0.75, True),  # 750 ml, a quarter of 3000 ml
        (0.1, 0.751, False),  # 751 ml
    ],
)
def test_the_dose_can_be_measured_and_leaves_room(
    strength_percent: float, dye_g: float, *, is_taken: bool
) -> None:
    old = bottle(
        "OLD", strength_percent=strength_percent, age_days=99, usable_ml=2000.0
    )
    fits = bottle("FIT", strength_percent=0.5, age_days=1, usable_ml=2000.0)
    chosen = choose(old, fits, dye_g=dye_g)
    assert [share.code for share in chosen.shares] == ["OLD" if is_taken else "FIT"]


def test_two_that_suit_come_before_one_that_does_not() -> None:
    pair = [bottle(code, usable_ml=40.0) for code in "AB"]
    strong = bottle("STRONG", strength_percent=20.0, age_days=99)  # 3 ml
    assert drawn(choose(strong, *pair)) == {"A": 40.0, "B": 20.0}


def test_where_none_suits_the_nearest_is_taken() -> None:
    # 0.003 g: 0.3 ml of 1 % or 3 ml of 0.1 %; the second is the better measured.
    strong = bottle("STRONG", strength_percent=1.0, age_days=99)
    weak = bottle("WEAK", strength_percent=0.1, age_days=1)
    assert drawn(choose(strong, weak, dye_g=0.003)) == {"WEAK": 3.0}


def test_one_of_another_strength_comes_before_a_gap() -> None:
    little = bottle("A", usable_ml=10.0)
    strong = bottle("STRONG", strength_percent=20.0)
    assert drawn(choose(little, strong)) == {"STRONG": 3.0}


bottles = st.lists(
    st.builds(
        Candidate,
        code=st.text("ABCDEFGH", min_size=3, max_size=3),
        strength_percent=st.sampled_from((0.01, 0.1, 0.5, 1.0, 2.0, 10.0)),
        usable_ml=st.one_of(st.just(0.0), st.floats(0.5, 2000.0)),
        age_days=st.one_of(st.none(), st.integers(0, 400)),
        is_good=st.booleans(),
    ),
    max_size=6,
    unique_by=lambda each: each.code,
)
doses = st.floats(0.001, 50.0)
liquors = st.floats(200.0, 50_000.0)


@given(dye_g=doses, liquor_ml=liquors, candidates=bottles)
def test_shares_and_gap_make_the_dose_and_no_bottle_gives_more_than_it_holds(
    dye_g: float, liquor_ml: float, candidates: list[Candidate]
) -> None:
    chosen = chosen_bottles(dye_g=dye_g, liquor_ml=liquor_ml, bottles=candidates)
    by_code = {each.code: each for each in candidates}
    given_g = sum(share.dye_g for share in chosen.shares)
    assert given_g + chosen.missing_g == pytest.approx(dye_g, rel=1e-6)
    assert len({share.code for share in chosen.shares}) == len(chosen.shares)
    for share in chosen.shares:
        source = by_code[share.code]
        assert source.is_good
        assert 0 < share.volume_ml <= source.usable_ml * (1 + 1e-6) + 1e-5
        assert share.dye_g == pytest.approx(
            share.volume_ml * source.strength_percent / 100
        )


@given(dye_g=doses, liquor_ml=liquors, candidates=bottles)
def test_nothing_is_missing_while_good_bottles_hold_enough(
    dye_g: float, liquor_ml: float, candidates: list[Candidate]
) -> None:
    held_g = sum(
        each.usable_ml * each.strength_percent / 100
        for each in candidates
        if each.is_good
    )
    chosen = chosen_bottles(dye_g=dye_g, liquor_ml=liquor_ml, bottles=candidates)
    assert chosen.missing_g == pytest.approx(max(dye_g - held_g, 0.0), abs=1e-6)


@given(dye_g=doses, liquor_ml=liquors, candidates=bottles)
def test_the_order_on_the_shelf_does_not_matter(
    dye_g: float, liquor_ml: float, candidates: list[Candidate]
) -> None:
    some = candidates[:3]
    every = {
        chosen_bottles(dye_g=dye_g, liquor_ml=liquor_ml, bottles=order)
        for order in permutations(some)
    }
    assert len(every) == 1
