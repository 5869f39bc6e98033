"""Ladders by halving, and mixes in parts."""

from itertools import pairwise
from math import comb

import pytest
from hypothesis import given
from hypothesis import strategies as some

from shadewright.core.mixing.laying_out import (
    ladder_depths,
    mixes_count,
    mixes_in_parts,
)
from shadewright.errors import OutOfRangeError


@given(top=some.floats(0.01, 20.0), rungs=some.integers(1, 10))
def test_each_rung_is_half_of_the_one_before(top: float, rungs: int) -> None:
    depths = ladder_depths(top_percent=top, rungs=rungs)
    assert len(depths) == rungs
    assert depths[0] == top
    for deep, pale in pairwise(depths):
        assert pale == deep / 2


@given(parts=some.integers(1, 10), total=some.floats(0.1, 20.0))
def test_a_triangle_has_as_many_as_it_should_and_each_once(
    parts: int, total: float
) -> None:
    """(n + 1)(n + 2)/2 of three dyes, n + 1 of two."""
    triangle = mixes_in_parts(dyes="ABC", total_percent=total, parts=parts)
    assert len(set(triangle)) == len(triangle) == (parts + 1) * (parts + 2) // 2
    assert len(triangle) == mixes_count(dyes=3, parts=parts) == comb(parts + 2, 2)
    for mix in triangle:
        assert sum(depth for _dye, depth in mix) == pytest.approx(total)
    assert len(mixes_in_parts(dyes="AB", total_percent=total, parts=parts)) == parts + 1


def test_corners_are_dyes_alone() -> None:
    """Two parts of 1 % among three dyes, written out."""
    assert mixes_in_parts(dyes="ABC", total_percent=1.0, parts=2) == (
        (("A", 1.0),),
        (("A", 0.5), ("B", 0.5)),
        (("A", 0.5), ("C", 0.5)),
        (("B", 1.0),),
        (("B", 0.5), ("C", 0.5)),
        (("C", 1.0),),
    )


def test_what_cannot_be_laid_out_is_told() -> None:
    with pytest.raises(OutOfRangeError, match="Dyes to mix"):
        mixes_in_parts(dyes="A", total_percent=1.0, parts=2)
    with pytest.raises(OutOfRangeError, match="Parts"):
        mixes_in_parts(dyes="AB", total_percent=1.0, parts=11)
    with pytest.raises(OutOfRangeError, match="Deepest rung"):
        ladder_depths(top_percent=0.0, rungs=3)
    with pytest.raises(OutOfRangeError, match="Rungs"):
        ladder_depths(top_percent=1.0, rungs=0)
