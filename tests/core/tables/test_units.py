"""The factors of the units, against the printed ones."""

import pytest

from shadewright.core.quantities import mass_g, volume_ml
from shadewright.core.tables import units
from tests.published_cases import PublishedCase, published


@pytest.mark.parametrize("case", published("units", asks="kg"))
def test_a_weight_is_as_printed(case: PublishedCase) -> None:
    assert case.agrees(mass_g(case.inputs["text"], name="Weight") / 1000.0)


@pytest.mark.parametrize("case", published("units", asks="m3"))
def test_a_measure_is_as_printed(case: PublishedCase) -> None:
    assert case.agrees(volume_ml(case.inputs["text"], name="Measure") / 1e6)


@pytest.mark.by_hand
def test_the_parts_make_up_the_whole() -> None:
    assert 16 * units.GRAMS_PER_OUNCE == units.GRAMS_PER_POUND
    assert pytest.approx(units.GRAMS_PER_POUND) == 7000 * units.GRAMS_PER_GRAIN
    # A US gallon is 231 cubic inches of 2.54 cm: 231 × 2.54³ = 3785.411784 ml.
    assert pytest.approx(231 * 2.54**3, rel=1e-15) == units.ML_PER_US_GALLON
    assert 4 * units.ML_PER_US_QUART == units.ML_PER_US_GALLON
    assert 8 * units.ML_PER_US_PINT == units.ML_PER_US_GALLON
    assert 16 * units.ML_PER_US_CUP == units.ML_PER_US_GALLON
    assert 128 * units.ML_PER_US_FLUID_OUNCE == units.ML_PER_US_GALLON
    assert 2 * units.ML_PER_US_TABLESPOON == units.ML_PER_US_FLUID_OUNCE
    assert 48 * units.ML_PER_US_TEASPOON == units.ML_PER_US_CUP
    assert 4 * units.ML_PER_UK_QUART == units.ML_PER_UK_GALLON
    assert 8 * units.ML_PER_UK_PINT == units.ML_PER_UK_GALLON
    assert 160 * units.ML_PER_UK_FLUID_OUNCE == units.ML_PER_UK_GALLON
    assert 2 * units.ML_PER_UK_CUP == units.ML_PER_UK_PINT
