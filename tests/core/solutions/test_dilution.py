"""Weaker stocks, blends and merged bottles."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import (
    Portion,
    blend,
    dilution,
    first_share,
    merged,
    mixture,
)
from shadewright.errors import MissingError, OutOfRangeError

PORTIONS = st.builds(
    Portion,
    volume_ml=st.floats(min_value=1.0, max_value=5000.0),
    strength_percent=st.floats(min_value=0.01, max_value=50.0),
)


@pytest.mark.by_hand
def test_a_stock_is_thinned() -> None:
    # 250 ml × 0.5/2 = 62.5 ml
    plan = dilution(have_percent=2.0, want_percent=0.5, volume_ml=250.0)
    assert (plan.stock_ml, plan.water_ml) == (62.5, 187.5)


def test_a_stock_thinned_by_nothing_is_itself() -> None:
    plan = dilution(have_percent=2.0, want_percent=2.0, volume_ml=250.0)
    assert (plan.stock_ml, plan.water_ml) == (250.0, 0.0)


@pytest.mark.parametrize(
    ("have", "want", "volume", "argument"),
    [
        (1.0, 2.0, 250.0, "want_percent"),
        (1.0, 0.0, 250.0, "want_percent"),
        (1.0, -0.5, 250.0, "want_percent"),
        (0.0, 0.5, 250.0, "have_percent"),
        (51.0, 0.5, 250.0, "have_percent"),
        (1.0, 0.5, 0.0, "volume_ml"),
        (1.0, 0.5, -250.0, "volume_ml"),
    ],
)
def test_what_cannot_be_thinned_is_refused(
    have: float, want: float, volume: float, argument: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        dilution(have_percent=have, want_percent=want, volume_ml=volume)
    assert refused.value.argument == argument


@pytest.mark.by_hand
def test_two_stocks_reach_a_third() -> None:
    # (0.75 − 0.5)/(1 − 0.5) is one half
    mix = blend(
        first_percent=1.0, second_percent=0.5, want_percent=0.75, volume_ml=250.0
    )
    assert (mix.first_ml, mix.second_ml) == (125.0, 125.0)
    # 70 % and 20 % to 30 %: (30 − 20)/(70 − 20) = 1/5, so 1 part to 4
    share = first_share(first_percent=70.0, second_percent=20.0, want_percent=30.0)
    assert share == 0.2


@pytest.mark.parametrize("want", [0.4, 1.1])
def test_a_third_outside_the_two_is_refused(want: float) -> None:
    with pytest.raises(OutOfRangeError, match="No mixture of the two"):
        blend(first_percent=1.0, second_percent=0.5, want_percent=want, volume_ml=250.0)


def test_two_alike_reach_only_themselves() -> None:
    mix = blend(first_percent=1.0, second_percent=1.0, want_percent=1.0, volume_ml=9.0)
    assert (mix.first_ml, mix.second_ml) == (9.0, 0.0)


@pytest.mark.by_hand
def test_part_bottles_are_merged() -> None:
    # (180 × 1 + 320 × 0.5)/500 = 340/500 = 0.68
    together = merged([
        Portion(volume_ml=180.0, strength_percent=1.0),
        Portion(volume_ml=320.0, strength_percent=0.5),
    ])
    assert together.volume_ml == 500.0
    assert together.strength_percent == pytest.approx(0.68)
    # (500 × 40 + 100 × 90 + 400 × 0)/1000 = 29 (a mixture, too strong for a stock)
    spirits = mixture([
        Portion(volume_ml=500.0, strength_percent=40.0),
        Portion(volume_ml=100.0, strength_percent=90.0),
        Portion(volume_ml=400.0, strength_percent=0.0),
    ])
    assert spirits == Portion(volume_ml=1000.0, strength_percent=29.0)


@given(PORTIONS, PORTIONS, PORTIONS)
def test_it_does_not_matter_which_are_poured_first(
    one: Portion, two: Portion, three: Portion
) -> None:
    all_at_once = merged([one, two, three])
    for other in (
        merged([merged([one, two]), three]),
        merged([one, merged([two, three])]),
        merged([three, one, two]),
    ):
        assert other.volume_ml == pytest.approx(all_at_once.volume_ml)
        assert other.strength_percent == pytest.approx(all_at_once.strength_percent)


def test_two_of_the_strongest_stay_as_strong() -> None:
    """As floats, (3193 + 4999.77) × 50 over 3193 + 4999.77 is more than 50."""
    two = [
        Portion(volume_ml=volume_ml, strength_percent=50.0)
        for volume_ml in (3193.0, 4999.7688618637085)
    ]
    assert merged(two).strength_percent == 50.0


@given(st.lists(PORTIONS, min_size=1, max_size=6))
def test_a_mixture_lies_between_its_parts(portions: list[Portion]) -> None:
    strengths = [portion.strength_percent for portion in portions]
    together = merged(portions).strength_percent
    assert min(strengths) * (1 - 1e-12) <= together <= max(strengths) * (1 + 1e-12)


def test_nothing_cannot_be_merged() -> None:
    with pytest.raises(MissingError):
        merged([])


@pytest.mark.parametrize(
    ("volume", "strength"), [(0.0, 1.0), (-1.0, 1.0), (1.0, 0.0), (1.0, 51.0)]
)
def test_what_is_no_part_bottle_is_refused(volume: float, strength: float) -> None:
    good = Portion(volume_ml=100.0, strength_percent=1.0)
    with pytest.raises(OutOfRangeError):
        merged([good, Portion(volume_ml=volume, strength_percent=strength)])


@given(
    st.floats(min_value=0.02, max_value=50.0),
    st.floats(min_value=0.01, max_value=1.0),
    st.floats(min_value=1.0, max_value=5000.0),
)
def test_thinned_stock_is_stock_mixed_with_water(
    have: float, share: float, volume: float
) -> None:
    want = have * share
    plan = dilution(have_percent=have, want_percent=want, volume_ml=volume)
    poured = [Portion(volume_ml=plan.stock_ml, strength_percent=have)]
    if plan.water_ml > 0.0:
        poured.append(Portion(volume_ml=plan.water_ml, strength_percent=0.0))
    assert mixture(poured).strength_percent == pytest.approx(want)


def test_more_than_all_is_no_mixture() -> None:
    pure = Portion(volume_ml=1.0, strength_percent=100.0)
    assert mixture([pure]) == pure
    with pytest.raises(OutOfRangeError, match="to 100"):
        mixture([Portion(volume_ml=1.0, strength_percent=100.5)])
