"""Tags of skeins: every word is on them, whatever the shape."""

import datetime as dt
import io
from dataclasses import replace

import pytest
from PIL import Image

from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper.skein_tags import (
    MOST_TAGS,
    TAG_SHAPES,
    SkeinTag,
    skein_tags_pdf,
    tag_shape,
    tags_data,
)
from shadewright.paper.typeset import first_page_png
from tests.paper.pictures import words_on

ON = dt.date(2026, 11, 25)
TAG = SkeinTag(
    lot="261125-B2",
    qr_text="SHADEWRIGHT BATH 261125-B2",
    colourway="Night Hedge",
    base="Hollow 4-ply",
    fibre_content="75 % wool, 25 % nylon",
    weight="100 g",
    length="400 m",
    care="Hand wash in cool water, dry flat.",
    origin="Dyed in Thornbank of imported yarn.",
    maker="Thornbank Dye Room",
    address="1 Mill Lane",
)


@pytest.mark.parametrize("shape", [each.key for each in TAG_SHAPES])
def test_a_tag_says_all_that_it_was_given(shape: str) -> None:
    words = words_on(skein_tags_pdf([TAG], shape=shape, printed_on=ON))
    said = (TAG.lot, TAG.colourway, TAG.base, TAG.weight, TAG.length, TAG.maker)
    for text in (*said, "Hand wash", "imported yarn", "75 % wool"):
        assert text in words.replace("\u200b", ""), text


def test_what_is_not_written_down_is_left_out() -> None:
    bare = SkeinTag(lot="261125-B2", qr_text="X", colourway="Moss", base="Fell")
    words = words_on(skein_tags_pdf([bare], shape="tag", printed_on=ON))
    assert "not written" not in words


def test_words_that_fit_no_size_are_not_lost_in_silence() -> None:
    long = replace(TAG, care="wash it cool and gently " * 40, origin="dyed here " * 40)
    words = words_on(skein_tags_pdf([long], shape="band", printed_on=ON))
    assert "do not fit" in words or "gently" in words


def test_the_largest_words_keep_clear_of_the_cut() -> None:
    wide = replace(TAG, colourway="W" * 90, base="B" * 90, fibre_content="F" * 200)
    wide = replace(wide, care="", origin="", maker="", address="", weight="", length="")
    data = tags_data([wide], shape=tag_shape("band"), paper="a4")
    drawn = first_page_png("skein_tags.typ", data=data, width_mm=210.0, width_px=2100)
    band = Image.open(io.BytesIO(drawn)).convert("L")
    margin_mm, height_mm = 9, 50
    bottom = 10 * (margin_mm + height_mm)
    strip = band.crop((120, bottom - 25, 1700, bottom - 5))
    assert strip.getextrema() == (255, 255)


def test_no_tag_and_too_many_are_refused() -> None:
    with pytest.raises(MissingError):
        skein_tags_pdf([], shape="tag", printed_on=ON)
    with pytest.raises(OutOfRangeError):
        skein_tags_pdf([TAG] * (MOST_TAGS + 1), shape="tag", printed_on=ON)
    with pytest.raises(OutOfRangeError):
        skein_tags_pdf([TAG], shape="scroll", printed_on=ON)
