"""A colour as somebody types it."""

import pytest

from shadewright.errors import InputError
from shadewright.exchange.colour_text import (
    TypedColour,
    measured_lab,
    on_screen,
    typed_colour,
)


@pytest.mark.parametrize(
    "text", ["Lab=50,2.7,-79.8", "50, 2.7, −79.8", "lab 50 2.7 -79.8", " 50;2.7;-79.8 "]
)
def test_lab_is_read_however_it_is_parted(text: str) -> None:
    assert typed_colour(text).lab == (50.0, 2.7, -79.8)


@pytest.mark.parametrize(
    ("text", "lab"),
    [
        ("50,1 12,5 −8,2", (50.1, 12.5, -8.2)),
        ("78,1, 6,2, 55,0", (78.1, 6.2, 55.0)),
        ("50,1; 12,5; -8", (50.1, 12.5, -8.0)),
        ("Lab 50\t12,5\t-8", (50.0, 12.5, -8.0)),
        ("50,12 8", (50.0, 12.0, 8.0)),
    ],
)
def test_a_comma_is_a_decimal_where_it_can_be_nothing_else(
    text: str, lab: tuple[float, float, float]
) -> None:
    assert typed_colour(text).lab == lab


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("#A0522D", "#a0522d"),
        ("a0522d", "#a0522d"),
        ("#a52", "#aa5522"),
        ("teal", "#008080"),
    ],
)
def test_a_screens_colour_is_read(text: str, code: str) -> None:
    assert typed_colour(text).hex_code == code


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "neither Lab nor a screen’s colour"),
        ("bluish", "neither Lab nor a screen’s colour"),
        ("lab(50% 20 30)", "another light"),
        ("50, 12", "neither Lab"),
        ("Lab=50,12", "three numbers, with decimal points"),
        ("50,5,2,7,-79,8", "neither Lab"),
        ("Lab=50,5,2,7,-79,8", "three numbers, with decimal points"),
        ("101, 0, 0", "L from 0 to 100"),
        ("50, 0, 151", "a and b from −150 to 150"),
        ("#a0522d80", "none that a screen shows"),
        ("<b>", "neither Lab"),
    ],
)
def test_what_is_no_colour_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(InputError, match=sentence) as caught:
        typed_colour(text)
    assert caught.value.argument == "colour"


def test_white_black_and_a_mid_grey_on_a_screen() -> None:
    # sRGB's own definition (IEC 61966-2-1): its white is D65, and L* 53.585 is
    # what #808080 has: Y = 0.21586, L* = 116 Y^(1/3) - 16.
    assert on_screen((100.0, 0.0, 0.0)).hex_code == "#ffffff"
    assert on_screen((0.0, 0.0, 0.0)).hex_code == "#000000"
    assert on_screen((53.585, 0.0, 0.0)).hex_code == "#808080"


def test_a_colour_beyond_the_screen_is_marked() -> None:
    assert on_screen((50.0, 10.0, 10.0)).is_true
    beyond = on_screen((50.0, -90.0, 0.0))
    assert not beyond.is_true
    assert beyond.hex_code.startswith("#")


def test_lab_is_what_a_meter_reads() -> None:
    assert measured_lab(typed_colour("Lab=50,2.7,-79.8")) == (50.0, 2.7, -79.8)


@pytest.mark.parametrize(("code", "light"), [("#ffffff", 100.0), ("#808080", 53.585)])
def test_a_grey_of_the_screen_is_grey_to_the_meter(code: str, light: float) -> None:
    found = measured_lab(TypedColour(hex_code=code))
    assert found == pytest.approx((light, 0.0, 0.0), abs=1e-3)


@pytest.mark.parametrize(
    "code", ["#a0522d", "#008080", "#0000ff", "#ff0000", "#ffff00"]
)
def test_a_screens_colour_comes_back_to_the_screen(code: str) -> None:
    shown = on_screen(measured_lab(TypedColour(hex_code=code)))
    assert shown.hex_code == code
    assert shown.is_true
