"""Two scales, and the density of water."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import (
    temperature_f,
    temperature_from_fahrenheit_c,
    water_density_g_per_ml,
)
from shadewright.errors import OutOfRangeError
from tests.published_cases import PublishedCase, published


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("fahrenheit", "celsius"),
    # (185 − 32)/1.8 = 85; (200 − 32)/1.8 = 93.333…; −40 is the same on both
    [(32.0, 0.0), (185.0, 85.0), (200.0, 280.0 / 3.0), (212.0, 100.0), (-40.0, -40.0)],
)
def test_fahrenheit_is_turned_into_celsius(fahrenheit: float, celsius: float) -> None:
    assert temperature_from_fahrenheit_c(temperature_f=fahrenheit) == pytest.approx(
        celsius
    )


@given(st.floats(min_value=-50.0, max_value=400.0))
def test_there_and_back_is_the_same(celsius: float) -> None:
    there = temperature_f(temperature_c=celsius)
    assert temperature_from_fahrenheit_c(temperature_f=there) == pytest.approx(
        celsius, abs=1e-9
    )


@pytest.mark.parametrize("case", published("water"))
def test_water_weighs_what_the_table_says(case: PublishedCase) -> None:
    assert case.agrees(water_density_g_per_ml(**case.inputs))


@given(
    st.floats(min_value=4.5, max_value=100.0), st.floats(min_value=4.5, max_value=100.0)
)
def test_warmer_water_is_lighter_above_4_degrees(one: float, two: float) -> None:
    cool, warm = sorted((one, two))
    assert water_density_g_per_ml(temperature_c=warm) <= water_density_g_per_ml(
        temperature_c=cool
    )


@pytest.mark.parametrize("celsius", [-0.1, 100.1, float("nan")])
def test_ice_and_steam_are_refused(celsius: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        water_density_g_per_ml(temperature_c=celsius)
    assert refused.value.argument == "temperature_c"
