"""Every drawing is well-formed, named or silent, and escapes what it is given."""

import math
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any
from xml.etree import ElementTree as ET  # ruff: ignore[suspicious-xml-etree-import]

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright import drawing
from shadewright.core.baths.heating import PROGRAMMES
from shadewright.core.solutions.age import AgeClass
from shadewright.core.solutions.keeping import Watch, dye_life
from shadewright.core.uncertainty import BudgetLine
from shadewright.drawing import svg

HOSTILE = "\"><script>alert('1')</script>&"
NS = "{http://www.w3.org/2000/svg}"
BUDGET = (
    BudgetLine(name=HOSTILE, source="pour", u_rel=0.0115, share=0.79),
    BudgetLine(name="mark of the cylinder", source="mark", u_rel=0.0058, share=0.206),
    BudgetLine(name="reading the scale", source="scale", u_rel=0.0004, share=0.003),
    BudgetLine(name="the scale itself", source="own", u_rel=0.0003, share=0.001),
)
WATCHED = dye_life([
    Watch(clear_days=30, settled_days=40),
    *[Watch(clear_days=60, settled_days=70)] * 5,
    *[Watch(clear_days=90)] * 4,
])


def parsed(text: str) -> ET.Element:
    # Our own drawings are no danger to the parser.
    return ET.fromstring(text)  # ruff: ignore[suspicious-xml-element-tree-usage]


def a_bottle(full: float = 0.5, **changes: Any) -> drawing.Bottle:  # ruff: ignore[any-type]
    given = drawing.Bottle(code="G4R", full=full, age=AgeClass.FRESH)
    return replace(given, **changes)


def every_drawing() -> Iterator[str]:
    yield from map(drawing.icon, drawing.ICONS)
    for age in AgeClass:
        yield drawing.bottle(a_bottle(age=age, reserved=0.2, is_settled=True), number=1)
        yield drawing.liquid_sample(age, number=2)
    yield drawing.bottle(a_bottle(code=HOSTILE), number=3, name=HOSTILE)
    yield drawing.liquid_sample("reserved", number=4)
    yield drawing.liquid_sample("settled", number=5)
    yield drawing.liquid_sample("life", number=6)
    yield drawing.life_curve(WATCHED)
    yield drawing.life_curve(WATCHED, name=HOSTILE)
    yield drawing.bottle(a_bottle(life=0.4), number=7)
    yield drawing.code_square("http://192.168.1.5/", name=HOSTILE)
    yield drawing.fill_bar(full=0.4)
    yield drawing.fill_bar(full=0.1, is_low=True)
    yield drawing.spread_bar(relative_spread=0.02)
    yield drawing.spread_bar(relative_spread=0.4)
    yield drawing.budget_bars(BUDGET)
    yield drawing.heat_curve(PROGRAMMES["milling"].curve)
    yield drawing.progress_line(step=2, steps=7)
    yield drawing.swatch("#5b7f63", evidence=HOSTILE)
    yield drawing.swatch(None)
    yield drawing.swatch(HOSTILE)


def numbers(element: ET.Element) -> dict[str, float]:
    return {
        name: float(value)
        for name, value in element.attrib.items()
        if name in {"x", "y", "width", "height"}
    }


def rects(text: str, css: str) -> list[dict[str, float]]:
    found = parsed(text).iter(f"{NS}rect")
    return [numbers(one) for one in found if one.get("class") == css]


@pytest.mark.parametrize("text", list(every_drawing()))
def test_it_is_well_formed_and_named_or_silent(text: str) -> None:
    root = parsed(text)
    assert root.tag == f"{NS}svg"
    if root.get("role") == "img":
        assert root.get("aria-label")
    else:
        assert root.get("aria-hidden") == "true"


@pytest.mark.parametrize("text", list(every_drawing()))
def test_it_holds_no_style_script_or_link(text: str) -> None:
    for element in parsed(text).iter():
        assert element.tag not in {f"{NS}script", f"{NS}style", f"{NS}image"}
        assert not [
            name for name in element.attrib if re.match(r"on|style|.*href", name)
        ]


def test_words_pass_through_unharmed() -> None:
    root = parsed(drawing.bottle(a_bottle(code=HOSTILE), number=1, name=HOSTILE))
    assert root.get("aria-label") == HOSTILE
    assert [text.text for text in root.iter(f"{NS}text")] == [HOSTILE]


def test_two_bottles_share_no_inner_name() -> None:
    one, two = (
        re.findall(r'id="([^"]+)"', drawing.bottle(a_bottle(), number=number))
        for number in (1, 2)
    )
    assert one
    assert not set(one) & set(two)


def test_every_inner_name_asked_for_is_there() -> None:
    full = a_bottle(reserved=0.1, is_settled=True)
    for text in (
        drawing.bottle(full, number=1),
        drawing.liquid_sample("reserved", number=1),
        drawing.liquid_sample("settled", number=1),
    ):
        asked = re.findall(r"url\(#([^)]+)\)", text)
        assert asked
        assert set(asked) <= set(re.findall(r'id="([^"]+)"', text))


# The body of the bottle is 66 high and stands on 106.
@pytest.mark.parametrize(
    ("full", "top", "height"), [(1.0, 40, 66), (0.5, 73, 33), (0.25, 89.5, 16.5)]
)
def test_a_bottle_is_filled_as_full_as_it_is(
    full: float, top: float, height: float
) -> None:
    (liquid,) = rects(drawing.bottle(a_bottle(full), number=1), "fresh")
    assert (liquid["y"], liquid["height"]) == (top, height)


@pytest.mark.by_hand
def test_a_life_falls_where_the_bottles_were_last_seen_clear() -> None:
    # 90 days on 254 units of width: day 30 at 50 + 84.67, day 60 at 219.33; a share of
    # 0.9 on 108 units of height at 122 − 97.2 = 24.8, 0.4 at 78.8.
    drawn = parsed(drawing.life_curve(WATCHED))
    curve = next(x for x in drawn.iter() if x.get("class") == "curve")
    corners = [pair.split(",") for pair in (curve.get("points") or "").split()]
    assert [(float(x), float(y)) for x, y in corners] == [
        pytest.approx(corner, abs=0.02)
        for corner in (
            (50, 14),
            (134.67, 14),
            (134.67, 24.8),
            (219.33, 24.8),
            (219.33, 78.8),
            (304, 78.8),
        )
    ]


@pytest.mark.parametrize(
    ("life", "height"), [(1.0, 54.0), (0.5, 27.0), (0.0, None), (None, None)]
)
def test_the_gauge_runs_down_with_the_bottle_s_time(
    life: float | None, height: float | None
) -> None:
    drawn = parsed(drawing.bottle(a_bottle(life=life), number=1))
    left = [x for x in drawn.iter() if x.get("class") == "time-left"]
    assert [float(x.get("height", 0)) for x in left] == ([height] if height else [])
    assert bool([x for x in drawn.iter() if x.get("class") == "time"]) == (
        life is not None
    )


def test_an_empty_bottle_shows_no_liquid() -> None:
    text = drawing.bottle(a_bottle(0.0, reserved=0.5), number=1)
    assert rects(text, "fresh") == []
    assert 'class="level"' not in text


@given(st.floats(), st.floats())
def test_nothing_leaves_the_bottle(full: float, reserved: float) -> None:
    text = drawing.bottle(a_bottle(full, reserved=reserved), number=1)
    for liquid in parsed(text).iter(f"{NS}rect"):
        box = numbers(liquid)
        assert 0 <= box.get("y", 0) <= 106
        assert 0 <= box["height"] <= 66


@given(st.floats(min_value=0, max_value=1), st.floats(min_value=0, max_value=1))
def test_a_fuller_jar_has_a_longer_bar(one: float, other: float) -> None:
    less, more = sorted((one, other))
    widths = [rects(drawing.fill_bar(full=full), "full") for full in (less, more)]
    assert widths[0][0]["width"] <= widths[1][0]["width"]


@pytest.mark.parametrize(
    ("relative", "left", "width"),
    # 5.6 units a percent to either side of 60; the tape ends at 10 %
    [(0.0, 60, 0), (0.02, 48.8, 22.4), (0.1, 4, 112), (0.3, 4, 112)],
)
def test_a_spread_is_as_wide_as_it_is(
    relative: float, left: float, width: float
) -> None:
    (band,) = rects(drawing.spread_bar(relative_spread=relative), "band")
    assert (band["x"], band["width"]) == (left, width)


def test_a_spread_past_the_tape_says_so() -> None:
    assert "<path" not in drawing.spread_bar(relative_spread=0.1)
    assert "<path" in drawing.spread_bar(relative_spread=0.11)


def test_progress_has_one_piece_a_step() -> None:
    text = drawing.progress_line(step=3, steps=7)
    counts = [len(rects(text, css)) for css in ("gone", "now", "to-come")]
    assert counts == [2, 1, 4]
    assert 'aria-label="Step 3 of 7"' in text


@pytest.mark.parametrize("colour", [None, "", "red", "#12345", "#12345g", HOSTILE])
def test_a_colour_that_is_none_is_a_gap(colour: str | None) -> None:
    text = drawing.swatch(colour, evidence="From the chart")
    assert "No colour known" in text
    assert "fill=" not in text


def test_a_colour_says_where_it_comes_from() -> None:
    text = drawing.swatch("#5B7F63", evidence="From the chart")
    assert 'fill="#5B7F63"' in text
    assert 'aria-label="From the chart"' in text


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (0.0, "0"),
        (-0.001, "0"),
        (106.0, "106"),
        (89.504, "89.5"),
        (0.005, "0.01"),
        (math.inf, "0"),
        (math.nan, "0"),
    ],
)
def test_lengths_are_short(value: float, written: str) -> None:
    assert svg.length(value) == written


def test_a_budget_draws_shares_and_says_them() -> None:
    text = drawing.budget_bars(BUDGET)
    (most,), others = rects(text, "most"), rects(text, "other")
    assert [bar["width"] / 240 for bar in (most, *others)] == pytest.approx(
        [0.79, 0.206, 0.004], abs=1e-3
    )
    said = drawing.budget_words(BUDGET).replace("\u00a0", " ")
    assert "mark of the cylinder 21 % (± 0.58 %)" in said
    assert said.endswith("2 smaller ones under 1 % (± 0.05 %).")
    assert parsed(text).get("aria-label") == drawing.budget_words(BUDGET)


def test_one_small_term_keeps_its_name() -> None:
    names = [row.name for row in drawing.budget_rows(BUDGET[:3])]
    assert names == [HOSTILE, "mark of the cylinder", "reading the scale"]


def test_a_long_name_is_cut_in_the_picture_alone() -> None:
    long = "what is read on the scale " * 4
    line = BudgetLine(name=long, source="scale", u_rel=0.01, share=1.0)
    (name, _share) = parsed(drawing.budget_bars([line])).iter(f"{NS}text")
    assert name.text == f"{long[:45]}…"
    assert long in drawing.budget_words([line])


def test_a_spread_of_nothing_is_no_picture() -> None:
    assert not drawing.budget_bars(())
