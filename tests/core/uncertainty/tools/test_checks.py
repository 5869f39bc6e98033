"""Check weights and weighed water: what they find, and what a tool is then worth."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import Balance, measuring_tool
from shadewright.core.uncertainty.tools import (
    Finding,
    checked_balance,
    checked_ware,
    mass_read,
    water_check,
    water_volume_ml,
    weight_check,
)
from shadewright.errors import InputError, MissingError


def weighed(*readings_g: float, tolerance_g: float = 0.0) -> Finding:
    return weight_check(
        step_g=0.1, nominal_g=100.0, tolerance_g=tolerance_g, readings_g=readings_g
    )


@pytest.mark.by_hand
def test_a_scale_that_shows_the_weight_is_off_by_its_step_at_most() -> None:
    found = weighed(100.0, 100.0, 100.0)
    assert found.correction == 0.0
    assert found.u == pytest.approx(0.1 / sqrt(6))
    # a triangle of half-width d holds 95 % within d (1 − √0.05)
    assert found.half_width == pytest.approx(0.1 * (1 - sqrt(0.05)), rel=1e-3)


@pytest.mark.by_hand
def test_a_scale_that_shows_too_much_is_corrected_down() -> None:
    found = weighed(100.3, 100.4, tolerance_g=0.06)
    assert found.correction == pytest.approx(-0.35)
    assert found.u == pytest.approx(sqrt(0.1**2 / 6 + 0.06**2 / 3))
    assert 0.35 + found.u < found.half_width < 0.35 + 2 * found.u


def test_a_flicker_of_one_step_is_the_step() -> None:
    assert weighed(100.0, 100.1).u == pytest.approx(weighed(100.0).u)


@pytest.mark.by_hand
def test_a_scale_that_scatters_will_scatter_again() -> None:
    # readings −0.3, 0, +0.3: s = 0.3, of the next weighing 0.3 √(1 + 1/3) = 0.3464
    assert weighed(99.7, 100.0, 100.3).u == pytest.approx(
        sqrt(0.3464**2 + 0.1**2 / 6), rel=1e-4
    )


@pytest.mark.by_hand
def test_a_check_narrows_an_unchecked_scale() -> None:
    before = checked_balance(step_g=0.1, findings={})
    after = checked_balance(step_g=0.1, findings={100.0: weighed(100.0)})
    assert before.error_g == pytest.approx(0.2)
    assert after.error_g == pytest.approx(0.1 * (1 - sqrt(0.05)), rel=1e-3)
    assert (after.slope, after.slope_most_g) == (0.0, 0.0)


@pytest.mark.by_hand
def test_what_a_weight_found_off_counts_by_load() -> None:
    scale = checked_balance(step_g=0.1, findings={100.0: weighed(100.4)})
    # 0.4 g of 100 g: 0.04 g of 10 g, 0.4 g of 100 g, and no more above
    assert scale.slope == pytest.approx(0.004)
    own = {
        grams: mass_read(scale, grams, role="yarn", key="tool").terms[1].u * sqrt(3)
        for grams in (10.0, 100.0, 1000.0)
    }
    open_g = 0.1 * (1 - sqrt(0.05))  # what the check leaves open
    assert own == pytest.approx(
        {10.0: open_g + 0.04, 100.0: open_g + 0.4, 1000.0: open_g + 0.4}, rel=1e-3
    )


@pytest.mark.by_hand
def test_far_above_the_weight_a_check_says_nothing() -> None:
    # found right at 20 g: 0.0776 g is open; unchecked it is off by 2 steps of 0.1 g
    checked = checked_balance(
        step_g=0.1,
        findings={
            20.0: weight_check(
                step_g=0.1, nominal_g=20.0, tolerance_g=0.0, readings_g=[20.0] * 3
            )
        },
    )
    open_g = 0.1 * (1 - sqrt(0.05))
    own = [checked.own_error_g(grams) for grams in (5.0, 20.0, 30.0, 40.0, 200.0)]
    halfway = (open_g + 0.2) / 2
    assert own == pytest.approx([open_g, open_g, halfway, 0.2, 0.2], rel=1e-3)


def test_a_bad_scale_gets_no_better_above_the_weight() -> None:
    poor = checked_balance(step_g=0.1, findings={100.0: weighed(100.4)})
    assert poor.own_error_g(1000.0) == pytest.approx(poor.own_error_g(100.0))


def test_the_worst_of_several_weights_counts() -> None:
    scale = checked_balance(
        step_g=0.1,
        findings={
            100.0: weighed(100.5),
            10.0: weight_check(
                step_g=0.1, nominal_g=10.0, tolerance_g=0.5, readings_g=[10.0]
            ),
        },
    )
    assert scale.slope_most_g == pytest.approx(0.5)
    assert scale.error_g == pytest.approx(0.49, abs=0.01)


def test_a_check_beats_the_sheet_and_the_sheet_beats_nothing() -> None:
    sheet = checked_balance(step_g=0.1, findings={}, own_error_g=0.05)
    found = checked_balance(
        step_g=0.1, findings={100.0: weighed(100.5)}, own_error_g=0.05
    )
    assert sheet.error_g == 0.05
    assert (found.error_g, found.slope_most_g) == pytest.approx((0.078, 0.5), abs=1e-3)


@pytest.mark.by_hand
def test_a_jug_that_holds_less_than_its_mark_says() -> None:
    found = water_check(
        nominal_ml=1000.0,
        readings_g=[970.0],
        temperature_c=20.0,
        scale=Balance(step_g=1.0, error_g=2.0),
    )
    # 970 g · 1.0029 ml/g = 972.8 ml
    assert found.correction == pytest.approx(-27.2, abs=0.05)
    # u: 1/√6 and 2/√3 g: 0.408² + 1.155² = 1.5, √1.5 = 1.225
    assert found.u == pytest.approx(1.225 * 1.0029, abs=1e-3)
    jug = measuring_tool("jug 1000ml", name="Vessel")
    assert checked_ware(tool=jug, findings={1000.0: found}).error_ml == pytest.approx(
        found.half_width
    )


def test_the_worst_mark_of_several_counts() -> None:
    jug = measuring_tool("jug 1000ml", name="Vessel")  # 10 %: 100 at 1000, 50 at 500
    good = Finding(correction=0.0, u=1.0, half_width=5.0)
    poor = Finding(correction=0.0, u=1.0, half_width=10.0)
    found = checked_ware(tool=jug, findings={1000.0: good, 500.0: poor})
    assert found.error_ml == pytest.approx(20.0)
    assert checked_ware(tool=found, findings={1000.0: good}).error_ml == (
        pytest.approx(5.0)
    )
    assert checked_ware(tool=jug, findings={}) is jug


@pytest.mark.parametrize(
    ("readings", "argument"), [([], "readings_g"), ([100.0, -1.0], "readings_g")]
)
def test_readings_that_are_none_are_refused(
    readings: list[float], argument: str
) -> None:
    with pytest.raises(InputError) as refused:
        weighed(*readings)
    assert refused.value.argument == argument
    with pytest.raises((MissingError, InputError)):
        water_check(
            nominal_ml=100.0,
            readings_g=readings,
            temperature_c=20.0,
            scale=Balance(step_g=1.0, error_g=None),
        )


@given(
    st.floats(min_value=0.0, max_value=99.0), st.floats(min_value=0.0, max_value=99.0)
)
def test_warm_water_takes_more_room(one_c: float, other_c: float) -> None:
    cool, warm = sorted((max(one_c, 4.0), max(other_c, 4.0)))
    assert water_volume_ml(mass_g=1.0, temperature_c=cool) <= (
        water_volume_ml(mass_g=1.0, temperature_c=warm) + 1e-9
    )
