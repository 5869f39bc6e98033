import pytest

from shadewright.core.baths import (
    Dose,
    dose_advice,
    dry_dose_advice,
    measurable_strength_percent,
)
from shadewright.core.quantities import Balance, MeasuringTool

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


@pytest.mark.by_hand
def test_whole_fillings_are_not_one_too_many() -> None:
    # 60 ml and a last digit of noise are three times 20 ml
    noisy = 60.00000000000001
    advice = dose_advice(dye_mass_g=0.06, stock_ml=noisy, tool=SYRINGE)
    assert advice == "Fill the 20\u00a0ml syringe 3 times."
    more = dose_advice(dye_mass_g=0.0601, stock_ml=60.1, tool=SYRINGE)
    assert more == "Fill the 20\u00a0ml syringe 4 times."
