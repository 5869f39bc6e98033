"""A stock that went wrong."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import (
    make_up_to_ml,
    powder_to_strengthen_g,
    rescue_dried,
    rescue_filled,
    rescue_weighed,
    stock_to_strengthen_ml,
    true_strength_percent,
)
from shadewright.core.solutions.alligation import Portion, mixture
from shadewright.errors import OutOfRangeError

GRAMS = st.floats(min_value=0.1, max_value=500.0)
STRENGTHS = st.floats(min_value=0.5, max_value=20.0)
VOLUMES = st.floats(min_value=20.0, max_value=20_000.0)


@pytest.mark.by_hand
def test_too_much_was_weighed() -> None:
    # 5.37 g at 1 g to 100 ml is 537 ml: 37 ml more than the 500 ml inside.
    rescued = rescue_weighed(powder_g=5.37, strength_percent=1.0, in_vessel_ml=500.0)
    assert rescued.make_up_to_ml == pytest.approx(537.0)
    assert rescued.add_water_ml == pytest.approx(37.0)
    unknown = rescue_weighed(powder_g=5.37, strength_percent=1.0)
    assert unknown.add_water_ml is None


def test_more_in_the_vessel_than_the_powder_is_good_for_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        rescue_weighed(powder_g=4.8, strength_percent=1.0, in_vessel_ml=500.0)
    assert "480\u00a0ml" in refused.value.sentence
    assert refused.value.argument == "in_vessel_ml"


@pytest.mark.by_hand
def test_made_up_past_the_mark() -> None:
    # 10 g in 1040 ml is 1000/1040 = 0.961538 %; 1 % of 1040 ml is 10.4 g.
    weak = rescue_filled(powder_g=10.0, strength_percent=1.0, volume_ml=1040.0)
    assert weak.true_strength_percent == pytest.approx(0.9615384615)
    assert weak.add_powder_g == pytest.approx(0.40)
    assert weak.make_up_to_ml is None
    assert weak.add_water_ml is None


@pytest.mark.by_hand
def test_made_up_short_of_the_mark() -> None:
    # 10 g in 960 ml is 1.041667 %; 10 g make 1000 ml, so 40 ml are missing.
    strong = rescue_filled(powder_g=10.0, strength_percent=1.0, volume_ml=960.0)
    assert strong.true_strength_percent == pytest.approx(1.0416666667)
    assert strong.add_powder_g is None
    assert strong.make_up_to_ml == pytest.approx(1000.0)
    assert strong.add_water_ml == pytest.approx(40.0)


def test_made_up_just_right_wants_nothing() -> None:
    right = rescue_filled(powder_g=10.0, strength_percent=1.0, volume_ml=1000.0)
    assert right.true_strength_percent == 1.0
    assert (right.add_powder_g, right.make_up_to_ml, right.add_water_ml) == (None,) * 3


@given(GRAMS, STRENGTHS, VOLUMES, st.floats(min_value=20.0, max_value=400.0))
def test_what_is_rescued_has_the_strength_wanted(
    grams: float, want: float, volume: float, powder_strength: float
) -> None:
    try:
        rescued = rescue_filled(
            powder_g=grams,
            strength_percent=want,
            volume_ml=volume,
            powder_strength_percent=powder_strength,
        )
    except OutOfRangeError:
        assert grams * powder_strength / volume > 50.0
        return
    after = true_strength_percent(
        powder_g=grams + (rescued.add_powder_g or 0.0),
        volume_ml=volume + (rescued.add_water_ml or 0.0),
        powder_strength_percent=powder_strength,
    )
    assert after == pytest.approx(want, rel=1e-8)


@given(GRAMS, STRENGTHS)
def test_the_volume_for_a_powder_gives_back_the_strength(
    grams: float, strength: float
) -> None:
    volume = make_up_to_ml(powder_g=grams, strength_percent=strength)
    found = true_strength_percent(powder_g=grams, volume_ml=volume)
    assert found == pytest.approx(strength, rel=1e-12)


@pytest.mark.by_hand
def test_a_bottle_that_dried_out() -> None:
    # 600 ml at 1 % hold 6 g; 6 g in 540 ml are 600/540 = 1.1111 %.
    dried = rescue_dried(
        strength_percent=1.0, volume_before_ml=600.0, volume_now_ml=540.0
    )
    assert dried.true_strength_percent == pytest.approx(1.1111111111)
    assert dried.add_water_ml == 60.0


def test_a_bottle_does_not_grow() -> None:
    with pytest.raises(OutOfRangeError, match="Volume now"):
        rescue_dried(strength_percent=1.0, volume_before_ml=500.0, volume_now_ml=501.0)


@pytest.mark.by_hand
def test_a_part_bottle_made_stronger() -> None:
    # 400 ml × (1 − 0.8)/100 = 0.8 g
    grams = powder_to_strengthen_g(volume_ml=400.0, have_percent=0.8, want_percent=1.0)
    assert grams == pytest.approx(0.8)
    # 400 ml × (1 − 0.8)/(2 − 1) = 80 ml
    millilitres = stock_to_strengthen_ml(
        volume_ml=400.0, have_percent=0.8, want_percent=1.0, stronger_percent=2.0
    )
    assert millilitres == pytest.approx(80.0)


@given(VOLUMES, st.floats(0.1, 1.0), st.floats(1.1, 3.0), st.floats(3.5, 20.0))
def test_a_strengthened_bottle_has_the_strength_wanted(
    volume: float, have: float, want: float, stronger: float
) -> None:
    added = stock_to_strengthen_ml(
        volume_ml=volume,
        have_percent=have,
        want_percent=want,
        stronger_percent=stronger,
    )
    together = mixture([
        Portion(volume_ml=volume, strength_percent=have),
        Portion(volume_ml=added, strength_percent=stronger),
    ])
    assert together.strength_percent == pytest.approx(want, rel=1e-9)


def test_stronger_is_never_weaker() -> None:
    with pytest.raises(OutOfRangeError, match="dilute"):
        powder_to_strengthen_g(volume_ml=400.0, have_percent=1.0, want_percent=0.8)
    with pytest.raises(OutOfRangeError, match="stronger than the 1"):
        stock_to_strengthen_ml(
            volume_ml=400.0, have_percent=0.8, want_percent=1.0, stronger_percent=1.0
        )


def test_a_vessel_that_holds_the_last_drop_wants_nothing() -> None:
    # 25.19 g × 70.3 %/0.11 % = 16098.7 ml, in binary 2e-12 less
    full = rescue_weighed(
        powder_g=25.19,
        strength_percent=0.11,
        powder_strength_percent=70.3,
        in_vessel_ml=16098.7,
    )
    assert full.add_water_ml == 0.0


def test_more_than_a_studio_holds_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        make_up_to_ml(powder_g=1000.0, strength_percent=0.01)
    assert refused.value.argument == "powder_g"
