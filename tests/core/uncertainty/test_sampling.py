"""Drawing lots, where first order will not do."""

from random import Random

import pytest

from shadewright.core.uncertainty import (
    Shape,
    Value,
    exact,
    half_width,
    is_wide,
    product,
    quotient,
    sampled_interval,
)
from shadewright.errors import OutOfRangeError
from tests.core.uncertainty.terms import reckoned, shaped, value


def lots(seed: int = 3) -> Random:
    return Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


def test_small_spreads_give_the_interval_of_the_first_order() -> None:
    strength, pour = value(1.0, bottle=0.01), value(20.0, pour=0.3)
    yarn = value(100.0, yarn=0.5)
    depth = quotient(product(strength, pour), yarn)
    drawn = sampled_interval(over=[strength, pour], under=[yarn], generator=lots())
    # an end of 95 % from 10 000 draws is unsure by √(0.025 · 0.975/n)/f = 2.7 % of u
    for end, sign in ((drawn.low, -1.0), (drawn.high, 1.0)):
        reach = sign * half_width(depth)
        assert end - depth.value == pytest.approx(reach, abs=0.1 * depth.u)
    assert drawn.coverage == 0.95


def test_a_wide_divisor_reaches_farther_up_than_down() -> None:
    yarn = value(10.0, yarn=1.5)
    drawn = sampled_interval(over=[exact(1.0)], under=[yarn], generator=lots())
    assert drawn.high - 0.1 > 1.5 * (0.1 - drawn.low)
    other = sorted(reckoned([exact(1.0)], [yarn], draws=20_000, seed=5))
    assert drawn.low == pytest.approx(other[500], rel=0.02)
    assert drawn.high == pytest.approx(other[-500], rel=0.05)


def test_nothing_measured_is_less_than_nothing() -> None:
    pour = value(0.1, pour=0.2)
    assert sampled_interval(over=[pour], generator=lots()).low == 0.0


def test_one_source_is_drawn_once_a_turn() -> None:
    fill = value(50.0, fill=5.0)
    drawn = sampled_interval(over=[fill], under=[fill], generator=lots())
    assert (drawn.low, drawn.high) == pytest.approx((1.0, 1.0))


def test_shapes_are_drawn_as_they_are() -> None:
    for shape, reach in ((Shape.RECTANGULAR, 0.0), (Shape.TRIANGULAR, 0.0)):
        given_value = shaped((0.5, shape))
        drawn = sampled_interval(
            over=[given_value], generator=lots(), coverage=0.999, draws=50_000
        )
        assert drawn.low >= 0.5 + reach
        assert drawn.high <= 1.5
        assert drawn.high - drawn.low == pytest.approx(
            2 * half_width(given_value, coverage=0.999), rel=0.01
        )


def test_the_same_seed_gives_the_same_interval() -> None:
    pour = value(1.0, pour=0.2)
    one, other = (
        sampled_interval(over=[pour], generator=lots(4), draws=500) for _ in range(2)
    )
    assert one == other


def test_what_is_wide() -> None:
    assert is_wide(exact(1.0), value(1.0, pour=0.11))
    assert not is_wide(value(1.0, pour=0.1), value(1.0, pour=0.05))
    assert not is_wide()


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"coverage": 1.0}, "Coverage"),
        ({"draws": 99}, "Draws"),
        ({"under": [exact(0.0)]}, "divided by"),
        ({"under": [value(-1.0, yarn=0.1)]}, "divided by"),
    ],
)
def test_what_cannot_be_drawn_is_refused(
    changes: dict[str, object], words: str
) -> None:
    asked: dict[str, object] = {"over": [exact(1.0)], "generator": lots(), **changes}
    with pytest.raises(OutOfRangeError, match=words):
        sampled_interval(**asked)  # type: ignore[arg-type]


def test_a_value_is_only_its_terms() -> None:
    assert sampled_interval(over=[exact(2.0)], generator=lots()).high == 2.0
    assert isinstance(Value(value=1.0), Value)
