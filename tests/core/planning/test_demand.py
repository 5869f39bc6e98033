"""What is to be dyed: by hand, and laws."""

from datetime import date, timedelta
from itertools import combinations_with_replacement

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.demand import (
    LineWanted,
    is_same_skein,
    spare_skeins,
    still_to_dye,
    whole_pots,
)
from shadewright.errors import MissingError, OutOfRangeError

_DAY = date(2026, 11, 25)
lines = st.lists(
    st.builds(
        LineWanted,
        line_id=st.integers(1, 9),
        skeins=st.integers(0, 60),
        due_on=st.none() | st.dates(_DAY, _DAY + timedelta(days=60)),
    ),
    unique_by=lambda one: one.line_id,
)
some = st.integers(0, 80)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "percent", "spare"),
    [
        (38, 5.0, 2),  # 38 / 0.95 = 40
        (9, 5.0, 0),  # 9 / 0.95 = 9.47
        (10, 5.0, 1),  # 10 / 0.95 = 10.53
        (1, 50.0, 1),  # 1 / 0.5 = 2
        (0, 5.0, 0),
        (100, 0.0, 0),
    ],
)
def test_spare_skeins(skeins: int, percent: float, spare: int) -> None:
    assert spare_skeins(skeins=skeins, seconds_percent=percent) == spare


def test_more_seconds_than_half_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="Share of seconds must be"):
        spare_skeins(skeins=10, seconds_percent=60.0)


@pytest.mark.by_hand
def test_the_most_urgent_line_takes_what_is_free() -> None:
    late = LineWanted(line_id=1, skeins=5, due_on=_DAY + timedelta(days=9))
    soon = LineWanted(line_id=2, skeins=4, due_on=_DAY)
    some_day = LineWanted(line_id=3, skeins=2)
    found = still_to_dye(
        wanted=[some_day, late, soon], par_skeins=6, free_skeins=7, seconds_percent=5
    )
    assert found.for_lines == ((1, 2), (3, 2))  # 4 and 3 of 5 come from the 7
    assert (found.for_shelf, found.spare) == (6, 1)  # 10 / 0.95 = 10.5
    assert found.due_on == late.due_on


@given(lines, some, some)
def test_nothing_is_dyed_twice_and_nothing_forgotten(
    wanted: list[LineWanted], par: int, free: int
) -> None:
    found = still_to_dye(
        wanted=wanted, par_skeins=par, free_skeins=free, seconds_percent=0.0
    )
    asked = sum(each.skeins for each in wanted) + par
    assert found.skeins == max(0, asked - free)


@given(lines, some, some)
def test_what_is_planned_is_wanted_no_more(
    wanted: list[LineWanted], par: int, free: int
) -> None:
    first = still_to_dye(
        wanted=wanted, par_skeins=par, free_skeins=free, seconds_percent=5.0
    )
    again = still_to_dye(
        wanted=wanted,
        par_skeins=par,
        free_skeins=free + first.skeins,
        seconds_percent=5.0,
    )
    assert again.skeins == 0


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "pots", "loads", "surplus"),
    [
        (0, {"A": 4}, (), 0),
        (11, {"A": 4}, (("A", 3),), 1),
        (8, {"A": 6, "B": 2}, (("A", 1), ("B", 1)), 0),
        (13, {"A": 6, "B": 4, "C": 1}, (("A", 2), ("C", 1)), 0),
        (7, {"B": 4, "A": 6}, (("B", 2),), 1),  # two of B, not A and B
        (6, {"A": 6, "B": 3, "none": 0}, (("A", 1),), 0),  # one filling, not two
    ],
)
def test_whole_pots_by_hand(
    skeins: int,
    pots: dict[str, int],
    loads: tuple[tuple[str, int], ...],
    surplus: int,
) -> None:
    found = whole_pots(skeins=skeins, pot_skeins=pots)
    assert (found.loads, found.surplus) == (loads, surplus)


def test_whole_pots_need_a_pot() -> None:
    with pytest.raises(MissingError):
        whole_pots(skeins=3, pot_skeins={"A": 0})


@given(st.integers(0, 40), st.lists(st.integers(1, 12), min_size=1, max_size=3))
def test_whole_pots_are_few_and_then_full(skeins: int, sizes: list[int]) -> None:
    pots = {f"P{place}": size for place, size in enumerate(sizes)}
    found = whole_pots(skeins=skeins, pot_skeins=pots)
    count = sum(times for _name, times in found.loads)
    held = sum(pots[name] * times for name, times in found.loads)
    assert held - found.surplus == skeins
    fewest = -(-skeins // max(sizes))
    assert count == fewest
    # every way to fill so many pots, tried
    ways = combinations_with_replacement(sizes, fewest)
    assert held == min(sum(way) for way in ways if sum(way) >= skeins)


def test_a_light_skein_is_the_same_and_a_half_skein_is_not() -> None:
    assert is_same_skein(skein_g=100.0, other_g=95.0)
    assert is_same_skein(skein_g=95.0, other_g=100.0)
    assert not is_same_skein(skein_g=100.0, other_g=50.0)
