from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import Dose, MeasuredWith, measured_dose
from shadewright.core.quantities import Balance, measuring_tool
from shadewright.core.solutions import filled_mass_g
from shadewright.core.uncertainty import budget

SYRINGE = measuring_tool("syringe 20ml", name="Measure")
SCALE = Balance(step_g=0.1, error_g=None)
GORSE = Dose(dye="Gorse", depth_percent=0.6, strength_percent=1)


def seeded() -> Random:
    return Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


@pytest.mark.by_hand
def test_a_small_dose_names_the_stock_that_would_do() -> None:
    # 20 g at 0.03 % is 0.006 g: 0.6 ml of 1 %, but 6 ml of 0.1 %
    pale = Dose(dye="Kelp", depth_percent=0.03, strength_percent=1)
    advice = measured_dose(dose=pale, fibre_mass_g=20).advice
    assert advice == (
        "0.6\u00a0ml is too little to measure well: take 6\u00a0ml of a "
        "0.1\u00a0% stock."
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
def test_every_tool_that_is_named_has_its_term() -> None:
    gorse = Dose(
        dye="Gorse", depth_percent=0.6, strength_percent=1, u_strength_rel=0.02
    )
    told = MeasuredWith(tool=SYRINGE, balance=SCALE)
    spread = measured_dose(dose=gorse, fibre_mass_g=100, measured_with=told).spread
    assert spread is not None
    # three fills of 20 ml, 4 % each: 0.04/√3; strength 0.02; yarn 0.1/√6 of 100 g
    assert [(line.name, round(line.u_rel, 5)) for line in budget(spread)] == [
        ("each pour of the 20\u00a0ml syringe", 0.02309),
        ("strength of the Gorse stock", 0.02),
        ("reading the scale, yarn", 0.00041),
    ]


def test_what_nobody_names_is_left_out() -> None:
    assert measured_dose(dose=GORSE, fibre_mass_g=100).sure is None
    assert measured_dose(dose=GORSE, fibre_mass_g=100).spread is None


@pytest.mark.by_hand
def test_stock_that_is_weighed_asks_nothing_of_the_syringe() -> None:
    told = MeasuredWith(tool=SYRINGE, balance=SCALE, is_by_weight=True)
    dose = measured_dose(dose=GORSE, fibre_mass_g=100, measured_with=told)
    assert dose.advice is None
    assert dose.spread is not None
    # nobody said how the stock was filled: 0.01/√3 of 1.0082 g/ml;
    # 0.1/√6 of 60.49 g; the same of 100 g
    assert [(line.name, round(line.u_rel, 5)) for line in budget(dose.spread)] == [
        ("room that the dye takes up in the stock", 0.00573),
        ("reading the scale, Gorse", 0.00067),
        ("reading the scale, yarn", 0.00041),
    ]


def test_a_very_unsure_dose_is_drawn() -> None:
    pale = Dose(dye="Gorse", depth_percent=0.004, strength_percent=1)
    dose = measured_dose(
        dose=pale,
        fibre_mass_g=100,
        measured_with=MeasuredWith(tool=SYRINGE),
        generator=seeded(),
    )
    assert dose.sure is not None
    assert dose.sure.is_drawn
