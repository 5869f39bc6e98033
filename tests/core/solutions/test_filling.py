"""Made up hot, and made up on a scale."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import (
    cooled_strength_percent,
    filled_mass_g,
    hot_fill_warning,
)
from shadewright.errors import OutOfRangeError


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("celsius", "too_strong_percent"),
    # with densities of 0.99821 at 20 °C: 0.99821/0.9718 = 1.0272,
    # 0.99821/0.98320 = 1.0153, 0.99821/0.99222 = 1.0060
    [(80.0, 2.7), (60.0, 1.5), (40.0, 0.6), (20.0, 0.0)],
)
def test_a_hot_fill_comes_out_strong(celsius: float, too_strong_percent: float) -> None:
    cooled = cooled_strength_percent(strength_percent=1.0, filled_at_c=celsius)
    assert 100.0 * (cooled - 1.0) == pytest.approx(too_strong_percent, abs=0.05)


def test_a_hot_fill_is_warned_of_and_a_cool_one_is_not() -> None:
    warning = hot_fill_warning(strength_percent=1.0, filled_at_c=80.0)
    assert warning is not None
    assert "2.7\u00a0% too strong" in warning
    assert "1.03\u00a0%" in warning
    strong = hot_fill_warning(strength_percent=4.0, filled_at_c=80.0)
    assert strong is not None
    assert "2.7\u00a0% too strong" in strong
    for cool in (5.0, 20.0, 30.0):
        assert hot_fill_warning(strength_percent=4.0, filled_at_c=cool) is None


@given(
    st.floats(min_value=0.01, max_value=50.0), st.floats(min_value=21.0, max_value=100)
)
def test_hot_is_always_stronger_once_cool(strength: float, celsius: float) -> None:
    cooled = cooled_strength_percent(strength_percent=strength, filled_at_c=celsius)
    assert strength < cooled < 1.05 * strength


@pytest.mark.by_hand
def test_a_stock_on_a_scale() -> None:
    # 500 ml at 0.9982 g/ml is 499.1 g, and 5 g of powder make 504.1 g.
    assert filled_mass_g(volume_ml=500.0, powder_g=5.0) == pytest.approx(
        504.1, abs=0.05
    )
    # At 80 °C it is 500 × 0.9718 + 5 = 490.9 g.
    hot = filled_mass_g(volume_ml=500.0, powder_g=5.0, filled_at_c=80.0)
    assert hot == pytest.approx(490.9, abs=0.05)


@pytest.mark.parametrize("celsius", [-1.0, 101.0])
def test_ice_and_steam_are_refused(celsius: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        filled_mass_g(volume_ml=500.0, powder_g=5.0, filled_at_c=celsius)
    assert refused.value.argument == "filled_at_c"
