"""Bounds from below, with a pencil and by chance."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.bounds import on_machines


@pytest.mark.by_hand
def test_the_handbook_with_a_pencil() -> None:
    """(5 + 5 + 300 + 12 + 12) / 2 = 167."""
    assert on_machines([(5, 100, 12)] * 3, 2) == 167


jobs = st.lists(
    st.tuples(
        st.integers(min_value=0, max_value=9),
        st.integers(min_value=1, max_value=9),
        st.integers(min_value=0, max_value=9),
    ),
    min_size=1,
    max_size=5,
)


@given(jobs=jobs, machines=st.integers(min_value=1, max_value=3))
def test_no_schedule_ends_before_it(
    jobs: list[tuple[int, int, int]], machines: int
) -> None:
    """Every order of every share of jobs among machines, each as early as it goes."""
    bound = on_machines(jobs, machines)
    for shares in product(range(machines), repeat=len(jobs)):
        ends = [0] * machines
        last = 0
        for job, machine in sorted(
            zip(jobs, shares, strict=True), key=lambda pair: (-pair[0][2], pair[0][0])
        ):
            head, time, tail = job
            ends[machine] = max(ends[machine], head) + time
            last = max(last, ends[machine] + tail)
        assert bound <= last
