"""Printed values beside ours."""

import pytest

from shadewright.core.baths.heating import (
    air_pressure_kpa,
    boiling_at_pressure_c,
    evaporation_kwh,
    learning,
    water_heat_kj_per_kg,
)
from shadewright.core.tables.heat import SOURCE_SHARES, Source
from tests.published_cases import PublishedCase, published


@pytest.mark.parametrize("case", published("heating", asks="water_heat"))
def test_heat_of_water(case: PublishedCase) -> None:
    assert case.agrees(water_heat_kj_per_kg(**case.inputs))


@pytest.mark.parametrize("case", published("heating", asks="boiled_away"))
def test_heat_that_leaves_with_the_steam(case: PublishedCase) -> None:
    """1001.8 ml of water at 20 °C are a kilogram."""
    assert case.agrees(3600 * evaporation_kwh(**case.inputs))


@pytest.mark.parametrize("case", published("heating", asks="pressure"))
def test_pressure_of_the_air(case: PublishedCase) -> None:
    assert case.agrees(air_pressure_kpa(**case.inputs))


@pytest.mark.parametrize("case", published("heating", asks="boiling_k"))
def test_boiling_point_under_a_pressure(case: PublishedCase) -> None:
    assert case.agrees(boiling_at_pressure_c(**case.inputs) + 273.15)


@pytest.mark.parametrize("case", published("heating", asks="t_95"))
def test_t_between_the_rows_of_its_table(case: PublishedCase) -> None:
    assert case.agrees(learning._t_95(**case.inputs))


@pytest.mark.parametrize("case", published("heating", asks="share"))
def test_share_that_reaches_the_pot(case: PublishedCase) -> None:
    assert case.agrees(SOURCE_SHARES[Source(case.inputs["source"])].usual)
