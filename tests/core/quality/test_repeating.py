"""How well a studio repeats itself, by hand and as a law."""

from math import pi, sqrt

import numpy as np
import pytest

from shadewright.core.colour import Lab
from shadewright.core.quality import repeatability
from shadewright.errors import MissingError


def test_steps_of_all_recipes_count_together() -> None:
    # Steps of 0.6 and 0.8 in one recipe, of 0.5 (3, 4, 5) in the other:
    # s² = (0.36 + 0.64 + 0.25) / (6 · 3), mean distance = 4 s / √π.
    first = [Lab(50, 0, 0), Lab(50.6, 0, 0), Lab(50.6, 0.8, 0)]
    second = [Lab(30, 1, 1), Lab(30.3, 1, 1.4)]
    found = repeatability([first, second, [Lab(20, 0, 0)]])
    sd = sqrt(1.25 / 18.0)
    assert found.sd == pytest.approx(sd)
    assert found.apart == pytest.approx(4.0 * sd / sqrt(pi))
    assert found.u == pytest.approx(found.apart / (2.0 * sqrt(3.0)))
    assert (found.lots, found.recipes) == (5, 2)


def test_one_lot_that_went_wrong_counts_little() -> None:
    draws = np.random.default_rng(8)
    level = [Lab(50 + draws.normal(0, 0.3), 0, 0) for _ in range(40)]
    off = [*level[:20], Lab(60, 0, 0), *level[20:]]
    plain, spoilt = repeatability([level]).sd, repeatability([off]).sd
    assert spoilt < 1.3 * plain


def test_a_known_scatter_is_found_again() -> None:
    draws = np.random.default_rng(3)
    rows = [
        [Lab(*map(float, lab)) for lab in draws.normal(50, 0.3, (12, 3))]
        for _recipe in range(30)
    ]
    # Clipping at twice the median takes a few in a hundred away.
    assert repeatability(rows).sd == pytest.approx(0.3, rel=0.08)


def test_nothing_repeats_in_single_lots() -> None:
    with pytest.raises(MissingError):
        repeatability([[Lab(50, 0, 0)], []])
