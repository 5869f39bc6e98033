"""Colours that touch."""

import re

from shadewright.drawing import colour_chips


def test_chips_touch_from_left_to_right() -> None:
    drawn = colour_chips(("#aa0000", "#00aa00", "#0000aa"), name="Three steps")
    places = re.findall(r'x="(\d+)" width="(\d+)"', drawn)
    ends = [int(x) + int(width) for x, width in places]
    assert [int(x) for x, _width in places] == [0, *ends[:-1]]
    assert re.findall(r'fill="(#\w+)"', drawn) == ["#aa0000", "#00aa00", "#0000aa"]
    assert 'aria-label="Three steps"' in drawn


def test_what_is_no_colour_is_a_gap() -> None:
    drawn = colour_chips(("", '"><script>'), name="")
    assert drawn.count('class="gap"') == 2
    assert "script" not in drawn
    assert 'aria-hidden="true"' in drawn
