"""Bounds from below, with a pencil and by chance."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.bounds import Job, on_machines


@pytest.mark.by_hand
def test_the_handbook_with_a_pencil() -> None:
    """(5 + 5 + 300 + 12 + 12) / 2 = 167."""
    assert on_machines([Job(5, 100, 12)] * 3, machines=2) == 167


@pytest.mark.by_hand
def test_fillings_queue() -> None:
    """(5 + 10 + 300 + 12 + 12) / 2 = 169.5, and with rinses of 10: 12 + 20."""
    assert on_machines([Job(5, 100, 12, first=5)] * 3, machines=2, people=1) == 170
    queued = [Job(5, 100, 12, first=5, last=10)] * 3
    assert on_machines(queued, machines=2, people=1) == 174
    assert on_machines(queued, machines=2, people=2) == 167


jobs = st.lists(
    st.builds(
        Job,
        st.integers(min_value=0, max_value=9),
        st.integers(min_value=1, max_value=9),
        st.integers(min_value=0, max_value=9),
    ),
    min_size=1,
    max_size=5,
)


@given(jobs=jobs, machines=st.integers(min_value=1, max_value=3))
def test_no_schedule_ends_before_it(jobs: list[Job], machines: int) -> None:
    """Every order of every share of jobs among machines, each as early as it goes."""
    bound = on_machines(jobs, machines=machines)
    for shares in product(range(machines), repeat=len(jobs)):
        ends = [0] * machines
        last = 0
        for job, machine in sorted(
            zip(jobs, shares, strict=True),
            key=lambda pair: (-pair[0].tail, pair[0].head),
        ):
            ends[machine] = max(ends[machine], job.head) + job.time
            last = max(last, ends[machine] + job.tail)
        assert bound <= last
