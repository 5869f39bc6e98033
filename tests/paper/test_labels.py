import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

import pypdfium2 as pdfium
import pytest

from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper import (
    LABEL_FORMATS,
    BottleLabel,
    LabelFormat,
    label_format,
    labels_pdf,
)
from shadewright.paper.labels import DROP_ORDER, labels_data
from tests.paper.pictures import Sign, signs_on, words_on

SMALLEST = label_format("a4-65")
LARGEST = label_format("a4-8")
every_format = pytest.mark.parametrize("cut", LABEL_FORMATS, ids=lambda cut: cut.key)


def printed(label: BottleLabel, cut: LabelFormat) -> str:
    return words_on(labels_pdf([label], format=cut, printed_on=dt.date(2026, 11, 25)))


def test_what_the_template_is_given(slate: BottleLabel) -> None:
    data = labels_data([slate], cut=label_format("single-62x29"))
    [[texts]] = data.pop("pages")  # type: ignore[attr-defined]
    assert texts.pop("square").startswith("<svg ")
    assert texts == {
        "code": "T7K",
        "name": "Slate",
        "strength": "1.04\xa0%",
        "spread": "±\xa00.02",
        "guess": False,
        "grams_per_litre": "10.4\xa0g/l",
        "made": "Made 25\xa0Nov 2026",
        "maker": "by Ada",
        "jar": "Jar J-14",
        "discard": "",
        "hazard": "May irritate eyes and skin",
        "water": "",
        "note": "",
        "demo": False,
    }
    side = data.pop("square_code_mm")  # type: ignore[attr-defined]
    assert side == pytest.approx(33 * 4 * 25.4 / 203)
    assert data == {
        "title": "Bottle labels: T7K",
        "page_mm": (62, 29),
        "label_mm": (62, 29),
        "inset_mm": 1.5,
        "corners_mm": ((0.0, 0.0),),
        "drop_order": DROP_ORDER,
    }


def test_a_large_label_says_all(peat: BottleLabel) -> None:
    words = printed(peat, LARGEST)
    for part in (
        "Peat black of the northern moor, second grinding",
        "2.00 % ± 0.04",
        "20 g/l",
        "Made 25 Nov 2026 by Bob",
        "Jar J-3, lot 88",
        "Discard by 25 May 2027",
        "Water: rain water",
        "re-warm and stir",
        "Metal-complex dye: collect unused stock",
        "Not for food",
        "demo",
        "W9XY",
    ):
        assert part in words


@every_format
def test_what_never_goes(cut: LabelFormat, peat: BottleLabel) -> None:
    words = printed(peat, cut)
    for part in (
        "W9XY",
        "Peat black of the",
        "2.00 %",
        "Made 25 Nov 2026",
        "Metal-complex dye: collect unused stock",
        "Not for food",
        "demo",
    ):
        assert part in words


def test_lines_go_in_the_stated_order(peat: BottleLabel) -> None:
    lines = {
        "note": "re-warm and stir",
        "water": "Water: rain water",
        "maker": "by Bob",
        "grams_per_litre": "20 g/l",
        "spread": "± 0.04",
        "jar": "Jar J-3",
        "discard": "Discard by",
    }
    assert tuple(lines) == DROP_ORDER
    kept = set()
    for cut in LABEL_FORMATS:
        words = printed(peat, cut)
        is_there = [lines[key] in words for key in DROP_ORDER]
        assert is_there == sorted(is_there)
        kept.add(sum(is_there))
    assert min(kept) < 2
    assert max(kept) == 7


def test_a_guess_and_what_was_not_written_down_say_so(gorse: BottleLabel) -> None:
    words = printed(gorse, label_format("a4-21"))
    assert "about 1 % ± 0.2 guess" in words
    assert "Date not known" in words
    assert "Jar not known" in words
    assert "Made" not in words
    assert "demo" not in words


def test_a_long_name_shrinks_then_is_cut_with_an_ellipsis(slate: BottleLabel) -> None:
    name = "Turquoise of the northern lochs, extra concentrated, second grinding"
    long = replace(slate, dye_name=name)
    assert name in printed(long, LARGEST)
    words = printed(long, SMALLEST)
    assert "Turquoise of the northern" in words
    assert "…" in words
    assert "grinding" not in words


def test_hazard_words_are_never_cut(slate: BottleLabel) -> None:
    wordy = replace(slate, hazard_words="May cause an allergic skin reaction. " * 4)
    assert printed(wordy, LARGEST).count("allergic skin reaction.") == 4
    with pytest.raises(OutOfRangeError) as refusal:
        printed(wordy, SMALLEST)
    assert refusal.value.argument == "format"
    assert refusal.value.sentence == (
        "The label of bottle T7K must be large enough for its hazard words, which "
        "are never cut; got A4 sheet, 65 labels of 38.1 × 21.2 mm. "
        "Choose a larger label."
    )


HOSTILE = (
    "W" * 200,
    "long words " + "Donaudampfschifffahrtsgesellschaftskapitän" * 3,
    '#panic("x") `raw` $x^2$ \\ "quoted" <b>bold</b>',
    "😀 שלום عربي 中文",
)


@every_format
@pytest.mark.parametrize(
    "text", ["", *HOSTILE], ids=["plain", "wide", "long", "code", "scripts"]
)
def test_no_text_leaves_its_label(
    cut: LabelFormat, text: str, shelf: Sequence[BottleLabel], day: dt.date
) -> None:
    labels = [_overwritten(label, text) for label in shelf]
    pdf = labels_pdf(labels, format=cut, printed_on=day)
    pages = 1 if cut.per_page > 1 else len(labels)
    seen = 0
    for page in range(pages):
        for sign in signs_on(pdf, page):
            assert any(_holds(cut, corner, sign) for corner in cut.corners_mm), sign
            seen += 1
    assert seen > 100


def _overwritten(label: BottleLabel, text: str) -> BottleLabel:
    if not text:
        return label
    return replace(
        label,
        dye_name=text,
        jar_lot=text,
        made_by=text,
        water=text,
        mix_note=text,
        hazard_words=text[:30],
    )


def _holds(cut: LabelFormat, corner: tuple[float, float], sign: Sign) -> bool:
    """Whether a sign lies on the label, and not on the square code's ground."""
    (left, top), (width, height), inset = corner, cut.label_mm, cut.inset_mm - 0.3
    right, bottom = left + width - inset, top + height - inset
    is_inside = (
        left + inset <= sign.left
        and sign.right <= right
        and top + inset <= sign.top
        and sign.bottom <= bottom
    )
    side = cut.square_code_mm
    is_on_square = sign.right > right - side + 0.3 and sign.top < top + inset + side
    return is_inside and not is_on_square


def test_part_used_sheets_are_filled_up(slate: BottleLabel, day: dt.date) -> None:
    cut = label_format("a4-21")
    pdf = labels_pdf([slate] * 3, format=cut, skip_first=20, printed_on=day)
    assert len(pdfium.PdfDocument(pdf)) == 2
    first, second = list(signs_on(pdf, 0)), list(signs_on(pdf, 1))
    last_left, last_top = cut.corners_mm[20]
    assert min(sign.left for sign in first) > last_left
    assert min(sign.top for sign in first) > last_top
    assert len(second) == 2 * len(first)
    assert min(sign.left for sign in second) < cut.corners_mm[1][0]


@pytest.mark.parametrize("skip", [-1, 21])
def test_no_more_is_skipped_than_a_sheet_holds(
    skip: int, slate: BottleLabel, day: dt.date
) -> None:
    cut = label_format("a4-21")
    with pytest.raises(OutOfRangeError, match="from 0 to 20; got") as refusal:
        labels_pdf([slate], format=cut, skip_first=skip, printed_on=day)
    assert refusal.value.argument == "skip_first"


def test_single_labels_have_none_to_skip(slate: BottleLabel, day: dt.date) -> None:
    cut = label_format("single-62x29")
    with pytest.raises(OutOfRangeError, match="0 for single labels"):
        labels_pdf([slate], format=cut, skip_first=1, printed_on=day)


def test_no_bottle_no_label(day: dt.date) -> None:
    with pytest.raises(MissingError) as refusal:
        labels_pdf([], format=LARGEST, printed_on=day)
    assert refusal.value.argument == "labels"


def test_the_square_has_words_for_those_who_listen(
    slate: BottleLabel, day: dt.date
) -> None:
    pdf = labels_pdf([slate], format=LARGEST, printed_on=day)
    assert b"Square code of bottle T7K" in pdf
