import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    depth_caution,
    depth_from_g_per_lb_percent,
    depth_from_g_per_oz_percent,
    depth_percent,
    dye_mass_g,
    total_depth_percent,
)
from shadewright.errors import OutOfRangeError

masses_g = st.floats(min_value=0.1, max_value=100_000)
depths_percent = st.floats(min_value=0.001, max_value=20)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("fibre_g", "depth", "dye_g"),
    [
        (125, 2, 2.5),  # 125 x 0.02
        (300, 3, 9),  # 300 x 0.03
        (200, 0.85, 1.7),  # 200 x 0.0085
        (454, 0.85, 3.859),  # 454 x 0.0085
    ],
)
def test_dye_is_a_share_of_the_fibre(
    fibre_g: float, depth: float, dye_g: float
) -> None:
    given_g = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
    assert given_g == pytest.approx(dye_g, rel=1e-12)


@pytest.mark.by_hand
def test_a_recipe_in_grams_to_the_pound() -> None:
    # 2.5 / 453.59237 = 0.0055116; 30 / 453.59237 = 0.066139
    assert depth_from_g_per_lb_percent(dye_g_per_lb=2.5) == pytest.approx(
        0.55116, abs=5e-6
    )
    assert depth_from_g_per_lb_percent(dye_g_per_lb=30) == pytest.approx(
        6.6139, abs=5e-5
    )


@pytest.mark.by_hand
def test_a_recipe_in_grams_to_the_ounce() -> None:
    # 1 oz to the pound is 1/16 = 6.25 %; 1 g to the ounce is 1/28.3495 = 3.5274 %
    assert depth_from_g_per_lb_percent(dye_g_per_lb=28.349523125) == pytest.approx(6.25)
    assert depth_from_g_per_oz_percent(dye_g_per_oz=1) == pytest.approx(
        3.5274, abs=5e-5
    )


@given(fibre_g=masses_g, depth=depths_percent)
def test_depth_and_dye_undo_each_other(fibre_g: float, depth: float) -> None:
    dye_g = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
    back = depth_percent(dye_mass_g=dye_g, fibre_mass_g=fibre_g)
    assert back == pytest.approx(depth, rel=1e-12)


@given(fibre_g=masses_g, depth=depths_percent, times=st.floats(0.01, 10))
def test_twice_the_yarn_takes_twice_the_dye(
    fibre_g: float, depth: float, times: float
) -> None:
    once = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
    more = dye_mass_g(fibre_mass_g=fibre_g * times, depth_percent=depth)
    assert more == pytest.approx(once * times, rel=1e-12)


def test_depths_add_up() -> None:
    total = total_depth_percent(depths_percent=(0.85, 0.1, 0.05))
    assert total == pytest.approx(1.0)


def test_only_a_very_deep_bath_is_cautioned() -> None:
    assert depth_caution(total_depth_percent=6.0) is None
    caution = depth_caution(total_depth_percent=6.01)
    assert caution is not None
    assert "6.01\u00a0%" in caution


@pytest.mark.parametrize("depth", [0, -1, 50.01, float("nan"), float("inf")])
def test_a_depth_that_cannot_be_is_refused(depth: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        dye_mass_g(fibre_mass_g=100, depth_percent=depth)
    assert caught.value.argument == "depth_percent"
    assert "above 0 and at most 50\u00a0%" in caught.value.sentence


@pytest.mark.parametrize("fibre_g", [0, -100, 1e9])
def test_fibre_that_cannot_be_is_refused(fibre_g: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        depth_percent(dye_mass_g=1, fibre_mass_g=fibre_g)
    assert caught.value.argument == "fibre_mass_g"


def test_no_dye_is_no_depth_and_less_is_refused() -> None:
    assert depth_percent(dye_mass_g=0, fibre_mass_g=100) == 0
    with pytest.raises(OutOfRangeError) as caught:
        depth_percent(dye_mass_g=-1, fibre_mass_g=100)
    assert caught.value.argument == "dye_mass_g"
