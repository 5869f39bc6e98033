"""All sets of dyes, and where their parts stand."""

from itertools import combinations, pairwise

import pytest

from shadewright.core.recipes.search.sets import ranks_of


@pytest.mark.parametrize("dyes", [1, 2, 3, 5, 9])
def test_they_are_all_combinations(dyes: int) -> None:
    for size, rank in enumerate(ranks_of(dyes), start=1):
        assert rank.sets.T.tolist() == [
            list(c) for c in combinations(range(dyes), size)
        ]


def test_forty_dyes_make_so_many_sets() -> None:
    """40 + 780 + 9 880 + 91 390."""
    assert [rank.count for rank in ranks_of(40)] == [40, 780, 9880, 91390]


def test_each_part_is_the_set_without_one_dye() -> None:
    ranks = ranks_of(7)
    for below, rank in pairwise(ranks):
        for slot in range(len(rank.sets)):
            parts = below.sets[:, rank.within[slot]].T.tolist()
            whole = rank.sets.T.tolist()
            assert parts == [[*s[:slot], *s[slot + 1 :]] for s in whole]


@pytest.mark.parametrize("wanted", [(2,), (0, 5), (1, 2, 3), (0, 1, 2, 6)])
def test_wanted_dyes_take_their_places(wanted: tuple[int, ...]) -> None:
    sets = [s for rank in ranks_of(7, wanted=wanted) for s in rank.sets.T.tolist()]
    assert {frozenset({*each, *wanted}) for each in sets} == {
        frozenset({*each, *wanted})
        for size in range(1, 5)
        for each in combinations(range(7), size)
        if len({*each, *wanted}) <= 4
    }
