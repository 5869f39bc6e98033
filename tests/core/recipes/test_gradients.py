"""Depths in steps that look equal."""

from itertools import pairwise

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.recipes import gradient
from shadewright.errors import OutOfRangeError
from tests.core.recipes.palettes import palette

DEEPEST = (("d01", 1.6), ("d04", 0.4))


@pytest.mark.parametrize("count", [2, 3, 7, 20])
@pytest.mark.parametrize("palest", [0.0, 0.05])
def test_steps_are_equal(count: int, palest: float) -> None:
    found = gradient(
        palette(), base="wool", doses=DEEPEST, count=count, palest_share=palest
    )
    steps = [ciede2000(a.lab, b.lab) for a, b in pairwise(found)]
    assert len(found) == count
    assert max(steps) - min(steps) < 0.002
    assert dict(found[-1].doses) == pytest.approx(dict(DEEPEST))
    shares = [dict(each.doses).get("d01", 0.0) / 1.6 for each in found]
    assert shares[0] == pytest.approx(palest)
    assert shares == sorted(shares)


def test_the_colours_are_those_of_the_palette() -> None:
    found = gradient(palette(), base="wool", doses=DEEPEST, count=5)
    mixes = [Mix(base="wool", doses=each.doses) for each in found]
    told = told_mixes(mixes, palette=palette())
    np.testing.assert_allclose([each.lab for each in found], told.lab, atol=1e-3)


def test_pale_steps_take_less_dye() -> None:
    found = gradient(palette(), base="wool", doses=(("d02", 2.0),), count=6)
    depths = [dict(each.doses).get("d02", 0.0) for each in found]
    assert (np.diff(depths, 2) > 0).all()


def test_a_row_of_one_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="Count must be"):
        gradient(palette(), base="wool", doses=DEEPEST, count=1)
