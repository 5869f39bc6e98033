"""Printed at 203 dots an inch in black or nothing, each label's code reads back."""

import datetime as dt
import io
from collections.abc import Sequence

import pytest
from PIL import Image

from shadewright.exchange import code_from_text, label_text
from shadewright.exchange.label_photo import code_in_photo
from shadewright.paper import LABEL_FORMATS, BottleLabel, LabelFormat, labels_pdf
from tests.paper.pictures import cut_out, phone_photo, thermal_print

every_format = pytest.mark.parametrize("cut", LABEL_FORMATS, ids=lambda cut: cut.key)


@pytest.fixture
def printed_labels(
    cut: LabelFormat, shelf: Sequence[BottleLabel], day: dt.date
) -> dict[str, Image.Image]:
    pdf = labels_pdf(shelf, format=cut, printed_on=day)
    if cut.per_page == 1:
        sheets = [thermal_print(pdf, page) for page in range(len(shelf))]
    else:
        sheets = [thermal_print(pdf)] * len(shelf)
    corners = cut.corners_mm * (len(shelf) if cut.per_page == 1 else 1)
    return {
        label.code: cut_out(sheet, corner, cut.label_mm)
        for label, sheet, corner in zip(shelf, sheets, corners, strict=False)
    }


@every_format
def test_a_scanner_reads_the_code(printed_labels: dict[str, Image.Image]) -> None:
    import zxingcpp

    assert set(printed_labels) == {"T7K", "W9XY", "A3C"}
    for code, picture in printed_labels.items():
        [found] = zxingcpp.read_barcodes(picture.convert("L"))
        assert code_from_text(found.text) == code
        assert found.text == label_text(code)
        assert found.ec_level in {"M", "Q", "H"}


@every_format
def test_a_phone_reads_the_code(printed_labels: dict[str, Image.Image]) -> None:
    for code, picture in printed_labels.items():
        assert code_in_photo(phone_photo(picture)) == code


@every_format
def test_a_splash_does_not_hide_the_code(
    printed_labels: dict[str, Image.Image], cut: LabelFormat
) -> None:
    # A blot of a tenth of the square's side, away from its three eyes.
    for code, picture in printed_labels.items():
        side = cut.square_code_mm * 203 / 25.4
        right, top = picture.width - cut.inset_mm * 8, cut.inset_mm * 8
        blot = Image.new("1", (round(side / 10), round(side / 10)), 0)
        picture.paste(blot, (round(right - 0.55 * side), round(top + 0.5 * side)))
        file = io.BytesIO()
        picture.convert("L").save(file, "PNG")
        assert code_in_photo(file.getvalue()) == code
