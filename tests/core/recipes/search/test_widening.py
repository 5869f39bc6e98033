"""The search against scipy, set by set, and against starts from all over."""

import numpy as np
import pytest

from shadewright.core.recipes.search.descending import Patience, descended_in_chunks
from shadewright.core.recipes.search.plain import plain_value
from shadewright.core.recipes.search.sets import ranks_of
from shadewright.core.recipes.search.widening import best_of, searched, widening
from tests.core.recipes.search.problems import exhaustive, sought


@pytest.mark.parametrize(
    ("seed", "in_reach", "total"),
    [(0, True, 6.0), (2, True, 0.9), (4, False, 2.0)],
)
def test_it_is_never_worse_than_every_set_by_itself(
    seed: int,
    in_reach: bool,  # ruff: ignore[boolean-type-hint-positional-argument]
    total: float,
) -> None:
    """56 sets of 6 dyes; ``bench/recipe_search.py`` asks it of 300 targets."""
    search = sought(6, seed=seed, in_reach=in_reach, total=total)
    found = searched(search, ranks_of(6), top=10)
    plain = exhaustive(search, 0.2)
    assert np.sqrt(found.values[0]) <= np.sqrt(plain) + 1e-3


@pytest.mark.parametrize("seed", [5, 6])
def test_starts_from_all_over_find_nothing_better(seed: int) -> None:
    """1 500 sets of 40 dyes drawn at random, each from two random starts."""
    search = sought(40, seed=seed, in_reach=seed == 5)
    best = searched(search, ranks_of(40), top=20).values[0]
    draws = np.random.default_rng(seed)
    sets = np.array([draws.choice(40, 4, replace=False) for _ in range(1500)]).T
    for _start in range(2):
        start = draws.uniform(0.0, 1.4, sets.shape)
        _amounts, values = descended_in_chunks(
            search, sets, start, Patience(steps=25, gain=1e-6)
        )
        assert np.sqrt(best) <= np.sqrt(values.min()) + 1e-3


def test_the_values_are_those_of_the_recipes() -> None:
    search = sought(12, seed=7)
    found = searched(search, ranks_of(12), top=10)
    assert (np.diff(found.values) >= 0).all()
    for column in range(10):
        used = found.sets[:, column] < 12
        unit = search.dyes.unit[found.sets[used, column]]
        plain = plain_value(search.aim, unit, found.amounts[used, column])
        assert found.values[column] == pytest.approx(plain, rel=1e-6, abs=1e-10)


def test_fewer_dyes_are_never_better() -> None:
    search = sought(12, seed=8, in_reach=False)
    best = [
        searched(search, ranks_of(12, most_dyes=most), top=5).values[0]
        for most in (1, 2, 3, 4)
    ]
    assert (np.diff(best) <= 1e-6).all()


def test_a_search_tells_how_far_it_is() -> None:
    """Shares rise to one; whoever stops asking has what was found by then."""
    search = sought(12, seed=9)
    shares = [step.share for step in widening(search, ranks_of(12), top=5)]
    assert shares == sorted(shares)
    assert (shares[0], shares[-1]) == (0.0, 1.0)
    steps = widening(search, ranks_of(12), top=5)
    early = next(step for step in steps if step.share >= 0.5)
    assert len(early.levels) == 2
    whole = searched(search, ranks_of(12), top=5)
    assert best_of(search, early, top=5).values[0] >= whole.values[0] - 1e-9
