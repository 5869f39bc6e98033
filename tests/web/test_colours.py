"""A colour on a page carries its source, its spread and the screen's own limit."""

import pytest
from django.template import engines

from shadewright.core.colour import Lab
from shadewright.core.mixing import Evidence
from shadewright.web.colours import ColourShown, foretold_colour, read_colour
from shadewright.workflows.shades.kinds import ReadBy

VIVID = Lab(60.0, 110.0, 60.0)


def _shown(colour: ColourShown, size: str) -> str:
    template = engines["django"].from_string("{% colour shown size %}")
    return template.render({"shown": colour, "size": size})


def test_a_reading_says_how_far_it_is_usually_off() -> None:
    one = read_colour(Lab(50, 0.04, -3), ReadBy.METER, sd=0.6)
    assert one.spread == "usually ΔE\u00a00.6 off"
    assert one.lab_words.replace("\u00a0", " ") == "L 50.0, a 0.0, b −3.0"


def test_a_chart_does_not_say_how_far_it_is_off() -> None:
    assert read_colour(Lab(50, 0, 0), ReadBy.CHART).spread == "nobody knows how far off"


def test_a_colour_beyond_the_screen_is_marked_in_words_and_in_the_picture() -> None:
    shown = read_colour(VIVID, ReadBy.METER, name="Rowan 3 %")
    assert not shown.is_true
    assert "more vivid than this screen shows" in shown.title
    assert 'class="cut"' in _shown(shown, "small")
    assert 'class="cut"' not in _shown(read_colour(Lab(50, 1, 2), ReadBy.EYE), "small")


@pytest.mark.parametrize("size", ["small", "square"])
def test_alone_it_is_named_with_all_that_must_be_said(size: str) -> None:
    shown = foretold_colour(
        Lab(50, 1, 2), expected=2.14, within_90=4.3, evidence=Evidence.SCREEN
    )
    html = _shown(shown, size)
    assert f'aria-label="{shown.title}"' in html
    assert "foretold from colours picked on a screen or off a photo" in shown.title
    assert "usually ΔE\u00a02.1 off, 9 in 10 times at most 4.3" in shown.title


@pytest.mark.parametrize("size", ["row", "large"])
def test_beside_its_words_the_picture_is_silent(size: str) -> None:
    shown = read_colour(Lab(50, 1, 2), ReadBy.PHOTO, name="Fern")
    html = _shown(shown, size)
    assert 'aria-hidden="true"' in html
    assert shown.words in html
