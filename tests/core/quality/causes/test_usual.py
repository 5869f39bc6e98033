"""The mean of the lots in control."""

import pytest

from shadewright.core.colour import Lab
from shadewright.core.quality.causes.usual import usual_of

LEVEL = [Lab(50 + n % 2 / 5, 10 - n % 3 / 5, 10) for n in range(12)]


@pytest.mark.by_hand
def test_five_lots_later_a_lot_counts_half() -> None:
    weights = usual_of(LEVEL).weights
    assert weights[0] == pytest.approx(weights[5] / 2)
    assert sum(weights) == pytest.approx(1.0)


def test_a_lot_out_of_control_is_left_out() -> None:
    lots = [*LEVEL[:6], Lab(55, 8, 12), *LEVEL[6:]]
    usual = usual_of(lots)
    assert [n for n, weight in enumerate(usual.weights) if not weight] == [6]
    assert usual.mean(lots)[0] == pytest.approx(50.1, abs=0.1)


def test_half_of_the_lots_are_never_left_out() -> None:
    """Two colours in turn: neither is the right one."""
    lots = [Lab(50 + 5 * (n % 2), 0, 0) for n in range(4)]
    assert all(usual_of(lots).weights)
