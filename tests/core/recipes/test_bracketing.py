"""Three trials that bracket a recipe, on palettes whose truth is known."""

from collections.abc import Iterator
from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from shadewright.core.mixing import Evidence, Mix, Palette, learn, told_mixes
from shadewright.core.mixing.spreads import local_metric
from shadewright.core.recipes.bracketing import (
    LEAST_STEP_DE,
    MOST_LOG_DOSE,
    Trial,
    bracketing_trials,
    way_to_either_side,
)
from shadewright.errors import MissingError, NotFoundError
from tests.core.mixing.worlds import LAWS, Floats, ladder, ternaries
from tests.core.mixing.worlds import Lab as Bench
from tests.core.recipes.palettes import named, palette, truth


@cache
def poor(law: str) -> Palette:
    """Return what one swatch a dye teaches, read once."""
    bench = Bench(truth(law), np.random.default_rng(7))
    return learn(bench.read(ladder(7, (0.5,)), Evidence.LAB, 0.5)).palette


def true_lab(law: str, trial: Trial) -> Floats:
    """Return the colour that a trial really has."""
    row = np.zeros(7)
    for dye, depth in trial.doses:
        row[int(dye[1:])] = depth
    return np.asarray(truth(law).lab(row[None])[0])


def placed(law: str, found: Palette) -> Iterator[bool]:
    """Say of mixes whether the colour wanted truly lies between the outer trials."""
    for row in ternaries(np.random.default_rng(11), 7, 20):
        one, itself, other = bracketing_trials(found, base="wool", doses=named(row))
        metric = local_metric(np.array([itself.lab]))[0]
        line = metric @ (np.array(other.lab) - np.array(one.lab))
        low, high = (
            line @ metric @ (true_lab(law, trial) - np.array(itself.lab))
            for trial in (one, other)
        )
        yield low < 0.0 < high


@pytest.mark.parametrize("law", LAWS)
def test_what_was_wanted_lies_between_the_outer_two(law: str) -> None:
    """By chance it would be one of two; one standard deviation is two of three."""
    assert np.mean([*placed(law, palette(law))]) >= 0.9
    assert np.mean([*placed(law, poor(law))]) > 0.5


@given(
    depths=some.lists(some.floats(0.05, 1.5), min_size=1, max_size=4),
    is_poor=some.booleans(),
)
def test_the_recipe_lies_between_its_trials(
    depths: list[float], *, is_poor: bool
) -> None:
    known = poor("flags") if is_poor else palette()
    doses = tuple((f"d{place:02d}", depth) for place, depth in enumerate(depths))
    one, itself, other = bracketing_trials(known, base="wool", doses=doses)
    assert itself.doses == doses
    assert itself.de == 0.0
    metric = local_metric(np.array([itself.lab]))[0]
    down, up = (metric @ (np.array(x.lab) - np.array(itself.lab)) for x in (one, other))
    assert down @ up < 0.0
    for trial in (one, other):
        for (dye, depth), (same, was) in zip(trial.doses, doses, strict=True):
            assert dye == same
            assert was / 2.0001 <= depth <= was * 2.0001


def test_the_way_is_the_pencils() -> None:
    """One dye: x = a·s w / (a·a + 1), then stretched to one CIEDE2000."""
    doses = (("d00", 0.4),)
    told = told_mixes([Mix(base="wool", doses=doses)], palette=palette())
    metric = local_metric(told.lab)[0]
    step = 1e-4
    near = [
        told_mixes(
            [Mix(base="wool", doses=(("d00", 0.4 * np.exp(x)),))], palette=palette()
        ).lab[0]
        for x in (-step, step)
    ]
    a = metric @ (near[1] - near[0]) / (2 * step)
    sizes, turned = np.linalg.eigh(metric @ told.covariance[0] @ metric.T)
    axis = turned[:, -1] * max(float(np.sqrt(sizes[-1])), LEAST_STEP_DE)
    x = float(a @ axis / (a @ a + 1.0))
    x *= max(1.0, LEAST_STEP_DE / float(np.linalg.norm(a * x)))
    (found,) = way_to_either_side(palette(), base="wool", doses=doses)
    assert found == pytest.approx(x, rel=1e-3)


def test_no_dose_is_more_than_doubled() -> None:
    """A trace of a dye beside much of another moves the colour by nothing."""
    doses = (("d00", 0.0001),)
    (found,) = way_to_either_side(palette(), base="wool", doses=doses)
    assert abs(found) == pytest.approx(MOST_LOG_DOSE)


def test_what_cannot_be_bracketed_is_told() -> None:
    with pytest.raises(MissingError, match="A dye is missing"):
        bracketing_trials(palette(), base="wool", doses=())
    with pytest.raises(NotFoundError, match="no dye"):
        bracketing_trials(palette(), base="wool", doses=(("Kelp", 1.0),))
