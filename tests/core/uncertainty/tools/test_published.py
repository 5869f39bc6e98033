"""Tolerances as they are printed, and what our tools make of them."""

from collections.abc import Callable

import pytest

from shadewright.core.quantities import measuring_tool
from shadewright.core.uncertainty import Shape, Term, Value, product, quotient, total
from shadewright.core.uncertainty.tools import (
    half_width_ml,
    volume_read,
    warmth_read,
    water_volume_ml,
)
from shadewright.core.uncertainty.values import bounded
from tests.published_cases import PublishedCase, published


def _half_width(*, tool: str, volume_ml: float) -> float:
    ware = measuring_tool(tool, name="Measure")
    return half_width_ml(tool=ware, volume_ml=volume_ml)


def _standard_uncertainty(*, tool: str, volume_ml: float) -> float:
    ware = measuring_tool(tool, name="Measure")
    return volume_read(ware, volume_ml, role="dose", key="tool").u


def flask(*, volume_ml: float, repeated_ml: float, within_c: float) -> Value:
    """Return a flask of class A, its mark taken as triangular."""
    mark = volume_read(
        measuring_tool(f"flask {volume_ml:g}ml A", name="Flask"),
        volume_ml,
        role="standard",
        key="flask",
        shape=Shape.TRIANGULAR,
    )
    filling = Term(name="filling", source="filling", u=repeated_ml)
    warmth = warmth_read(volume_ml, within_c=within_c, role="standard", key="flask")
    return total(mark, Value(value=0.0, terms=(filling,)), warmth)


QUESTIONS: dict[str, Callable[..., float]] = {
    "half-width": _half_width,
    "standard uncertainty": _standard_uncertainty,
    "flask": lambda **given: flask(**given).u,
    "water": lambda temperature_c: water_volume_ml(
        mass_g=1.0, temperature_c=temperature_c
    ),
}


@pytest.mark.parametrize("case", published("ware"))
def test_the_printed_value_comes_out(case: PublishedCase) -> None:
    assert case.agrees(QUESTIONS[case.asks](**case.inputs))


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("volume", "u_mg_per_l"),
    [
        # The guide rounds u(V) to 0.07 ml before it goes on, and prints 0.9:
        # 1002.7 √(0.0000577² + (0.05/100.28)² + 0.0007²) = 0.8637
        (Value(value=100.0, terms=(Term(name="V", source="V", u=0.07),)), 0.8637),
        # With 0.066473 ml as it comes out it would have printed 0.8:
        # 1002.7 √(0.0000577² + (0.05/100.28)² + 0.00066473²) = 0.8352
        (flask(volume_ml=100.0, repeated_ml=0.02, within_c=4.0), 0.8352),
    ],
    ids=["rounded on the way", "unrounded"],
)
def test_a_standard_solution_by_both_readings_of_its_flask(
    volume: Value, u_mg_per_l: float
) -> None:
    """EURACHEM/CITAC QUAM, example A1: c = 1000 m P / V."""
    purity = bounded(
        0.9999, half_width=0.0001, shape=Shape.RECTANGULAR, name="P", source="P"
    )
    mass_mg = Value(value=100.28, terms=(Term(name="m", source="m", u=0.05),))
    found = quotient(product(purity, mass_mg, Value(value=1000.0)), volume)
    assert found.value == pytest.approx(1002.69972)
    assert found.u == pytest.approx(u_mg_per_l, abs=5e-5)
