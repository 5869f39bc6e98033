"""The boiling point by altitude."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.heating import (
    boiling_at_pressure_c,
    boiling_caution,
    boiling_point_c,
)
from shadewright.errors import OutOfRangeError

altitudes = st.floats(-430.0, 6000.0)


@given(altitudes, altitudes)
def test_higher_up_water_boils_cooler(one: float, two: float) -> None:
    low, high = sorted((one, two))
    assert boiling_point_c(altitude_m=high) <= boiling_point_c(altitude_m=low)


@pytest.mark.by_hand
def test_about_a_degree_for_300_metres() -> None:
    """A rule that cooks know: 1600 m are 5.3 degrees, 100 − 5.3 = 94.7."""
    assert boiling_point_c(altitude_m=0.0) == pytest.approx(100.0, abs=0.05)
    assert boiling_point_c(altitude_m=1600.0) == pytest.approx(94.7, abs=0.1)


def test_a_hold_that_the_altitude_forbids() -> None:
    told = boiling_caution(top_c=98.0, altitude_m=1600.0)
    assert told is not None
    said = told.replace("\u00a0", " ")
    assert said.startswith("At 1600 m water boils at 94.6 °C: 98 °C cannot be")
    assert boiling_caution(top_c=94.0, altitude_m=1600.0) is None


def test_the_boil_itself_can_be_reached() -> None:
    assert boiling_caution(top_c=100.0, altitude_m=0.0) is None
    told = boiling_caution(top_c=102.0, altitude_m=0.0)
    assert told is not None
    assert told.startswith("At sea level")


@pytest.mark.parametrize("altitude_m", [-431.0, 6001.0, float("nan")])
def test_no_studio_stands_there(altitude_m: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        boiling_point_c(altitude_m=altitude_m)
    assert refused.value.argument == "altitude_m"


def test_a_pressure_under_which_nothing_boils() -> None:
    with pytest.raises(OutOfRangeError):
        boiling_at_pressure_c(pressure_kpa=0.1)
