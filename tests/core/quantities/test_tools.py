"""Scales and measuring ware."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import (
    Balance,
    MeasuringTool,
    balance,
    measuring_tool,
    rounded_to_step,
)
from shadewright.errors import StudioError


@pytest.mark.parametrize(
    ("text", "kind", "size", "letter", "standard"),
    [
        ("cylinder 500ml B", "cylinder", 500.0, "B", "ISO"),
        ("cylinder 500 ml", "cylinder", 500.0, "B", "ISO"),
        ("Flask 0.5 l a astm", "flask", 500.0, "A", "ASTM"),
        ("pipette 10ml ASTM", "pipette", 10.0, "B", "ASTM"),
        ("syringe 20ml", "syringe", 20.0, "", "ISO"),
        ("jug 1 l", "jug", 1000.0, "", "ISO"),
        ("bottle-mark 500ml", "bottle-mark", 500.0, "", "ISO"),
    ],
)
def test_a_tool_is_read(
    text: str, kind: str, size: float, letter: str, standard: str
) -> None:
    assert measuring_tool(text, name="Vessel") == MeasuringTool(
        kind=kind, size_ml=size, accuracy_class=letter, standard=standard
    )


@pytest.mark.parametrize(
    "text",
    [
        "",
        "cylinder",
        "bucket 5 l",
        "cylinder B",
        "cylinder 500",
        "cylinder 500ml C",
        "cylinder 500ml B DIN",
        "cylinder 500ml B ISO 4788",
        "cylinder 500g",
        "cylinder -5ml",
        "cylinder 0ml",
        "jug 1l A",
        f"cylinder {'9' * 99}ml",
    ],
)
def test_what_is_no_tool_is_refused(text: str) -> None:
    with pytest.raises(StudioError) as refused:
        measuring_tool(text, name="Vessel", argument="vessel")
    assert refused.value.argument == "vessel"


def test_a_balance_is_read() -> None:
    assert balance("0.1g", name="Balance") == Balance(step_g=0.1, error_g=None)
    assert balance("0,1 g ± 0,2 g", name="Balance") == Balance(step_g=0.1, error_g=0.2)


@pytest.mark.parametrize("text", ["0g", "-1g", "0.1", "0.1g+-", "0.1g+-2%", "1ml"])
def test_what_is_no_balance_is_refused(text: str) -> None:
    with pytest.raises(StudioError):
        balance(text, name="Balance")


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("value", "step", "shown"),
    [(5.37, 0.1, 5.4), (5.37, 1.0, 5.0), (5.35, 0.1, 5.4), (5.37, 0.2, 5.4), (7, 5, 5)],
)
def test_a_value_is_rounded_to_a_step(value: float, step: float, shown: float) -> None:
    assert rounded_to_step(value, step=step) == shown


@given(
    st.floats(min_value=0.0, max_value=1e6),
    st.sampled_from([0.001, 0.01, 0.05, 0.1, 0.2, 0.5, 1.0, 5.0]),
)
def test_rounding_twice_changes_nothing(value: float, step: float) -> None:
    once = rounded_to_step(value, step=step)
    assert rounded_to_step(once, step=step) == once
    assert abs(once - value) <= step / 2 + 1e-9
