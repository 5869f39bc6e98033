"""Which error weighs most."""

from math import fsum

import pytest
from hypothesis import given

from shadewright.core.uncertainty import Value, budget, exact, scaled
from tests.core.uncertainty.terms import value, values


@pytest.mark.by_hand
def test_the_largest_term_nearly_decides_alone() -> None:
    # 0.04², 0.58², 1.15²: 0.0016 + 0.3364 + 1.3225 = 1.6605
    lines = budget(value(100.0, powder=0.04, mark=-0.58, pour=1.15))
    assert [(line.source, round(line.share, 3)) for line in lines] == [
        ("pour", 0.796),
        ("mark", 0.203),
        ("powder", 0.001),
    ]
    assert [line.u_rel for line in lines] == pytest.approx([0.0115, 0.0058, 0.0004])


def test_equals_keep_their_order() -> None:
    lines = budget(value(10.0, pour=0.1, mark=-0.1))
    assert [line.name for line in lines] == ["pour", "mark"]
    assert [line.share for line in lines] == pytest.approx([0.5, 0.5])


@pytest.mark.parametrize("sure", [exact(5.0), exact(0.0), value(0.0, scale=0.1)])
def test_there_is_no_budget_without_a_spread_or_a_value(sure: Value) -> None:
    assert budget(sure) == ()


@given(values())
def test_shares_make_one_and_do_not_hang_on_the_unit(one: Value) -> None:
    lines = budget(one)
    assert fsum(line.share for line in lines) == pytest.approx(1.0 if lines else 0.0)
    in_mg = budget(scaled(one, by=-1000.0))
    assert [line.share for line in in_mg] == pytest.approx([li.share for li in lines])
