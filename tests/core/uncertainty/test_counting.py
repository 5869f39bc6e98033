"""How many promises hold by chance."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.uncertainty import usual_counts
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
def test_two_promises_of_nine_in_ten() -> None:
    # P(0) = 0.01, P(1) = 0.18, P(2) = 0.81: none held is within 2.5 %, one is not
    assert usual_counts(promises=2, chance=0.9) == (1, 2)


@pytest.mark.by_hand
def test_ten_promises_of_nine_in_ten() -> None:
    # P(7) = 120 · 0.9⁷ · 0.1³ = 0.0574; P(K ≤ 6) = 0.0128, so seven is usual, six not
    assert usual_counts(promises=10, chance=0.9) == (7, 10)


@given(st.integers(1, 3000), st.floats(0.01, 0.99))
def test_as_many_are_broken_as_are_not_held(promises: int, chance: float) -> None:
    few, many = usual_counts(promises=promises, chance=chance)
    assert 0 <= few <= many <= promises
    broken = usual_counts(promises=promises, chance=1.0 - chance)
    assert abs(broken[0] - (promises - many)) <= 1
    assert few - 1 <= promises * chance <= many + 1


def test_nothing_promised_is_no_question() -> None:
    with pytest.raises(OutOfRangeError):
        usual_counts(promises=0, chance=0.9)
