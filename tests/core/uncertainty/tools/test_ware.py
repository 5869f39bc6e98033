"""Ware: rows between sizes, many fills, marks, and tools that were checked."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import NO_BREAK, MeasuringTool, measuring_tool
from shadewright.core.tables.glassware import TABLES
from shadewright.core.uncertainty import Shape
from shadewright.core.uncertainty.tools import (
    basis,
    fills,
    half_width_ml,
    volume_read,
)
from shadewright.core.uncertainty.tools.syringes import syringe_half_width_ml
from shadewright.errors import OutOfRangeError


def ware(words: str) -> MeasuringTool:
    return measuring_tool(words, name="Measure")


def off(words: str, volume_ml: float) -> float:
    return half_width_ml(tool=ware(words), volume_ml=volume_ml)


ALL = [
    ware(words)
    for words in (
        "cylinder 100ml A",
        "cylinder 500ml B ASTM",
        "flask 250ml B",
        "pipette 5ml B",
        "syringe 3ml",
        "syringe 20ml",
        "beaker 400ml ASTM",
        "jug 1000ml",
        "bottle-mark 500ml",
    )
]


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("words", "volume_ml", "half_width_ml"),
    [
        ("cylinder 400ml B", 400.0, 5.0),  # the row of 500 ml
        ("cylinder 2ml B", 1.0, 0.10),  # the row of 5 ml, the smallest
        ("cylinder 2000ml B", 1500.0, 20.0),  # 10/1000 of 2000 ml
        ("cylinder 2000ml B ASTM", 1500.0, 12.0),  # 6/1000 of 2000 ml
        ("flask 100ml A ASTM", 100.0, 0.10),  # no ASTM table here: ISO
        ("beaker 400ml", 300.0, 30.0),  # 10 % of what is read
        ("beaker 400ml ASTM", 300.0, 15.0),  # 5 %
        ("jug 1000ml", 50.0, 20.0),  # 10 % of the lowest mark, 200 ml
        ("bottle-mark 500ml", 500.0, 25.0),  # 5 %
        ("flask 500ml B", 300.0, 30.0),  # not its mark: as in a beaker, 10 %
        ("flask 500ml B", 800.0, 30.5),  # one full flask, 0.5, and 300 ml, 30
        ("cylinder 100ml B", 300.0, 3.0),  # three fills, all off the same way
        ("syringe 20ml", 30.0, 1.2),  # 20 ml: 4 %, 0.8; 10 ml: 4 %, 0.4
        ("syringe 20ml", 25.0, 1.15),  # 0.8, and 5 ml: 0.3 + 0.05
    ],
)
def test_half_widths(words: str, volume_ml: float, half_width_ml: float) -> None:
    assert off(words, volume_ml) == pytest.approx(half_width_ml)


@pytest.mark.by_hand
def test_the_standards_differ_up_to_twofold() -> None:
    ratio = off("cylinder 50ml B", 50.0) / off("cylinder 50ml B ASTM", 50.0)
    assert ratio == 2.0


def test_every_fill_shares_one_error() -> None:
    read = volume_read(ware("cylinder 100ml B"), 250.0, role="stock", key="tool 4")
    (term,) = read.terms
    assert (term.name, term.source) == (
        f"mark of the 100{NO_BREAK}ml cylinder",
        "tool 4 stock mark",
    )
    assert term.shape is Shape.RECTANGULAR
    assert term.u == pytest.approx(3.0 / 3**0.5)


def test_a_syringe_is_named_by_its_pours_and_a_bottle_by_its_mark() -> None:
    pour = volume_read(ware("syringe 20ml"), 6.0, role="Gorse", key="tool 2")
    mark = volume_read(ware("bottle-mark 500ml"), 500.0, role="stock", key="tool 5")
    names = [pour.terms[0].name, mark.terms[0].name]
    assert names == [
        f"each pour of the 20{NO_BREAK}ml syringe",
        f"mark of the 500{NO_BREAK}ml bottle",
    ]


def test_nothing_poured_is_nothing_for_sure() -> None:
    assert volume_read(ware("syringe 20ml"), 0.0, role="Gorse", key="tool").terms == ()


@pytest.mark.by_hand
def test_a_checked_tool_keeps_the_shape_of_its_kind() -> None:
    jug = replace(ware("jug 1000ml"), error_ml=20.0)  # a fifth of the usual 100 ml
    assert half_width_ml(tool=jug, volume_ml=500.0) == pytest.approx(10.0)
    assert half_width_ml(tool=jug, volume_ml=2500.0) == pytest.approx(50.0)
    cylinder = replace(ware("cylinder 100ml B"), error_ml=0.4)
    assert half_width_ml(tool=cylinder, volume_ml=10.0) == pytest.approx(0.4)


@pytest.mark.parametrize(
    ("words", "standard", "row_ml", "is_from_memory"),
    [
        ("cylinder 400ml", "ISO 4788", 500.0, True),
        ("cylinder 400ml ASTM", "ASTM E1272", 500.0, False),
        ("cylinder 1000ml ASTM", "ASTM E1272", 1000.0, True),
        ("flask 250ml ASTM", "ISO 1042", 250.0, True),
        ("pipette 2ml", "ISO 835", 5.0, True),
        ("syringe 10ml", "ISO 7886-1", None, False),
        ("syringe 20ml", "ISO 7886-1", None, True),
        ("beaker 250ml", "ISO 3819", None, True),
        ("beaker 250ml ASTM", "ASTM E960", None, True),
        ("jug 1000ml ASTM", "common practice", None, False),
    ],
)
def test_each_tolerance_names_its_standard(
    words: str, standard: str, row_ml: float | None, *, is_from_memory: bool
) -> None:
    found = basis(tool=ware(words))
    assert (found.standard, found.row_ml) == (standard, row_ml)
    assert found.is_from_memory is is_from_memory


@pytest.mark.parametrize("rows", TABLES.values(), ids=lambda rows: rows[0].source)
def test_tables_rise_and_class_b_is_wider(rows: tuple[object, ...]) -> None:
    sizes = [row.size_ml for row in rows]  # type: ignore[attr-defined]
    b = [row.b_ml for row in rows]  # type: ignore[attr-defined]
    assert sizes == sorted(sizes)
    assert b == sorted(b)
    assert all(row.a_ml < row.b_ml <= 2 * row.a_ml for row in rows)  # type: ignore[attr-defined]


@given(st.sampled_from(ALL), st.floats(min_value=0.05, max_value=3000.0))
def test_one_more_full_tool_adds_its_whole_tolerance(
    tool: MeasuringTool, volume_ml: float
) -> None:
    once = half_width_ml(tool=tool, volume_ml=volume_ml)
    more = half_width_ml(tool=tool, volume_ml=volume_ml + tool.size_ml)
    full = half_width_ml(tool=tool, volume_ml=tool.size_ml)
    assert more - once == pytest.approx(full, rel=1e-6)
    assert fills(tool=tool, volume_ml=volume_ml + tool.size_ml) == 1 + fills(
        tool=tool, volume_ml=volume_ml
    )


@given(st.sampled_from(ALL), st.floats(min_value=0.1, max_value=10.0))
def test_an_error_by_check_widens_all_volumes_alike(
    tool: MeasuringTool, times: float
) -> None:
    full = half_width_ml(tool=tool, volume_ml=tool.size_ml)
    own = replace(tool, error_ml=times * full)
    for volume_ml in (0.3 * tool.size_ml, 2.4 * tool.size_ml):
        wide = half_width_ml(tool=own, volume_ml=volume_ml)
        usual = half_width_ml(tool=tool, volume_ml=volume_ml)
        assert wide == pytest.approx(times * usual)


@pytest.mark.parametrize("volume_ml", [-1.0, 0.0, float("nan"), 2e6])
def test_what_is_no_volume_is_refused(volume_ml: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        off("jug 1000ml", volume_ml)
    assert refused.value.argument == "volume_ml"


def test_a_syringe_presses_out_no_more_than_it_holds() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        syringe_half_width_ml(size_ml=5.0, volume_ml=5.1)
    assert "from 0 ml to 5 ml" in str(refused.value).replace(NO_BREAK, " ")
