import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    depth_given_percent,
    dye_mass_g,
    stock_volume_ml,
    weighed_mass_g,
    weighed_volume_ml,
)
from shadewright.errors import OutOfRangeError

strengths_percent = st.floats(min_value=0.01, max_value=10)
doses_g = st.floats(min_value=0.001, max_value=100)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("fibre_g", "depth", "strength", "ml"),
    [
        (454, 2, 1, 908),  # 454 x 2 / 1
        (454, 0.1, 0.1, 454),  # 454 x 0.1 / 0.1
        (1100, 2, 1.5, 1466.6666666666667),  # 2200 / 1.5
        (100, 0.05, 1, 5),  # 5 / 1
        (100, 0.05, 0.1, 50),  # 5 / 0.1
    ],
)
def test_volume_is_fibre_times_depth_over_strength(
    fibre_g: float, depth: float, strength: float, ml: float
) -> None:
    dye_g = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
    volume_ml = stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength)
    assert volume_ml == pytest.approx(ml, rel=1e-12)


@pytest.mark.by_hand
def test_what_was_really_measured_gives_the_depth() -> None:
    # 62 ml x 1 g/100 ml = 0.62 g on 100 g
    assert depth_given_percent(
        stock_ml=62, strength_percent=1, fibre_mass_g=100
    ) == pytest.approx(0.62)


@given(dye_g=doses_g, strength=strengths_percent)
def test_two_half_doses_are_one(dye_g: float, strength: float) -> None:
    one = stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength)
    half = stock_volume_ml(dye_mass_g=dye_g / 2, strength_percent=strength)
    assert 2 * half == pytest.approx(one, rel=1e-12)


@given(
    fibre_g=st.floats(1, 1000),
    depth=st.floats(0.001, 10),
    strength=strengths_percent,
)
def test_a_dose_gives_the_depth_it_was_made_for(
    fibre_g: float, depth: float, strength: float
) -> None:
    dye_g = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
    volume_ml = stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength)
    back = depth_given_percent(
        stock_ml=volume_ml, strength_percent=strength, fibre_mass_g=fibre_g
    )
    assert back == pytest.approx(depth, rel=1e-12)


@given(dye_g=doses_g, strength=strengths_percent)
def test_half_the_strength_is_twice_the_volume(dye_g: float, strength: float) -> None:
    strong = stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength)
    weak = stock_volume_ml(dye_mass_g=dye_g, strength_percent=strength / 2)
    assert weak == pytest.approx(2 * strong, rel=1e-12)


@pytest.mark.parametrize("strength", [0, -1, 51, float("nan")])
def test_a_strength_that_cannot_be_is_refused(strength: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        stock_volume_ml(dye_mass_g=1, strength_percent=strength)
    assert caught.value.argument == "strength_percent"


def test_a_negative_volume_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as caught:
        depth_given_percent(stock_ml=-1, strength_percent=1, fibre_mass_g=100)
    assert caught.value.argument == "stock_ml"


@given(ml=st.floats(0, 5000), strength=strengths_percent)
def test_what_is_weighed_is_what_was_measured(ml: float, strength: float) -> None:
    mass_g = weighed_mass_g(volume_ml=ml, strength_percent=strength)
    back_ml = weighed_volume_ml(mass_g=mass_g, strength_percent=strength)
    assert back_ml == pytest.approx(ml, rel=1e-12)


@pytest.mark.by_hand
def test_a_millilitre_of_stock_weighs_its_water_and_its_dye() -> None:
    # 60 ml of 1 %: 60 x (0.99821 + 0.01) g
    mass_g = weighed_mass_g(volume_ml=60, strength_percent=1)
    assert mass_g == pytest.approx(60.492, abs=5e-4)
    with pytest.raises(OutOfRangeError):
        weighed_volume_ml(mass_g=-1, strength_percent=1)
    with pytest.raises(OutOfRangeError):
        weighed_mass_g(volume_ml=-1, strength_percent=1)
