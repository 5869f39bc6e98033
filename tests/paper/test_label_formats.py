import pytest

from shadewright.errors import OutOfRangeError
from shadewright.paper import LABEL_FORMATS, LabelFormat, label_format


def test_formats_are_named_by_size_and_count() -> None:
    names = [known.name for known in LABEL_FORMATS]
    assert "A4 sheet, 21 labels of 63.5 × 38.1 mm" in names
    assert "US Letter sheet, 30 labels of 66.7 × 25.4 mm" in names
    assert "Single label, 62 × 29 mm" in names


def test_keys_are_unique() -> None:
    assert len({known.key for known in LABEL_FORMATS}) == len(LABEL_FORMATS)


def test_an_unknown_format_is_refused_with_what_there_is() -> None:
    with pytest.raises(OutOfRangeError) as refusal:
        label_format("<b>")
    assert refusal.value.argument == "format"
    assert "a4-21" in refusal.value.sentence


@pytest.mark.parametrize("cut", LABEL_FORMATS, ids=lambda cut: cut.key)
def test_labels_lie_on_the_page_and_not_on_each_other(cut: LabelFormat) -> None:
    width, height = cut.label_mm
    for left, top in cut.corners_mm:
        assert left >= 0
        assert top >= 0
        assert left + width <= cut.page_mm[0] + 0.01
        assert top + height <= cut.page_mm[1] + 0.01
    if cut.grid[0] > 1:
        assert cut.pitch_mm[0] >= width
    if cut.grid[1] > 1:
        assert cut.pitch_mm[1] >= height


@pytest.mark.parametrize("cut", LABEL_FORMATS, ids=lambda cut: cut.key)
def test_the_grid_lies_in_the_middle_of_the_sheet(cut: LabelFormat) -> None:
    # Sheets are cut with equal margins, so a mistyped margin or pitch shows here.
    last_left, last_top = cut.corners_mm[-1]
    right = cut.page_mm[0] - last_left - cut.label_mm[0]
    bottom = cut.page_mm[1] - last_top - cut.label_mm[1]
    assert right == pytest.approx(cut.first_mm[0], abs=0.2)
    assert bottom == pytest.approx(cut.first_mm[1], abs=0.2)


@pytest.mark.parametrize("cut", LABEL_FORMATS, ids=lambda cut: cut.key)
def test_square_codes_are_whole_printer_dots_and_wide_enough(cut: LabelFormat) -> None:
    dots = cut.square_code_mm / 33 * 203 / 25.4
    assert dots == pytest.approx(round(dots))
    assert round(dots) >= 3
