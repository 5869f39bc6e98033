"""What timed heat-ups teach."""

from math import exp

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.heating import (
    HeatUp,
    guessed_minutes,
    is_held_back,
    learned_share,
    predicted_minutes,
)
from shadewright.core.tables.heat import Source
from shadewright.errors import MissingError, OutOfRangeError

heat_ups = st.lists(
    st.builds(
        HeatUp,
        energy_kwh=st.floats(0.05, 5),
        power_kw=st.floats(0.5, 8),
        minutes=st.floats(5, 200),
    ),
    min_size=1,
    max_size=12,
)


def timed(*minutes: float) -> list[HeatUp]:
    return [HeatUp(energy_kwh=0.5, power_kw=2.0, minutes=each) for each in minutes]


@pytest.mark.by_hand
def test_one_real_timing_replaces_the_guess() -> None:
    """60 x 0.5 / (2 x 20) = 0.75 of the power arrive; 0.6 kWh then take 24 min.

    k = 2.78 x 0.05 x √2 = 0.1966; 24 e^∓k = 19.7 and 29.2.
    """
    learned = learned_share(timed(20.0))
    assert learned.share == pytest.approx(0.75)
    assert (learned.count, learned.freedom) == (1, 4.0)
    found = predicted_minutes(energy_kwh=0.6, power_kw=2.0, learned=learned)
    assert found.minutes == pytest.approx(24.0)
    assert found.least == pytest.approx(24 * exp(-0.1966), abs=0.01)
    assert found.most == pytest.approx(24 * exp(0.1966), abs=0.01)
    assert found.count == 1


@pytest.mark.by_hand
def test_several_are_averaged() -> None:
    """Logarithms of 38, 40, 42 min average at √[3](38 · 40 · 42) = 39.967 min.

    s² = (4 x 0.05² + 0.002567... + 0 + 0.002381...)/6 with ln(38/39.967) = −0.05046,
    ln(40/39.967) = 0.00083, ln(42/39.967) = 0.04962:
    (0.01 + 0.002546 + 0.0000007 + 0.002462)/6 = 0.0025015, s = 0.05002.
    k = 2.45 x 0.05002 x √(4/3) = 0.1415.
    """
    learned = learned_share(timed(38.0, 40.0, 42.0))
    assert learned.spread == pytest.approx(0.05002, abs=2e-5)
    found = predicted_minutes(energy_kwh=0.5, power_kw=2.0, learned=learned)
    assert found.minutes == pytest.approx(39.967, abs=1e-3)
    assert found.most / found.minutes == pytest.approx(exp(0.1415), abs=2e-4)


def test_heat_ups_that_stray_are_not_called_sure() -> None:
    near = learned_share(timed(38, 39, 40, 41, 42))
    far = learned_share(timed(20, 30, 40, 50, 60))
    assert far.spread > 3 * near.spread


@given(heat_ups)
def test_the_order_does_not_matter(found: list[HeatUp]) -> None:
    there, back = learned_share(found), learned_share(found[::-1])
    assert there.share == pytest.approx(back.share)
    assert there.spread == pytest.approx(back.spread)


@given(heat_ups)
def test_the_mean_lies_among_its_heat_ups(found: list[HeatUp]) -> None:
    shares = [each.share for each in found]
    learned = learned_share(found)
    assert min(shares) * (1 - 1e-9) <= learned.share <= max(shares) * (1 + 1e-9)
    said = predicted_minutes(energy_kwh=1.0, power_kw=2.0, learned=learned)
    assert 0 < said.least < said.minutes < said.most


@given(st.integers(1, 40))
def test_like_heat_ups_make_it_surer(count: int) -> None:
    few = learned_share(timed(*[40.0] * count))
    more = learned_share(timed(*[40.0] * (count + 1)))
    said = [
        predicted_minutes(energy_kwh=0.5, power_kw=2.0, learned=each)
        for each in (few, more)
    ]
    assert said[1].most - said[1].least < said[0].most - said[0].least


@pytest.mark.by_hand
def test_a_guess_spans_the_printed_shares() -> None:
    """60 x 0.372 / (1.8 x 0.90) = 13.8; by 0.75: 16.5."""
    guess = guessed_minutes(energy_kwh=0.372, power_kw=1.8, source=Source.INDUCTION)
    assert guess.count == 0
    assert guess.least == pytest.approx(13.78, abs=0.01)
    assert guess.most == pytest.approx(16.53, abs=0.01)


@pytest.mark.parametrize(
    ("minutes", "recipe_min", "held"),
    [(58, 58, True), (53, 58, True), (63, 58, True), (40, 58, False), (70, 58, False)],
)
def test_a_pace_kept_by_hand_says_nothing_of_the_source(
    minutes: float, recipe_min: float, *, held: bool
) -> None:
    assert is_held_back(minutes=minutes, recipe_min=recipe_min) is held


def test_a_recipe_without_a_pace_holds_nothing_back() -> None:
    assert not is_held_back(minutes=40.0, recipe_min=None)


def test_nothing_is_learned_from_nothing() -> None:
    with pytest.raises(MissingError):
        learned_share([])


@pytest.mark.parametrize("bad", [0.0, -1.0, float("nan")])
def test_a_heat_up_that_cannot_be(bad: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        learned_share([HeatUp(energy_kwh=0.5, power_kw=2.0, minutes=bad)])
    assert refused.value.argument == "minutes"
    with pytest.raises(OutOfRangeError):
        learned_share([HeatUp(energy_kwh=bad, power_kw=2.0, minutes=20.0)])
