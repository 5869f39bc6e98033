"""Depths in steps that look equal."""

from itertools import pairwise

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.recipes import gradient, gradient_between
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


FIRST, LAST = (("d01", 1.2), ("d04", 0.3)), (("d02", 0.8), ("d04", 0.6))


@pytest.mark.parametrize("count", [2, 5, 12])
@pytest.mark.parametrize("first", [FIRST, (), (("d06", 0.02),)])
def test_from_one_mix_to_another(
    count: int, first: tuple[tuple[str, float], ...]
) -> None:
    found = gradient_between(
        palette(), base="wool", first=first, last=LAST, count=count
    )
    steps = [ciede2000(a.lab, b.lab) for a, b in pairwise(found)]
    assert len(found) == count
    assert max(steps) - min(steps) < 0.01
    assert dict(found[0].doses) == pytest.approx(dict(first))
    assert dict(found[-1].doses) == pytest.approx(dict(LAST))


def test_each_skein_is_a_share_of_both_ends() -> None:
    """Two stocks poured together give it: c = (1 - t) first + t last."""
    found = gradient_between(palette(), base="wool", first=FIRST, last=LAST, count=6)
    shares = [dict(each.doses).get("d02", 0.0) / 0.8 for each in found]
    assert shares == sorted(shares)
    for share, each in zip(shares, found, strict=True):
        assert dict(each.doses).get("d01", 0.0) == pytest.approx(1.2 * (1.0 - share))
        assert dict(each.doses)["d04"] == pytest.approx(0.3 + 0.3 * share)


def test_backwards_is_the_same_row_from_its_other_end() -> None:
    there = gradient_between(palette(), base="wool", first=FIRST, last=LAST, count=5)
    back = gradient_between(palette(), base="wool", first=LAST, last=FIRST, count=5)
    labs = [each.lab for each in back]
    np.testing.assert_allclose([x.lab for x in there], labs[::-1], atol=0.05)


def test_from_bare_yarn_it_is_the_gradient_of_one_mix() -> None:
    alone = gradient(palette(), base="wool", doses=LAST, count=4)
    both = gradient_between(palette(), base="wool", first=(), last=LAST, count=4)
    for one, other in zip(alone, both, strict=True):
        np.testing.assert_allclose(one.lab, other.lab, atol=0.05)


@pytest.mark.parametrize("last", [FIRST, (*FIRST, ("d05", 0.0))])
def test_one_mix_is_no_row(last: tuple[tuple[str, float], ...]) -> None:
    with pytest.raises(OutOfRangeError, match="another than the first"):
        gradient_between(palette(), base="wool", first=FIRST, last=last, count=3)


def test_more_dye_than_a_bath_takes_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="Depth of the last mix"):
        gradient_between(
            palette(), base="wool", first=FIRST, last=(("d02", 21.0),), count=3
        )
