"""From a covariance in Lab to a difference that is not passed."""

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.spreads import (
    as_lots_differ,
    chance_within,
    drawn_colours,
    expected_to,
    fixed_draws,
    local_metric,
    spread_of,
)

LABS = np.array([[50.0, 2.7, -60.0], [70.0, 0.1, 0.2], [30.0, 50.0, 20.0]])


def test_draws_have_the_covariance_that_was_asked_for() -> None:
    wanted = np.array([[0.5, 0.2, 0.0], [0.2, 1.0, -0.3], [0.0, -0.3, 2.0]])
    drawn = drawn_colours(LABS[:1], wanted[None])[0] - LABS[0]
    np.testing.assert_allclose(np.cov(drawn.T), wanted, atol=0.25)
    np.testing.assert_allclose(drawn.mean(0), 0.0, atol=1e-12)  # each has its opposite
    assert not fixed_draws().flags.writeable


@pytest.mark.by_hand
def test_grey_that_is_off_in_lightness_alone() -> None:
    """At L* 50 a step of L* counts in full: |N(0, 1)| has mean √(2/π), 90 % 1.645."""
    grey = np.array([[50.0, 0.0, 0.0]])
    found = spread_of(grey, np.diag([1.0, 0.0, 0.0])[None])
    assert found.expected[0] == pytest.approx(0.798, abs=0.05)
    assert found.de_90[0] == pytest.approx(1.645, abs=0.1)


@pytest.mark.by_hand
def test_lots_that_differ_more_than_their_doses_explain_widen_a_colour() -> None:
    """A lot part of diag(0.3, 0.1, 0.2) is 0.2 a number; s = 0.6 lacks 0.16."""
    whole = np.diag([1.0, 0.5, 0.5])[None]
    lot = np.diag([0.3, 0.1, 0.2])[None]
    found = as_lots_differ(whole, lot, repeats=0.6)
    np.testing.assert_allclose(found[0], np.diag([1.16, 0.66, 0.66]))
    for known in (0.0, 0.4):
        np.testing.assert_array_equal(as_lots_differ(whole, lot, repeats=known), whole)


def test_metric_is_that_of_small_steps() -> None:
    metric = local_metric(LABS)
    draws = np.random.default_rng(1).normal(0, 0.2, (200, 1, 3))
    told = np.linalg.norm(np.einsum("nij,mnj->mni", metric, draws + 0 * LABS), axis=-1)
    true = ciede2000_arrays(LABS, LABS + draws)
    assert np.median(np.abs(told / true - 1.0)) < 0.03


def test_a_recipe_that_misses_is_expected_to_miss() -> None:
    still = np.zeros((3, 3, 3))
    target = LABS[0]
    np.testing.assert_allclose(
        expected_to(LABS, still, target), ciede2000_arrays(target, LABS), atol=1e-9
    )
    wide = np.broadcast_to(np.eye(3), (3, 3, 3))
    chances = chance_within(LABS, wide, target, tolerance=1.0)
    assert chances[0] > 0.3
    assert chances[2] == 0.0
