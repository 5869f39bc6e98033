"""The share of bottles that is still clear, and what is printed of it elsewhere."""

import tomllib
from collections.abc import Sequence
from itertools import pairwise
from math import fsum, inf, sqrt
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.core.solutions.keeping.turnbull import (
    LifeStep,
    Watch,
    innermost,
    still_clear,
)
from shadewright.errors import MissingError, OutOfRangeError
from tests.published_cases import FOLDER, PublishedCase, published


def _data(path: Path) -> dict[str, dict[str, Any]]:
    with path.open("rb") as file:
        return {each["id"]: each for each in tomllib.load(file)["data"]}


DATA = _data(FOLDER / "keeping.toml")


def _watches(name: str) -> list[Watch]:
    data = DATA[name]
    return [
        *(Watch(clear_days=day - 1, settled_days=day) for day in data.get("exact", ())),
        *(Watch(clear_days=a, settled_days=b) for a, b in data.get("between", ())),
        *(Watch(clear_days=day) for day in data["still"]),
    ]


def _falls(curve: Sequence[LifeStep]) -> dict[float, float]:
    shares = [1.0, *(step.share_clear for step in curve)]
    falls = (before - after for before, after in pairwise(shares))
    return dict(zip((step.by_days for step in curve), falls, strict=True))


@pytest.mark.published
@pytest.mark.parametrize("case", published("keeping"))
def test_what_is_printed(case: PublishedCase) -> None:
    curve = still_clear(_watches(case.inputs["data"]))
    step = next(each for each in curve if each.by_days == case.inputs["by"])
    answers = {
        "share": step.share_clear,
        "u": step.u,
        "fall": _falls(curve)[step.by_days],
    }
    assert case.agrees(answers[case.asks])


@pytest.mark.by_hand
def test_two_bottles_by_hand() -> None:
    # One settled between day 20 and 30, one clear at 60: half is left, and with n = 2
    # the spread of a half is √(0.5 · 0.5 / 2).
    (step,) = still_clear([
        Watch(clear_days=20, settled_days=30),
        Watch(clear_days=60),
    ])
    assert (step.after_days, step.by_days) == (20, 30)
    assert step.share_clear == pytest.approx(0.5)
    assert step.u == pytest.approx(sqrt(0.5 * 0.5 / 2))


@pytest.mark.by_hand
def test_gaps_that_overlap_meet_in_their_common_part() -> None:
    watches = [
        Watch(clear_days=0, settled_days=9),
        Watch(clear_days=5, settled_days=20),
    ]
    assert innermost(watches) == ((5, 9),)
    (step,) = still_clear(watches)
    assert (step.after_days, step.by_days, step.share_clear, step.u) == (5, 9, 0, 0)


def test_a_look_on_the_day_another_settled_by_does_not_reach_back() -> None:
    watches = [Watch(clear_days=5), Watch(clear_days=0, settled_days=5)]
    assert innermost(watches) == ((0, 5), (5, inf))


def test_nothing_falls_while_none_settled() -> None:
    assert still_clear([Watch(clear_days=9), Watch(clear_days=60)]) == ()


def test_bounds_hold_the_share_and_stay_shares() -> None:
    curve = still_clear(_watches("cosmesis"))
    for step in curve[:-1]:
        low, high = step.bounds
        assert 0 < low < step.share_clear < high < 1
    assert curve[-1].bounds == (0, 0)


def test_without_a_bottle_there_is_no_curve() -> None:
    with pytest.raises(MissingError):
        still_clear([])


def test_settled_before_it_was_clear_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="after day 9"):
        still_clear([Watch(clear_days=9, settled_days=9)])


def _product_limit(
    exact: Sequence[int], still: Sequence[int]
) -> list[tuple[float, float]]:
    """Kaplan and Meier's own product, with Greenwood's sum: another route."""
    share, hazard, found = 1.0, 0.0, []
    for day in sorted(set(exact)):
        at_risk = sum(each >= day for each in [*exact, *still])
        settled = exact.count(day)
        share *= 1 - settled / at_risk
        if at_risk > settled:
            hazard += settled / (at_risk * (at_risk - settled))
        found.append((share, share * sqrt(hazard)))
    return found


DAYS = st.lists(st.integers(1, 30), max_size=12)


@settings(deadline=None)
@given(exact=DAYS.filter(bool), still=DAYS)
def test_law_of_exact_days_it_is_the_product_limit(
    exact: list[int], still: list[int]
) -> None:
    curve = still_clear([
        *(Watch(clear_days=day - 1, settled_days=day) for day in exact),
        *(Watch(clear_days=day) for day in still),
    ])
    expected = _product_limit(exact, still)
    assert [step.by_days for step in curve] == sorted(set(exact))
    for step, (share, u) in zip(curve, expected, strict=True):
        assert step.share_clear == pytest.approx(share, abs=1e-5)
        assert step.u == pytest.approx(u, rel=1e-3, abs=1e-6)


LOOKS = st.tuples(st.integers(0, 60), st.none() | st.integers(1, 60))


@settings(deadline=None)
@given(looks=st.lists(LOOKS, min_size=1, max_size=15))
def test_law_the_curve_falls_and_its_falls_are_shares(
    looks: list[tuple[int, int | None]],
) -> None:
    watches = [
        Watch(clear_days=day, settled_days=None if more is None else day + more)
        for day, more in looks
    ]
    curve = still_clear(watches)
    shares = [1.0, *(step.share_clear for step in curve)]
    assert shares == sorted(shares, reverse=True)
    assert 0 <= fsum(_falls(curve).values()) <= 1 + 1e-9
    assert all(0 <= step.u <= 1 for step in curve)
