"""Run rules: each is met where its text says so, not one lot sooner."""

from random import Random

import pytest

from shadewright.core.quality.causes.runs import RULES, rules_met

ONE, NINE, SIX, TWO, FOUR = (rule.says for rule in RULES)


@pytest.mark.published
@pytest.mark.parametrize(
    ("places", "says"),
    [
        ([0.0, 3.1], (ONE,)),  # test 1
        ([0.0, 2.9], ()),
        ([0.2, 0.5, 0.1, 0.6, 0.3, 0.2, 0.9, 0.1, 0.4], (NINE,)),  # test 2
        ([-0.2, 0.5, 0.1, 0.6, 0.3, 0.2, 0.9, 0.1, 0.4], ()),
        ([0.5, 0.1, 0.6, 0.3, 0.2, 0.9, 0.1, 0.4], ()),
        ([-0.5, -0.3, -0.1, 0.2, 0.4, 0.6], (SIX,)),  # test 3
        ([0.5, 0.3, 0.1, -0.2, -0.4, -0.6], (SIX,)),
        ([-0.3, -0.1, 0.2, 0.4, 0.6], ()),
        ([2.1, -0.3, 2.2], (TWO,)),  # test 5
        ([2.1, -0.3, -2.2], ()),
        ([2.1, 2.2, 0.1], ()),
        ([1.1, 1.2, 0.1, 1.3, 1.4], (FOUR,)),  # test 6
        ([-1.1, -1.2, -0.1, -1.3, -1.4], (FOUR,)),
        ([1.1, 1.2, 0.1, 0.3, 1.4], ()),
    ],
)
def test_a_pattern_is_seen(places: list[float], says: tuple[str, ...]) -> None:
    """Nelson (1984), figure 1: tests 1, 2, 3, 5 and 6, from memory."""
    assert rules_met(places) == says


def test_noise_alone_rarely_meets_a_rule() -> None:
    """About one lot in a hundred."""
    draws = Random(3)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    places = [draws.gauss(0.0, 1.0) for _ in range(6000)]
    met = [bool(rules_met(places[: n + 1][-9:])) for n in range(9, len(places))]
    assert 0.004 < sum(met) / len(met) < 0.017
