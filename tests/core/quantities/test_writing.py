"""Numbers for people."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import NO_BREAK, amount_text, number_text
from shadewright.core.quantities.writing import spread_text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (5.2, "5.2"),
        (0.1 + 0.2, "0.3"),
        (0.961538461, "0.962"),
        (1466.6667, "1467"),
        (537.0, "537"),
        (1000000.0, "1000000"),
        (0.00012345, "0.000123"),
        (0.0625, "0.0625"),
        (2.345, "2.35"),  # a half goes away from zero
        (-3.0, "−3"),
        (-0.0, "0"),
        (float("nan"), "no number"),
        (1e300, "1.00e+300"),
        (1e-12, "1.00e−12"),
    ],
)
def test_a_number_keeps_three_digits(value: float, text: str) -> None:
    assert number_text(value, digits=3) == text


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (5.2, "g", "5.2 g"),
        (10.04, "g", "10.04 g"),
        (123.456, "g", "123.5 g"),
        (500.0, "ml", "500 ml"),
        (1.04, "%", "1.04 %"),
        (-5.0, "°C", "−5 °C"),
    ],
)
def test_an_amount_has_a_unit_that_stays_with_it(
    value: float, unit: str, text: str
) -> None:
    assert amount_text(value, unit) == text.replace(" ", NO_BREAK)


@given(st.floats(min_value=-1e300, max_value=1e300), st.integers(1, 6))
def test_any_number_can_be_written(value: float, digits: int) -> None:
    text = number_text(value, digits=digits)
    assert "-" not in text
    assert len(text) <= 20
    assert float(text.replace("−", "-")) == pytest.approx(value, rel=0.5)


@pytest.mark.parametrize(
    ("half_width", "text"),
    [(0.0096, "0.01"), (0.0145, "0.015"), (2.47, "2.5"), (0.3, "0.3"), (9.6, "10")],
)
def test_a_spread_has_one_digit_or_two_where_one_says_too_little(
    half_width: float, text: str
) -> None:
    assert spread_text(half_width) == text
