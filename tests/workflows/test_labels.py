"""Labels: which bottles want one, and what the printed one says."""

import io

import pypdfium2
import pytest

from shadewright.errors import MissingError, NotFoundError, OutOfRangeError
from shadewright.exchange.label_photo import code_in_photo
from shadewright.records.models import Dye
from shadewright.workflows.bottles import enter_bottle, record_strength
from shadewright.workflows.filling import Particulars
from shadewright.workflows.labels import bottles_to_label, label_sheet, print_labels
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import stamp_now
from tests.paper.pictures import thermal_print

pytestmark = pytest.mark.django_db


@pytest.fixture
def bottle() -> ShelfBottle:
    dye = Dye.objects.create(name="Sloe", hazard_words="Harmful if swallowed")
    return enter_bottle(
        dye_id=dye.pk,
        strength_percent=1.0,
        volume_ml=400.0,
        stamp=stamp_now(by=None),
        about=Particulars(),
    )


def test_a_printed_label_is_remembered_until_it_no_longer_holds(
    bottle: ShelfBottle,
) -> None:
    assert [one.code for one in bottles_to_label()] == [bottle.code]
    print_labels(codes=[bottle.code], format_key="a4-21")
    assert bottles_to_label() == ()
    record_strength(code=bottle.code, strength_percent=1.2, stamp=stamp_now(by=None))
    assert [one.code for one in bottles_to_label()] == [bottle.code]


def test_looking_at_a_label_is_not_printing_it(bottle: ShelfBottle) -> None:
    label_sheet(codes=[bottle.code], format_key="single-62x29")
    assert shelf_bottle(bottle.code).wants_label


def test_the_label_can_be_read_back_and_says_what_it_must(bottle: ShelfBottle) -> None:
    sheet = label_sheet(codes=[bottle.code], format_key="single-89x36")
    photo = io.BytesIO()
    thermal_print(sheet).save(photo, "PNG")
    assert code_in_photo(photo.getvalue()) == bottle.code
    words = pypdfium2.PdfDocument(sheet)[0].get_textpage().get_text_range()
    for said in ("Sloe", "Harmful if swallowed", "Not for food", bottle.code):
        assert said.lower() in words.lower()


@pytest.mark.parametrize(
    ("codes", "format_key", "skip_first", "error"),
    [
        ([], "a4-21", 0, MissingError),
        (["K7RR"], "a4-21", 0, NotFoundError),
        (None, "a3-9", 0, OutOfRangeError),
        (None, "a4-21", 21, OutOfRangeError),
        (None, "a4-21", -1, OutOfRangeError),
    ],
)
def test_what_cannot_be_printed_is_refused_and_not_remembered(
    bottle: ShelfBottle,
    codes: list[str] | None,
    format_key: str,
    skip_first: int,
    error: type[Exception],
) -> None:
    with pytest.raises(error):
        print_labels(
            codes=[bottle.code] if codes is None else codes,
            format_key=format_key,
            skip_first=skip_first,
        )
    assert shelf_bottle(bottle.code).wants_label


def test_the_label_of_a_guess_says_how_wide_it_is(bottle: ShelfBottle) -> None:
    sheet = label_sheet(codes=[bottle.code], format_key="single-102x51")
    page = pypdfium2.PdfDocument(io.BytesIO(sheet))[0]
    words = page.get_textpage().get_text_range().replace("\u00a0", " ")
    assert "± 0.2" in words
