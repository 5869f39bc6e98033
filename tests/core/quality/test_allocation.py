"""A whole order out of one lot, or else out of one group."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quality import allocated
from shadewright.errors import OutOfRangeError

LEFT = {"A": 3, "B": 5, "C": 8, "D": 2}
GROUPS = (("A", "B", "D"), ("C", "D"))


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "parts"),
    [
        (2, (("D", 2),)),  # the smallest that holds enough
        (4, (("B", 4),)),
        (8, (("C", 8),)),
        (10, (("C", 8), ("D", 2))),  # 5 + 3 + 2 are three lots; 8 + 2 are two
        (11, ()),  # A, B and D hold 10, C and D too
    ],
)
def test_where_an_order_comes_from(skeins: int, parts: tuple[tuple[str, int]]) -> None:
    found = allocated(skeins, left=LEFT, groups=GROUPS)
    assert found.parts == parts
    assert found.is_mixed == (len(parts) > 1)


@given(
    skeins=st.integers(1, 30),
    left=st.dictionaries(st.sampled_from("ABCDE"), st.integers(0, 12)),
)
def test_no_fewer_lots_of_the_group_would_do(skeins: int, left: dict[str, int]) -> None:
    found = allocated(skeins, left=left, groups=[tuple(left)])
    fewer = range(len(found.parts) if found.parts else len(left) + 1)
    sums = [sum(mix) for n in fewer for mix in combinations(left.values(), n)]
    assert all(each < skeins for each in sums)
    assert sum(taken for _lot, taken in found.parts) == (skeins if found.parts else 0)
    assert all(0 < taken <= left[lot] for lot, taken in found.parts)


def test_an_order_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="at least 1"):
        allocated(0, left=LEFT, groups=GROUPS)
