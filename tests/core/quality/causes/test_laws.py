"""Whatever is written in a history, an answer comes, and its chances are chances."""

from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.core.colour import Lab
from shadewright.core.quality import Drift, Factor, PastLot, lot_causes, repeat_test
from shadewright.core.quality.causes.history import NAMES, NUMBERS

colours = st.builds(
    Lab, st.floats(0.0, 100.0), st.floats(-120.0, 120.0), st.floats(-120.0, 120.0)
)
near = st.builds(Lab, st.floats(49.0, 51.0), st.floats(9.0, 11.0), st.just(5.0))
names = {str(factor): st.sampled_from([None, "A", "B", "C"]) for factor in NAMES}
numbers = {
    str(factor): st.none() | st.sampled_from([0.0, 1.0, 45.0, 45.5]) | st.floats(0, 9e3)
    for factor in NUMBERS
}
lots = st.builds(
    PastLot,
    number=st.just("1"),
    colour=st.none() | near | colours,
    **names,
    **numbers,
)


@settings(deadline=None)
@given(st.lists(lots, min_size=1, max_size=12))
def test_any_history_has_an_answer(history: list[PastLot]) -> None:
    found = lot_causes(history)
    scores = [cause.score for cause in found.causes]
    assert scores == sorted(scores, reverse=True)
    assert all(0.05 <= score <= 1.0 for score in scores)
    assert 0.0 <= found.unknown <= 1.0
    assert sum(scores) + found.unknown <= 1.0 + 1e-9
    assert found.expected_de > 0.0
    if found.verdict is not Drift.DRIFTED:
        assert (scores, found.unknown, repeat_test(found)) == ([], 0.0, "")
    for cause in found.causes:
        assert cause.factor in set(Factor)
        assert cause.now == getattr(history[-1], cause.factor)
        assert cause.now != cause.was
