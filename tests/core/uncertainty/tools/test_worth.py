"""What a tool is worth along its scale, and what to check it with."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import Balance, MeasuringTool, measuring_tool
from shadewright.core.tables.check_weights import CHECK_WEIGHTS
from shadewright.core.uncertainty.tools import (
    good_from,
    weight_to_check_with,
    worth_along,
    worth_at,
)
from shadewright.errors import OutOfRangeError


def ware(words: str) -> MeasuringTool:
    return measuring_tool(words, name="Measure")


@pytest.mark.by_hand
def test_a_cylinder_grows_poor_toward_its_foot() -> None:
    # ±1 ml at any point: of 50, 25, 10 and 5 ml
    along = worth_along(ware("cylinder 50ml B"))
    assert [(each.amount, each.half_width) for each in along] == [
        (50.0, 1.0),
        (25.0, 1.0),
        (10.0, 1.0),
        (5.0, 1.0),
    ]
    assert [each.share for each in along] == pytest.approx([0.02, 0.04, 0.1, 0.2])


def test_a_flask_has_one_mark() -> None:
    assert [each.amount for each in worth_along(ware("flask 250ml A"))] == [250.0]


@pytest.mark.by_hand
def test_a_scale_is_off_by_as_much_at_any_weight() -> None:
    along = worth_along(Balance(step_g=0.1, error_g=None), largest=200.0)
    assert [each.amount for each in along] == [100.0, 20.0, 5.0, 1.0]
    # a triangle of half-width 0.1 holds 95 % within 0.1 (1 − √0.05) = 0.0776
    assert [each.half_width for each in along] == pytest.approx([0.0776] * 4, rel=1e-3)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("words", "ml"),
    [
        ("cylinder 100ml B", 50.0),  # 1/0.02
        ("cylinder 500ml A", 125.0),  # 2.5/0.02
        ("flask 500ml B", 500.0),  # at its mark alone
        ("jug 1000ml", None),  # 10 %
        ("syringe 20ml", None),  # 4 %
    ],
)
def test_from_where_a_tool_is_good(words: str, ml: float | None) -> None:
    tool = ware(words)
    assert good_from(tool, largest=tool.size_ml) == pytest.approx(ml)


@pytest.mark.by_hand
def test_a_checked_jug_is_good_down_to_where_its_error_counts() -> None:
    # ±10 ml at 1000, 1 %: as much of 500; below the lowest mark, 200 ml, ±2 ml stay
    jug = replace(ware("jug 1000ml"), error_ml=10.0)
    assert good_from(jug, largest=1000.0) == pytest.approx(100.0)  # 2/0.02


@given(st.floats(min_value=0.1, max_value=500.0))
def test_what_is_good_is_so_from_there_on(ml: float) -> None:
    tool = ware("cylinder 500ml B")
    least = good_from(tool, largest=500.0)
    assert least is not None
    assert (worth_at(tool, amount=ml).share <= 0.02 * (1 + 1e-9)) == (
        ml >= least * (1 - 1e-9)
    )


@pytest.mark.parametrize(
    ("step_g", "largest_g", "weight"),
    [
        (1.0, 5000.0, (1000.0, 0.5)),
        (0.1, 2000.0, (100.0, 0.05)),
        (0.1, 50.0, (50.0, 0.03)),
        (0.01, None, (10.0, 0.02)),
        (0.0001, None, (1.0, 0.01)),
    ],
)
def test_a_weight_that_suits_the_scale(
    step_g: float, largest_g: float | None, weight: tuple[float, float]
) -> None:
    assert weight_to_check_with(step_g=step_g, largest_g=largest_g) == weight


def test_plainer_weights_are_worse_and_heavier_ones_too() -> None:
    for errors in CHECK_WEIGHTS.values():
        assert list(errors) == sorted(errors)
    for column in zip(*CHECK_WEIGHTS.values(), strict=True):
        assert list(column) == sorted(column)


def test_what_is_no_amount_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        worth_at(ware("jug 1000ml"), amount=0.0)
    assert refused.value.argument == "amount"
