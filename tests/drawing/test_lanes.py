"""A dye day as lanes: what is drawn where, wide and tall."""

import re
from dataclasses import replace

import pytest

from shadewright.drawing import (
    Bar,
    Lane,
    LaneBath,
    LanesShown,
    LanesWidth,
    Power,
    day_lanes,
    lane_sample,
)

BATH = LaneBath(
    number="261126-B1",
    name="B1 Wet <Fern>",
    short="B1",
    lane=0,
    bars=(
        Bar(kind="hands", starts=0.0, ends=10.0),
        Bar(kind="heat", starts=10.0, ends=70.0),
        Bar(kind="cool", starts=70.0, ends=120.0, is_thin=True),
    ),
)
DAY = LanesShown(
    name="Lanes of 26 November",
    more="1 bath.",
    opens_min=450,
    length=150.0,
    lanes=(Lane(name="Plate & A", power="1.8 kW"),),
    baths=(BATH,),
    hands=((0.0, 10.0),),
    powers=(
        Power(name="Wall", limit_kw=3.6, peak_kw=1.8, steps=((0.0, 0.0), (10.0, 1.8))),
    ),
    now=30.0,
    now_words="now 08:00",
)
WIDTHS: tuple[LanesWidth, ...] = ("wide", "narrow")


def rects(drawn: str, css: str) -> list[tuple[float, float, float, float]]:
    found = re.findall(
        rf'<rect x="([^"]*)" y="([^"]*)" width="([^"]*)" height="([^"]*)" '
        rf'class="{css}"',
        drawn,
    )
    return [tuple(map(float, each)) for each in found]  # type: ignore[misc]


@pytest.mark.parametrize("width", WIDTHS)
def test_it_has_a_name_escapes_words_and_needs_no_style(width: LanesWidth) -> None:
    drawn = day_lanes(DAY, width=width)
    assert 'role="img" aria-label="Lanes of 26 November' in drawn
    assert "<Fern>" not in drawn
    assert "style=" not in drawn
    assert "08:00</text>" in drawn


def test_time_runs_to_the_right_and_a_bar_is_as_long_as_its_stage() -> None:
    drawn = day_lanes(DAY, width="wide")
    (heat,), (cool,) = rects(drawn, "heat"), rects(drawn, "cool")
    assert heat[2] == pytest.approx(60.0 / 50.0 * cool[2], abs=0.02)
    assert cool[0] == pytest.approx(heat[0] + heat[2], abs=0.02)
    assert cool[3] < heat[3]
    assert cool[1] >= heat[1] + heat[3]


def test_on_a_phone_time_runs_down() -> None:
    drawn = day_lanes(DAY, width="narrow")
    (heat,), (cool,) = rects(drawn, "heat"), rects(drawn, "cool")
    assert heat[3] == pytest.approx(60.0 / 50.0 * cool[3], abs=0.02)
    assert cool[1] == pytest.approx(heat[1] + heat[3], abs=0.02)
    assert cool[0] > heat[0]


def test_a_bar_can_be_dragged_by_what_is_written_on_it() -> None:
    drawn = day_lanes(DAY, width="wide")
    assert 'data-bath="261126-B1" data-source="Plate &amp; A" data-starts="0"' in drawn
    assert 'data-opens="450"' in drawn


@pytest.mark.parametrize("width", WIDTHS)
def test_now_is_drawn_within_the_day_only(width: LanesWidth) -> None:
    assert 'class="now"' in day_lanes(DAY, width=width)
    for now in (None, -5.0, 900.0):
        other = replace(DAY, now=now)
        assert 'class="now"' not in day_lanes(other, width=width)


@pytest.mark.parametrize("width", WIDTHS)
def test_a_day_without_sources_or_circuits_is_drawn(width: LanesWidth) -> None:
    bare = replace(DAY, lanes=(), baths=(), powers=(), hands=())
    assert day_lanes(bare, width=width).startswith("<svg ")


def test_a_circuit_is_drawn_step_by_step_under_its_limit() -> None:
    power = DAY.powers[0]
    assert power.spans(150.0) == ((0.0, 10.0, 0.0), (10.0, 150.0, 1.8))
    assert power.most_kw > power.limit_kw
    drawn = day_lanes(DAY, width="wide")
    assert "limit 3.6, peak 1.8" in drawn


def test_the_legend_shows_each_shade() -> None:
    assert 'class="hold"' in lane_sample("hold")


@pytest.mark.parametrize("width", WIDTHS)
def test_a_name_that_the_next_would_cover_is_left_to_the_table(
    width: LanesWidth,
) -> None:
    short = replace(
        BATH,
        number="261125-B9",
        name="B9",
        short="B9",
        bars=(replace(BATH.bars[0], ends=1.0),),
    )
    later = replace(
        BATH,
        bars=tuple(replace(x, starts=x.starts + 1, ends=x.ends + 1) for x in BATH.bars),
    )
    drawn = day_lanes(replace(DAY, baths=(short, later)), width=width)
    assert ">B9<" not in drawn
    assert "B1" in drawn
