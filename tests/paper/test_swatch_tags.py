"""Swatch tags: the numbers for the pot, and a tag for each dry swatch."""

import datetime as dt
from dataclasses import replace

import pypdfium2 as pdfium
import pytest

from shadewright.errors import MissingError, OutOfRangeError
from shadewright.exchange import Scanned
from shadewright.exchange.label_photo import scanned_in_photo
from shadewright.paper import PAPERS, SwatchTag, swatch_tags_pdf
from shadewright.paper.swatch_tags import MOST_TAGS, tags_data
from tests.paper.baths import tag
from tests.paper.pictures import phone_photo, signs_on, thermal_print, words_on


def printed(*which: SwatchTag, paper: str = "a4") -> bytes:
    return swatch_tags_pdf(which, paper=paper, printed_on=dt.date(2026, 11, 25))


def test_what_the_template_is_given() -> None:
    data = tags_data([tag()], paper="letter")
    [texts] = data.pop("tags")  # type: ignore[attr-defined]
    assert data == {"title": "Swatch tags: 261125-S1", "page_mm": (215.9, 279.4)}
    assert texts.pop("square").startswith("<svg ")
    assert texts == {
        "number": "261125-S1",
        "recipe": "Low Tide, version 3",
        "base": "on Fell DK",
        "doses": ["Slate 0.6\xa0%", "Gorse 0.3\xa0%"],
        "day": "25\xa0Nov 2026",
        "demo": False,
    }


def test_numbers_to_write_by_hand_come_first() -> None:
    words = words_on(printed(tag(1), tag(2)))
    assert words.startswith("Write these numbers on the in-pot tags")
    assert "in pencil or waterproof marker" in words
    assert words.count("261125-S1") == words.count("261125-S2") == 2
    for part in ("on Fell DK", "Slate 0.6 %", "25 Nov 2026", "dry yarn, tied or glued"):
        assert part in words


def test_many_dyes_say_where_the_rest_is() -> None:
    many = replace(tag(), depths_percent={f"Dye {n}": n / 10 for n in range(1, 12)})
    assert "and 3 more: see the bath’s page" in words_on(printed(many))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(
    "text", ["W" * 120, "wide " * 40, '#panic("x") `$\\', "😀 שלום 中文"]
)
def test_no_text_leaves_the_page(paper: str, text: str) -> None:
    pdf = printed(*(tag(n, text=text) for n in range(1, 9)), paper=paper)
    width, height = PAPERS[paper]
    for page in range(len(pdfium.PdfDocument(pdf))):
        for sign in signs_on(pdf, page):
            assert 8 < sign.left < sign.right < width - 8, sign
            assert 8 < sign.top < sign.bottom < height - 8, sign


def test_a_phone_reads_the_swatch_from_its_tag() -> None:
    # Cut out: below the heading, in the first third.
    sheet = thermal_print(printed(tag()))
    cut = sheet.crop((0, sheet.height // 12, sheet.width // 3 + 60, sheet.height // 3))
    assert scanned_in_photo(phone_photo(cut)) == Scanned("bath", "261125-S1")


def test_no_swatch_no_tag() -> None:
    with pytest.raises(MissingError, match="Choose at least one to tag"):
        printed()


def test_too_many_tags_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match=f"at most {MOST_TAGS} at a time"):
        printed(*[tag()] * (MOST_TAGS + 1))
