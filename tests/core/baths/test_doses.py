import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    Dose,
    dose_advice,
    dry_dose_advice,
    measurable_strength_percent,
    measured_dose,
)
from shadewright.core.quantities import Balance, MeasuringTool
from shadewright.core.solutions import filled_mass_g

SYRINGE = MeasuringTool(kind="syringe", size_ml=20, accuracy_class="", standard="ISO")
SCALE = Balance(step_g=0.1, error_g=None)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("dye_g", "strength"),
    [
        (0.6, 2),  # 30 ml
        (0.1, 2),  # 5 ml: just enough
        (0.09, 1),  # 4.5 ml of 2 %, 9 ml of 1 %
        (0.025, 0.5),  # 2.5 ml of 1 %, 5 ml of 0.5 %
        (0.01, 0.1),  # 2 ml of 0.5 %, 10 ml of 0.1 %
        (0.0025, 0.05),  # 2.5 ml of 0.1 %, 5 ml of 0.05 %
        (0.0006, 0.01),  # 1.2 ml of 0.05 %, 6 ml of 0.01 %
        (0.0004, None),  # 4 ml of 0.01 %
    ],
)
def test_the_strongest_stock_that_can_be_measured(
    dye_g: float, strength: float | None
) -> None:
    assert measurable_strength_percent(dye_mass_g=dye_g) == strength


@pytest.mark.by_hand
def test_a_small_dose_names_the_stock_that_would_do() -> None:
    # 20 g at 0.03 % is 0.006 g: 0.6 ml of 1 %, but 6 ml of 0.1 %
    pale = Dose(dye="Kelp", depth_percent=0.03, strength_percent=1)
    advice = measured_dose(dose=pale, fibre_mass_g=20).advice
    assert advice == (
        "0.6\u00a0ml is too little to measure well: take 6\u00a0ml of a "
        "0.1\u00a0% stock."
    )


@pytest.mark.by_hand
def test_the_stock_that_would_do_is_named_at_its_usual_strength() -> None:
    # 0.025 g at 0.5 g/100 ml, 0.0025 g at 0.05 g/100 ml: 5 ml each
    for dye_g, told in ((0.025, "0.5\u00a0%"), (0.0025, "0.05\u00a0%")):
        advice = dose_advice(dye_mass_g=dye_g, stock_ml=1)
        assert advice is not None
        assert f"take 5\u00a0ml of a {told} stock" in advice


def test_a_stock_has_no_spread_unless_it_is_given() -> None:
    assert Dose(dye="Gorse", depth_percent=1, strength_percent=1).u_strength_rel == 0


def test_five_ml_is_enough() -> None:
    assert dose_advice(dye_mass_g=0.05, stock_ml=5) is None
    assert dose_advice(dye_mass_g=0.05, stock_ml=4.99) is not None


def test_a_trace_of_dye_wants_more_yarn() -> None:
    advice = dose_advice(dye_mass_g=0.0004, stock_ml=0.04)
    assert advice is not None
    assert advice.endswith("dye more yarn at once.")


def test_a_dose_larger_than_the_tool_is_counted_out() -> None:
    assert dose_advice(dye_mass_g=0.6, stock_ml=60, tool=SYRINGE) == (
        "Fill the 20\u00a0ml syringe 3 times."
    )
    assert dose_advice(dye_mass_g=0.2, stock_ml=20, tool=SYRINGE) is None


def test_dry_dye_below_fifty_steps_of_the_scale_wants_a_stock() -> None:
    assert dry_dose_advice(dye_mass_g=5, balance=SCALE) is None
    assert dry_dose_advice(dye_mass_g=0.6) is None
    assert dry_dose_advice(dye_mass_g=0.6, balance=SCALE) == (
        "0.6\u00a0g is too little to weigh well: take 30\u00a0ml of a 2\u00a0% stock."
    )


def test_dry_dye_has_no_stock() -> None:
    dose = measured_dose(dose=Dose(dye="Gorse", depth_percent=0.6), fibre_mass_g=100)
    assert dose.dye_g == pytest.approx(0.6)
    assert dose.stock_ml is None
    assert dose.stock_g is None


@pytest.mark.by_hand
def test_stock_comes_in_ml_and_in_grams() -> None:
    gorse = Dose(dye="Gorse", depth_percent=0.6, strength_percent=1)
    dose = measured_dose(dose=gorse, fibre_mass_g=100)
    assert dose.stock_ml == pytest.approx(60)
    # 60 ml of water at 20 °C are 59.892 g, and 0.6 g of dye
    assert dose.stock_g == pytest.approx(60.492, abs=5e-4)


@given(depth=st.floats(0.01, 5), strength=st.floats(0.1, 5))
def test_a_dose_weighs_as_a_stock_of_that_size_would(
    depth: float, strength: float
) -> None:
    gorse = Dose(dye="Gorse", depth_percent=depth, strength_percent=strength)
    dose = measured_dose(dose=gorse, fibre_mass_g=100)
    assert dose.stock_ml is not None
    filled_g = filled_mass_g(volume_ml=dose.stock_ml, powder_g=dose.dye_g)
    assert dose.stock_g == pytest.approx(filled_g, rel=1e-12)


@pytest.mark.by_hand
def test_whole_fillings_are_not_one_too_many() -> None:
    # 60 ml and a last digit of noise are three times 20 ml
    noisy = 60.00000000000001
    advice = dose_advice(dye_mass_g=0.06, stock_ml=noisy, tool=SYRINGE)
    assert advice == "Fill the 20\u00a0ml syringe 3 times."
    more = dose_advice(dye_mass_g=0.0601, stock_ml=60.1, tool=SYRINGE)
    assert more == "Fill the 20\u00a0ml syringe 4 times."
