"""Lots that may share a sweater: every two alike, and no group that could grow."""

from itertools import combinations
from random import Random

import pytest

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.quality import sharing_groups
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
def test_alike_to_the_standard_is_not_alike_to_each_other() -> None:
    """Both within 1 of L 50, and nearly 2 apart."""
    lots = {"pale": Lab(50.9, 0, 0), "deep": Lab(49.1, 0, 0)}
    groups = sharing_groups(lots, tolerance=1.0)
    assert [group.lots for group in groups] == [("deep",), ("pale",)]
    assert [group.widest for group in groups] == [0.0, 0.0]


@pytest.mark.parametrize("seed", range(6))
def test_the_groups_are_all_that_there_are(seed: int) -> None:
    """By trying every set of nine lots."""
    draws = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    lots = {
        name: Lab(50 + draws.gauss(0, 1), draws.gauss(0, 1), draws.gauss(0, 1))
        for name in "ABCDEFGHI"
    }

    def alike(names: tuple[str, ...]) -> bool:
        pairs = combinations(names, 2)
        return all(ciede2000(lots[one], lots[two]) <= 1.5 for one, two in pairs)

    sets = [
        set(names)
        for size in range(1, 10)
        for names in combinations(lots, size)
        if alike(names)
    ]
    whole = [each for each in sets if not any(each < other for other in sets)]
    found = sharing_groups(lots, tolerance=1.5)
    assert sorted(map(sorted, whole)) == sorted(sorted(each.lots) for each in found)
    assert [len(group.lots) for group in found] == sorted(map(len, whole), reverse=True)
    assert all(group.widest <= 1.5 for group in found)


def test_too_many_lots_are_refused() -> None:
    lots = {f"{n}": Lab(50, 0, 0) for n in range(101)}
    with pytest.raises(OutOfRangeError, match="101"):
        sharing_groups(lots, tolerance=1.0)


def test_no_lots_are_no_groups() -> None:
    assert sharing_groups({}, tolerance=1.0) == ()
