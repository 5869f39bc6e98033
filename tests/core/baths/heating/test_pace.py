"""Minutes, the fastest rise, and whether a recipe's rise is kept."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.heating import (
    Pace,
    fastest_rise_c_per_min,
    heating_minutes,
    rise_pace,
)
from shadewright.errors import OutOfRangeError

rises = st.floats(0.01, 50.0)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("share", "minutes"),
    # 60 x 0.372 / (1.8 x share)
    [(0.32, 38.75), (0.40, 31.0), (0.75, 16.53), (0.85, 14.59)],
)
def test_minutes_by_source(share: float, minutes: float) -> None:
    found = heating_minutes(energy_kwh=0.372, power_kw=1.8, share=share)
    assert found == pytest.approx(minutes, abs=0.005)


@given(st.floats(0.001, 100.0), st.floats(0.1, 20.0), st.floats(0.05, 1.0))
def test_twice_the_power_takes_half_the_time(
    energy_kwh: float, power_kw: float, share: float
) -> None:
    once = heating_minutes(energy_kwh=energy_kwh, power_kw=power_kw, share=share)
    twice = heating_minutes(energy_kwh=energy_kwh, power_kw=2 * power_kw, share=share)
    assert twice == pytest.approx(once / 2)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("fastest", "pace", "power_share"),
    [
        (0.8, Pace.TOO_SLOW, 1.0),
        (1.0, Pace.KEPT, 1.0),
        (1.25, Pace.KEPT, 0.8),
        (1.5, Pace.RUNS_AHEAD, 2 / 3),
        (5.0, Pace.RUNS_AHEAD, 0.2),
    ],
)
def test_a_rise_of_one_degree_a_minute(
    fastest: float, pace: Pace, power_share: float
) -> None:
    found = rise_pace(wanted_c_per_min=1.0, fastest_c_per_min=fastest)
    assert found.pace is pace
    assert found.power_share == pytest.approx(power_share)


@given(rises, rises)
def test_no_more_than_the_whole_power_is_asked_for(wanted: float, best: float) -> None:
    found = rise_pace(wanted_c_per_min=wanted, fastest_c_per_min=best)
    assert 0 < found.power_share <= 1
    assert (found.pace is Pace.TOO_SLOW) == (wanted > best)


@pytest.mark.by_hand
def test_the_fastest_rise_is_degrees_by_minutes() -> None:
    assert fastest_rise_c_per_min(start_c=20.0, top_c=95.0, minutes=15.0) == 5.0


@pytest.mark.parametrize("value", [0.0, -1.0, float("nan"), float("inf")])
def test_no_power_no_share_no_time_no_rise(value: float) -> None:
    with pytest.raises(OutOfRangeError, match="Power"):
        heating_minutes(energy_kwh=1.0, power_kw=value, share=0.5)
    with pytest.raises(OutOfRangeError, match="Share"):
        heating_minutes(energy_kwh=1.0, power_kw=1.0, share=value)
    with pytest.raises(OutOfRangeError, match="Time"):
        fastest_rise_c_per_min(start_c=20.0, top_c=95.0, minutes=value)
    with pytest.raises(OutOfRangeError, match="rise"):
        rise_pace(wanted_c_per_min=value, fastest_c_per_min=1.0)
